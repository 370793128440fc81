import { describe, expect, it } from 'vitest';
import { defaultValues } from '#shared/parameters/catalogue.ts';
import { noCauses, type Cause } from '#engine/injury/causes.ts';
import { symptomLagsOf } from '#engine/injury/injury-traits.ts';
import { seenEveryDay, seenOn, type TurfDay } from '#engine/injury/symptoms.ts';
import type { Symptom } from '#shared/vocabulary/forecast.ts';

const lags = symptomLagsOf(defaultValues);
const quiet: TurfDay = {
  covered: false,
  cover: 1,
  lost: noCauses,
  ruts: 0,
  compaction: 0,
  diseaseRisk: 0,
  growth: 0.8,
  darkDays: 0,
  wet: 0,
};
/** Ten days; on day 2 a cause takes 0.4 of the cover, which does not come back. */
const after = (cause: Cause, change: Partial<TurfDay> = {}): readonly TurfDay[] =>
  Array.from({ length: 14 }, (_, day) => ({
    ...quiet,
    cover: day < 2 ? 1 : 0.6,
    lost: day === 2 ? { ...noCauses, [cause]: 0.4 } : noCauses,
    ...change,
  }));
/** First day a symptom shows, and the first day it shows in full. */
const shows = (history: readonly TurfDay[], id: Symptom) => {
  const severity = seenEveryDay(history, lags).map((seen) => seen.symptoms.find((symptom) => symptom.id === id)?.severity ?? 0);
  return { first: severity.findIndex((one) => one > 0), full: severity.findIndex((one) => one >= 0.4 - 1e-9) };
};

// The lags the trade states (common practice): ruts at once, scald 1–3 d, disease 3–7 d, spill burn 2–7 d, winter death at green-up.
describe('what an inspector sees', () => {
  it('wear and torn turf at once', () => {
    expect(shows(after('wear'), 'worn')).toEqual({ first: 2, full: 2 });
    expect(shows(after('load'), 'torn')).toEqual({ first: 2, full: 2 });
  });
  it('scald from one day on, in full at three', () => {
    expect(shows(after('heat'), 'scald')).toEqual({ first: 4, full: 5 });
    expect(seenOn(after('heat'), 2, lags)).toMatchObject({ cover: 1, hidden: [{ id: 'scald', severity: 0.4 }] });
  });
  it('spill burn from two days on, in full at seven', () =>
    expect(shows(after('spill'), 'spill-burn')).toEqual({ first: 5, full: 9 }));
  it('disease from three days on, in full at seven', () => {
    const history = Array.from({ length: 14 }, (_, day) => ({ ...quiet, diseaseRisk: day === 2 ? 0.4 : 0 }));
    expect(shows(history, 'disease')).toEqual({ first: 6, full: 9 });
  });
  it('winter death only at green-up', () => {
    const winter = after('frost').map((day, index) => ({ ...day, growth: index < 10 ? 0.02 : 0.6 }));
    const seen = seenEveryDay(winter, lags);
    expect(seen[9]).toMatchObject({ cover: 1, symptoms: [], hidden: [{ id: 'winter-death', severity: 0.4 }] });
    expect(seen[10]!.cover).toBeCloseTo(0.6, 12);
    expect(seen[10]!.symptoms[0]).toMatchObject({ id: 'winter-death' });
  });
  it('nothing under a covering; yellow and stretched leaf the day it is off; ruts at once', () => {
    const history = after('light').map((day, index) => ({ ...day, covered: index < 5, ruts: 0.02, darkDays: index < 6 ? 6 : 1 }));
    const seen = seenEveryDay(history, lags);
    expect(seen[4]).toMatchObject({ cover: null, symptoms: [] });
    const ids = seen[5]!.symptoms.map((symptom) => symptom.id);
    expect(ids).toContain('yellowing');
    expect(ids).toContain('stretched-leaf');
    expect(ids).toContain('ruts');
    expect(seen[7]!.symptoms.map((symptom) => symptom.id)).not.toContain('stretched-leaf');
  });
  it('a symptom fades as the cover comes back', () => {
    const history = after('wear').map((day, index) => ({ ...day, cover: index < 2 ? 1 : Math.min(1, 0.6 + 0.05 * (index - 2)) }));
    const worn = seenEveryDay(history, lags).map((seen) => seen.symptoms.find((one) => one.id === 'worn')?.severity ?? 0);
    expect(worn[2]).toBeCloseTo(0.4, 12);
    expect(worn[6]).toBeCloseTo(0.2, 12);
    expect(worn[13]).toBe(0);
  });
  it('untouched turf shows nothing', () => {
    for (const seen of seenEveryDay([quiet, quiet, quiet], lags)) expect(seen).toEqual({ cover: 1, symptoms: [], hidden: [] });
    expect(() => seenOn([quiet], 3, lags)).toThrow(/day/);
  });
});
