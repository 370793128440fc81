import type { CoverMeasurement } from '#shared/vocabulary/photograph.ts';
import type { CountedCover } from '#engine/colour/photograph-cover.ts';

/** From where a limit is spoken of; our assumptions. Shares 0–1. */
export const limitBounds = { dark: 0.05, bright: 0.05, straw: 0.1, disagree: 0.05, sharpness: 0.2, pixels: 50_000 } as const;

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/** What the picture says against its number, in plain words. */
export const coverLimits = (counted: CountedCover, sharpness: number | null, framed: boolean): CoverMeasurement['limits'] => [
  ...(counted.dark > limitBounds.dark
    ? [
        {
          kind: 'shadow' as const,
          words: `${percent(counted.dark)} of it lies in shadow too dark for a colour: the cover may be ${percent(counted.least)} to ${percent(counted.most)}. Shade the whole frame or none of it.`,
        },
      ]
    : []),
  ...(counted.bright > limitBounds.bright
    ? [
        {
          kind: 'glare' as const,
          words: `${percent(counted.bright)} of it is washed out, by glare or something white: the cover may be ${percent(counted.least)} to ${percent(counted.most)}.`,
        },
      ]
    : []),
  ...(counted.straw > limitBounds.straw
    ? [
        {
          kind: 'dead-leaf' as const,
          words: `${percent(counted.straw)} of it has the colour of straw or sand. Dead leaf, dormant leaf and bare sand look alike: colour does not say whether crowns live.`,
        },
      ]
    : []),
  ...(sharpness !== null && sharpness < limitBounds.sharpness
    ? [{ kind: 'blur' as const, words: 'It looks blurred: leaf and ground run into each other.' }]
    : []),
  ...(counted.counted < limitBounds.pixels
    ? [{ kind: 'few-pixels' as const, words: `Only ${counted.counted} pixels were counted.` }]
    : []),
  ...(Math.abs(counted.cover - counted.coverByOther) > limitBounds.disagree
    ? [
        {
          kind: 'thresholds-disagree' as const,
          words: `Other thresholds give ${percent(counted.coverByOther)}: the number hangs on the setting.`,
        },
      ]
    : []),
  ...(framed ? [] : [{ kind: 'no-frame' as const, words: 'The whole picture was counted, with whatever else is on it.' }]),
];
