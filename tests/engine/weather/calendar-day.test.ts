import { describe, expect, it } from 'vitest';
import { calendarDay, dateOf, dayNumber, dayNumberOf, dayOfYear, isCalendarDay, tableDay } from '#engine/weather/calendar-day.ts';

describe('calendar days', () => {
  it('agree with the system calendar over two centuries', () => {
    for (let number = dayNumber(1900, 1, 1); number <= dayNumber(2100, 12, 31); number += 17) {
      const date = new Date(Date.UTC(2000, 0, 1) + number * 86_400_000).toISOString().slice(0, 10);
      expect(dateOf(number)).toBe(date);
      expect(dayNumberOf(date)).toBe(number);
    }
  });

  it('count the days of a year', () => {
    expect(dayOfYear(2027, 12, 31)).toBe(365);
    expect(dayOfYear(2028, 12, 31)).toBe(366);
    expect(dayOfYear(2028, 3, 1)).toBe(61);
    expect(calendarDay(dayNumber(2028, 2, 29))).toEqual({ year: 2028, month: 2, day: 29 });
    expect(tableDay(2, 29)).toBe(tableDay(2, 28));
    expect(tableDay(12, 31)).toBe(364);
  });

  it('refuse what is not a day', () => {
    expect(isCalendarDay(2027, 2, 31)).toBe(false);
    expect(isCalendarDay(2027, 2, 29)).toBe(false);
    expect(isCalendarDay(2028, 2, 29)).toBe(true);
    expect(() => dayNumberOf('2027-02-31')).toThrow(RangeError);
    expect(() => dayNumberOf('1.2.2027')).toThrow(RangeError);
  });
});
