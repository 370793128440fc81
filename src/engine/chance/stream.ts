/**
 * Random numbers from a seed, one stream per purpose, so that two options see the same weather and the same seed gives the
 * same bytes on every machine. Only 32-bit integer arithmetic is used; nothing depends on the platform's floating point.
 */

/** Uniform numbers in [0, 1), one a call. */
export type Stream = () => number;

const scramble = (text: string): number => {
  let h = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) h = Math.imul(h ^ text.charCodeAt(i), 0x01000193);
  return h >>> 0;
};

/**
 * The stream of one purpose: `streamFor(seed, 'weather', member)`.
 * A 32-bit counter through a double xor-multiply mixer; the period is 2³², far beyond one run's draws.
 * @param seed whole number of the run; @param purpose what the numbers are for; @param index member or cell
 */
export const streamFor = (seed: number, purpose: string, index = 0): Stream => {
  let state = (scramble(purpose) ^ Math.imul(seed | 0, 0x9e3779b1) ^ Math.imul((index + 1) | 0, 0x85ebca6b)) >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
};

/** One standard normal draw (Box–Muller; two uniforms a call, so that streams stay in step). */
export const normal = (stream: Stream): number => Math.sqrt(-2 * Math.log(1 - stream())) * Math.cos(2 * Math.PI * stream());
