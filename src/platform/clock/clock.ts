/** The only place that asks the machine what time it is. Epoch ms. */
export interface Clock {
  readonly now: () => number;
}

export const systemClock: Clock = { now: () => Date.now() };

/** A clock that stands still, for tests and for making the same thing twice. `at` is an ISO instant or epoch ms. */
export const fixedClock = (at: string | number): Clock => {
  const epochMs = typeof at === 'number' ? at : Date.parse(at);
  if (!Number.isFinite(epochMs)) throw new RangeError(`clock: "${at}" is not an instant`);
  return { now: () => epochMs };
};
