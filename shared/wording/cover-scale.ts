/**
 * Live cover as steps of one scale, from straw through sand to deep blue-green: it grows darker all the way, so that it reads the same
 * to every kind of colour sight and on a grey printer.
 */
export const coverSteps = [
  { below: 0.3, colour: '#f6efdd', words: 'under 30 %' },
  { below: 0.5, colour: '#ead59f', words: '30–50 %' },
  { below: 0.7, colour: '#c3bf78', words: '50–70 %' },
  { below: 0.85, colour: '#7da07c', words: '70–85 %' },
  { below: 0.95, colour: '#3d7a73', words: '85–95 %' },
  { below: Infinity, colour: '#1d5159', words: '95 % and more' },
] as const;

/** Colour of a live cover, 0–1. */
export const coverColour = (cover: number): string =>
  (coverSteps.find((step) => cover < step.below) ?? coverSteps.at(-1)!).colour;
