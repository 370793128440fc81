import { gunzipSync, gzipSync } from 'node:zlib';

/** Text as it lies in the file: frozen runs are large and never searched. */
export const packed = (text: string): Uint8Array => gzipSync(text);
export const unpacked = (bytes: Uint8Array): string => gunzipSync(bytes).toString('utf8');
