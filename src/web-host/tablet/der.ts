/** The few shapes of DER (ITU-T X.690) that a certificate is put together from. @source ITU-T X.690, Distinguished Encoding Rules */

const part = (tag: number, ...contents: readonly Uint8Array[]): Buffer => {
  const content = Buffer.concat(contents);
  const bytes: number[] = [];
  for (let rest = content.length; rest > 0; rest = Math.floor(rest / 256)) bytes.unshift(rest % 256);
  const length = content.length < 128 ? [content.length] : [0x80 + bytes.length, ...bytes];
  return Buffer.concat([Buffer.from([tag, ...length]), content]);
};

export const sequence = (...parts: readonly Uint8Array[]): Buffer => part(0x30, ...parts);
export const set = (...parts: readonly Uint8Array[]): Buffer => part(0x31, ...parts);
export const octets = (bytes: Uint8Array): Buffer => part(0x04, bytes);
export const bits = (bytes: Uint8Array, unused = 0): Buffer => part(0x03, Buffer.from([unused]), bytes);
export const text = (words: string): Buffer => part(0x0c, Buffer.from(words, 'utf8'));
export const truth = part(0x01, Buffer.from([0xff]));
/** Constructed and explicit: `[n]`. */
export const tagged = (number: number, ...parts: readonly Uint8Array[]): Buffer => part(0xa0 + number, ...parts);
/** Plain bytes under `[n]`. */
export const labelled = (number: number, bytes: Uint8Array): Buffer => part(0x80 + number, bytes);

/** A whole number that is not negative, most significant byte first. */
export const integer = (bytes: Uint8Array): Buffer =>
  part(0x02, bytes[0]! & 0x80 ? Buffer.concat([Buffer.from([0]), bytes]) : bytes);

/** "1.2.840.10045.4.3.2" */
export const objectId = (dotted: string): Buffer => {
  const [first, second, ...rest] = dotted.split('.').map(Number) as [number, number, ...number[]];
  const bytes = [first * 40 + second];
  for (const number of rest) {
    const septets = [number % 128];
    for (let left = Math.floor(number / 128); left > 0; left = Math.floor(left / 128)) septets.unshift(128 + (left % 128));
    bytes.push(...septets);
  }
  return part(0x06, Buffer.from(bytes));
};

/** Seconds of UTC between 1950 and 2049. */
export const utcTime = (epoch: number): Buffer =>
  part(0x17, Buffer.from(`${new Date(epoch).toISOString().slice(2, 19).replace(/[-:T]/g, '')}Z`, 'ascii'));
