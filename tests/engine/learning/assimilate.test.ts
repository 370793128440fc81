import { describe, expect, test } from 'vitest';
import { foresee } from '#engine/forecast/foresee.ts';
import { recoveryOutlook } from '#engine/forecast/recovery-outlook.ts';
import { assimilate } from '#engine/learning/assimilate.ts';
import { memberCourses, saidOf } from '#engine/learning/member-courses.ts';
import { plainRange } from '#engine/learning/weights.ts';
import type { Seen } from '#engine/learning/seen.ts';
import { smallQuestion } from '#tests/engine/learning/small-question.ts';

const question = smallQuestion({ members: 300 });
const courses = memberCourses(question);
const evenings = ['2027-07-18', '2027-07-19', '2027-07-21'];
/** Three readings of the stage at the given tenth of what was forecast. */
const readings = (at: 'p10' | 'p50' | 'p90'): readonly Seen[] =>
  evenings.map((evening) => {
    const spot = { zone: 'A', evening, quantity: 'cover' as const };
    return { ...spot, value: plainRange(saidOf(courses, spot))[at], error: 0.05 };
  });
const zoneA = (forecast: { zones: readonly { letter: string }[] }) => forecast.zones.findIndex((zone) => zone.letter === 'A');

describe('what was seen weighs the members', () => {
  const plain = foresee(question);
  const worse = assimilate({ question, seen: readings('p10'), beside: [] });
  const better = assimilate({ question, seen: readings('p90'), beside: [] });
  const at = zoneA(plain);

  test('three readings worse than forecast: less cover on the home date, less chance, more to replace, and a narrower range', () => {
    expect(worse.forecast.zones[at]!.coverAfter.p50).toBeLessThan(plain.zones[at]!.coverAfter.p50 - 0.1);
    expect(worse.forecast.zones[at]!.coverHome.p50).toBeLessThan(plain.zones[at]!.coverHome.p50);
    expect(worse.forecast.chanceAllReady).toBeLessThan(plain.chanceAllReady);
    expect(worse.forecast.replaceArea.p90).toBeGreaterThanOrEqual(plain.replaceArea.p90);
    const width = ({ p10, p90 }: { p10: number; p90: number }) => p90 - p10;
    expect(width(worse.forecast.zones[at]!.coverAfter)).toBeLessThan(width(plain.zones[at]!.coverAfter));
  });

  test('better readings the other way', () => {
    expect(better.forecast.zones[at]!.coverHome.p50).toBeGreaterThan(plain.zones[at]!.coverHome.p50);
    expect(better.forecast.chanceAllReady).toBeGreaterThanOrEqual(plain.chanceAllReady);
  });

  test('the new question gives the new forecast again, byte for byte', () => {
    expect(JSON.stringify(foresee(worse.question))).toBe(JSON.stringify(worse.forecast));
  });

  test('ways back are reckoned with the members that agree', () => {
    const asked = (one: typeof question) =>
      recoveryOutlook({ question: { ...one, members: 100 }, programmes: ['leave'], cuts: { thin: 0.013, thick: 0.032 } });
    const chance = (one: typeof question) =>
      asked(one)
        .outlooks.find(({ zone }) => zone === 'A')!
        .chance.at(-1)!;
    const mean = (all: readonly number[]) => all.reduce((sum, value) => sum + value, 0) / all.length;
    expect(chance(worse.question)).toBeLessThan(chance(better.question));
    expect(mean(asked(worse.question).need)).toBeGreaterThan(mean(asked(better.question).need));
  });

  test('seen against forecast: what was seen lies low before, and inside the range after', () => {
    expect(worse.compared).toHaveLength(3);
    worse.compared.forEach(({ before, after, place }, index) => {
      expect(place).toBeCloseTo(0.1, 1);
      expect(after.p50).toBeLessThan(before.p50);
      expect(Math.abs(after.p50 - readings('p10')[index]!.value)).toBeLessThan(
        Math.abs(before.p50 - readings('p10')[index]!.value),
      );
    });
  });

  test('without readings nothing changes and every member counts', () => {
    const none = assimilate({ question, seen: [], beside: readings('p50') });
    expect(none.effectiveSize).toBeCloseTo(300, 6);
    expect(none.widened).toBe(1);
    expect([...none.question.draws!.index].toSorted((a, b) => a - b)).toEqual(Array.from({ length: 300 }, (_, index) => index));
    expect(none.forecast.zones[at]!.coverHome).toEqual(plain.zones[at]!.coverHome);
    expect(none.compared).toHaveLength(3);
  });

  test('readings no member comes near: the doubts are widened once, and more members then count', () => {
    const dead: readonly Seen[] = evenings.map((evening) => ({ zone: 'B', evening, quantity: 'cover', value: 0.3, error: 0.03 }));
    const far = assimilate({ question, seen: dead, beside: [] });
    expect(far.firstEffectiveSize).toBeLessThan(30);
    expect(far.widened).toBe(2);
    expect(far.question.widened).toBe(2);
    expect(JSON.stringify(foresee(far.question))).toBe(JSON.stringify(far.forecast));
    const zone = far.forecast.zones.findIndex(({ letter }) => letter === 'B');
    expect(far.forecast.zones[zone]!.coverAfter.p50).toBeLessThan(plain.zones[zone]!.coverAfter.p10);
  });

  test('a zone or evening the forecast does not have is refused by name', () => {
    const nowhere: Seen = { zone: 'Z', evening: evenings[0]!, quantity: 'cover', value: 0.5, error: 0.05 };
    expect(() => assimilate({ question, seen: [nowhere], beside: [] })).toThrow(
      expect.objectContaining({ field: 'inspections' }),
    );
  });
});

describe('a number that the venue has taught', () => {
  test('is drawn from the range it was taught', () => {
    const name = 'reserve.darkDays.cool';
    const taught = { value: 14, doubt: 0.02, reason: 'Learnt.', since: '2027-01-01' };
    const narrow = memberCourses({ ...question, venue: { ...question.venue, settings: { [name]: taught } } });
    const spot = { zone: 'A', evening: evenings[0]!, quantity: 'cover' as const };
    const width = (all: Float64Array) => plainRange(all).p90 - plainRange(all).p10;
    expect(width(saidOf(narrow, spot))).toBeLessThan(width(saidOf(courses, spot)));
  });
});
