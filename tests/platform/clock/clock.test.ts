import { expect, test } from 'vitest';
import { fixedClock, systemClock } from '#platform/clock/clock.ts';

test('a fixed clock stands still, and refuses what is no instant', () => {
  const clock = fixedClock('2027-07-17T12:00:00Z');
  expect(clock.now()).toBe(Date.UTC(2027, 6, 17, 12));
  expect(clock.now()).toBe(clock.now());
  expect(() => fixedClock('noon')).toThrow(RangeError);
});

test('the system clock goes forward from now', () => {
  const before = Date.now();
  const read = systemClock.now();
  expect(read).toBeGreaterThanOrEqual(before);
  expect(read).toBeLessThanOrEqual(Date.now());
});
