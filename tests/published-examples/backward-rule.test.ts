import { describe, expect, it } from 'vitest';
import { backwardRule } from '#planner/release-by.ts';
import { hourClock } from '#planner/shift-calendar.ts';

/*
 * Worked example of the trade's backward rule, derived from job times reported for a professional football field: game on a Saturday
 * at 12:00; test from 48 h before; mow and paint 1 d; settle 1 d; lay 1.5 d; strip 1.5 d; 1 d in hand; first truck cut 20–30 h
 * before laying; farm notice 24–48 h. 2027-10-09 is a Saturday.
 */
const home = '2027-10-09T12:00';
const chain = { certify: 48, paint: 24, settle: 24, lay: 36, strip: 36, contingency: 24, harvestAndHaul: 30, notice: 48 };
const clock = hourClock('2027-09-25T06:00', 'America/Chicago');

describe('the backward rule', () => {
  it('leads to the printed hours with nothing in hand', () => {
    const answer = backwardRule(home, { ...chain, contingency: 0 }, clock);
    const at = Object.fromEntries(answer.terms.map((term) => [term.name, term.at]));
    expect(at['Certify']).toBe('2027-10-07T12:00'); // Thursday 12:00
    expect(at['Paint']).toBe('2027-10-06T12:00'); // Wednesday 12:00
    expect(at['Settle']).toBe('2027-10-05T12:00'); // Tuesday 12:00
    expect(answer.layFrom).toBe('2027-10-04T00:00'); // Monday 00:00
    expect(answer.stripFrom).toBe('2027-10-02T12:00'); // Saturday 12:00, home −7 d
  });

  it('leads to the printed hours with one day in hand, slow truck and long notice', () => {
    const answer = backwardRule(home, chain, clock);
    expect(answer.stripFrom).toBe('2027-10-01T12:00'); // Friday 12:00, home −8 d
    expect(answer.layFrom).toBe('2027-10-03T00:00'); // Sunday 00:00
    expect(answer.firstCut).toBe('2027-10-01T18:00'); // Friday 18:00
    expect(answer.releaseBy).toBe('2027-09-29T18:00'); // Wednesday 18:00, home −9.75 d
    expect(answer.latestDecision).toBe('2027-09-29T18:00');
    expect(clock.hourOf(home) - clock.hourOf(answer.releaseBy)).toBe(9.75 * 24);
  });

  it('leads to the printed hours with a quick truck and short notice', () => {
    const answer = backwardRule(home, { ...chain, harvestAndHaul: 20, notice: 24 }, clock);
    expect(answer.firstCut).toBe('2027-10-02T04:00'); // Saturday 04:00
    expect(answer.releaseBy).toBe('2027-10-01T04:00'); // Friday 04:00, home −8.33 d
    expect((clock.hourOf(home) - clock.hourOf(answer.releaseBy)) / 24).toBeCloseTo(8.33, 2);
    expect(answer.latestDecision).toBe('2027-10-01T04:00'); // before the strip starts
  });

  it('shows every term, and they add up', () => {
    const answer = backwardRule(home, chain, clock);
    expect(answer.terms.map(({ name }) => name)).toEqual([
      'Certify',
      'Paint',
      'Settle',
      'In hand',
      'Lay',
      'Strip and haul',
      'Harvest and freight',
      'Notice of the farm',
    ]);
    const release = answer.terms.filter(({ name }) => name !== 'Strip and haul').reduce((sum, { hours }) => sum + hours, 0);
    expect(clock.hourOf(home) - release).toBe(clock.hourOf(answer.releaseBy));
  });

  it('counts real hours over the night the clocks go back', () => {
    // 2027-11-07 02:00 reads 01:00 again in Chicago: the day has 25 h.
    const autumn = hourClock('2027-10-25T06:00', 'America/Chicago');
    const none = { certify: 0, paint: 0, settle: 0, lay: 0, strip: 0, contingency: 0, harvestAndHaul: 0, notice: 24 };
    expect(backwardRule('2027-11-07T12:00', none, autumn).releaseBy).toBe('2027-11-06T13:00');
  });
});
