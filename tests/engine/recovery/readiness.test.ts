import { describe, expect, it } from 'vitest';
import { coverMessages, isAbove, judgeReadiness, type ReadyRules, type ZoneState } from '#engine/recovery/readiness.ts';

const rules: ReadyRules = { cover: 0.85, ruts: 0.012, anchored: 0.9, seedlingShare: 0.1, rest: 48, hardness: null };
const good: ZoneState = { cover: 0.9, ruts: 0.005, anchored: 1, youngSeedlings: 0, sinceCovering: 200, hardness: null };

describe('readiness', () => {
  it.each<[string, Partial<ZoneState>, Partial<ReadyRules>, readonly string[]]>([
    ['all in order', {}, {}, []],
    ['cover exactly at the rule', { cover: 0.85 }, {}, []],
    ['thin', { cover: 0.849 }, {}, ['thin']],
    ['rutted', { ruts: 0.0121 }, {}, ['rutted']],
    ['loose sod', { anchored: 0.5 }, {}, ['sod-loose']],
    ['young seedlings', { youngSeedlings: 0.2 }, {}, ['seedlings-young']],
    ['a covering still on', { sinceCovering: -1 }, {}, ['covered']],
    ['a covering just off', { sinceCovering: 47 }, {}, ['resting']],
    ['never covered', { sinceCovering: null }, {}, []],
    ['too hard', { hardness: 120 }, { hardness: { low: 60, high: 100 } }, ['hard']],
    ['too soft', { hardness: 40 }, { hardness: { low: 60, high: 100 } }, ['soft']],
    ['hardness not known', {}, { hardness: { low: 60, high: 100 } }, ['hardness-unknown']],
    ['several at once', { cover: 0.4, ruts: 0.03 }, {}, ['thin', 'rutted']],
  ])('%s', (_, zone, changed, because) => {
    const answer = judgeReadiness({ ...good, ...zone }, { ...rules, ...changed });
    expect(answer.because).toEqual(because);
    expect(answer.ready).toBe(because.length === 0);
    expect(answer.verdict).toBe(because.length === 0 ? 'ready in the forecast' : 'not ready in the forecast');
  });
});

// University of Tennessee work, SFM 16 Sep 2010: more than 70 % is acceptable. Dickson et al. 2018: half cover as the measure of wear.
describe('falling through 70 and 50 %', () => {
  it('70.0 % is not above 70', () => {
    expect(isAbove(0.7, 0.7)).toBe(false);
    expect(isAbove(0.1 * 7, 0.7)).toBe(false);
    expect(isAbove(0.701, 0.7)).toBe(true);
  });
  it('gives exactly one message each, also when the cover wavers', () => {
    const covers = [0.9, 0.72, 0.69, 0.71, 0.66, 0.55, 0.5, 0.52, 0.45];
    expect(coverMessages(covers, [0.7, 0.5])).toEqual([
      { level: 0.7, day: 2 },
      { level: 0.5, day: 6 },
    ]);
    expect(coverMessages([0.9, 0.3], [0.7, 0.5])).toEqual([
      { level: 0.7, day: 1 },
      { level: 0.5, day: 1 },
    ]);
    expect(coverMessages([0.6, 0.65, 0.9], [0.7, 0.5])).toEqual([]);
    expect(coverMessages([0.9, 0.8, 0.75], [0.7, 0.5])).toEqual([]);
  });
});
