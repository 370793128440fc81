import { describe, expect, it } from 'vitest';
import { lastFew } from '#shared/last-few.ts';

describe('what is held of the last few reckonings', () => {
  it('is not reckoned again while it is held, and the one asked for longest ago goes first', () => {
    const reckoned: string[] = [];
    const held = lastFew<string>(2);
    const ask = (key: string): string =>
      held(key, () => {
        reckoned.push(key);
        return key.toUpperCase();
      });
    expect([ask('a'), ask('b'), ask('a'), ask('c'), ask('a'), ask('b')]).toEqual(['A', 'B', 'A', 'C', 'A', 'B']);
    // b was asked for longest ago when c came.
    expect(reckoned).toEqual(['a', 'b', 'c', 'b']);
  });

  it('may be nothing', () => {
    let count = 0;
    const held = lastFew<undefined>();
    for (let turn = 0; turn < 3; turn++) held('nothing', () => void count++);
    expect(count).toBe(1);
  });
});
