/**
 * Random numbers from a seed, one stream per purpose, so that two options see the same weather and the same seed gives the same bytes on
 * every machine. Only 32-bit integer arithmetic is used; nothing depends on the platform's floating point.
 */

/** Uniform numbers in [0, 1), one a call. */
export type Stream = () => number;

/** Spreads the bits of a 32-bit number: two rounds of multiply and shift. */
const mixed = (number: number): number => {
  let bits = Math.imul(number ^ (number >>> 16), 0x7feb352d);
  bits = Math.imul(bits ^ (bits >>> 15), 0x846ca68b);
  return (bits ^ (bits >>> 16)) >>> 0;
};

/** A 32-bit name of a text. */
const named = (text: string): number => {
  let name = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) name = Math.imul(name ^ text.charCodeAt(i), 0x01000193);
  return mixed(name);
};

/**
 * The stream of one purpose: `streamFor(seed, 'weather', member)`.
 *
 * The n-th number is `mix(mix(n ⊕ a) + b)` with two keys from seed, purpose and index. Streams are therefore not windows of one sequence:
 * two of them share a stretch only if both keys agree. The period is 2³².
 * @param seed whole number of the run; @param purpose what the numbers are for; @param index member or cell
 */
export const streamFor = (seed: number, purpose: string, index = 0): Stream => streamNamed(seed, purposeName(purpose), index);

/** The number that stands for a purpose; for a caller that opens the same streams for many members. */
export const purposeName = (purpose: string): number => named(purpose);

/** The stream of a purpose by its number: the same as `streamFor` by its words. */
export const streamNamed = (seed: number, name: number, index: number): Stream => {
  const first = mixed(name ^ mixed(seed | 0) ^ Math.imul(index | 0, 0x9e3779b1));
  const second = mixed(first ^ Math.imul((index + 1) | 0, 0x85ebca6b) ^ (seed | 0));
  let count = 0;
  return () => {
    count = (count + 0x9e3779b9) | 0;
    return mixed((mixed(count ^ first) + second) | 0) / 4294967296;
  };
};

/** One standard normal draw (Box–Muller; two uniforms a call, so that streams stay in step). */
export const normal = (stream: Stream): number => Math.sqrt(-2 * Math.log(1 - stream())) * Math.cos(2 * Math.PI * stream());
