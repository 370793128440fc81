import { gunzipSync, gzipSync } from 'node:zlib';

/** Text as it lies in the file: frozen runs are large and never searched. */
export const packed = (text: string): Uint8Array => gzipSync(text);

/** A run is some megabytes; a file that was made to do harm unpacks to no more than this. */
const largest = 256 * 2 ** 20;
export const unpacked = (bytes: Uint8Array): string => gunzipSync(bytes, { maxOutputLength: largest }).toString('utf8');
