import { describe, expect, it } from 'vitest';
import { causes, combineCauses, logLoss } from '#engine/injury/causes.ts';

describe('causes', () => {
  it('multiply, and their shares close', () => {
    const all = combineCauses({ light: 0.5, heat: 0.8, wear: 1 });
    expect(all.kept).toBeCloseTo(0.4, 12);
    expect(all.share.light).toBeCloseTo(Math.log(0.5) / Math.log(0.4), 12);
    expect(all.share.wear).toBe(0);
    expect(causes.reduce((sum, cause) => sum + all.lost[cause], 0)).toBeCloseTo(0.6, 12);
    expect(causes.reduce((sum, cause) => sum + all.share[cause], 0)).toBeCloseTo(1, 12);
  });
  it('no loss has no causes', () => {
    const none = combineCauses({});
    expect(none.kept).toBe(1);
    expect(causes.every((cause) => none.lost[cause] === 0 && none.share[cause] === 0)).toBe(true);
  });
  it('a total loss is shared out finitely', () => {
    const dead = combineCauses({ heat: 0, frost: 0, light: 0.9 });
    expect(dead.kept).toBe(0);
    expect(dead.share.heat).toBe(dead.share.frost);
    expect(causes.reduce((sum, cause) => sum + dead.lost[cause], 0)).toBeCloseTo(1, 12);
    expect(Number.isFinite(logLoss(0))).toBe(true);
  });
  it('a share outside 0–1 is refused with its field', () => {
    expect(() => combineCauses({ wear: 1.2 })).toThrow(/wear/);
    expect(() => combineCauses({ frost: NaN })).toThrow(/frost/);
  });
});
