import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import decodeJpeg, { init as initJpegDecoder } from '@jsquash/jpeg/decode.js';
import encodeJpeg, { init as initJpegEncoder } from '@jsquash/jpeg/encode.js';
import decodePng, { init as initPngDecoder } from '@jsquash/png/decode.js';
import encodePng, { init as initPngEncoder } from '@jsquash/png/encode.js';
import type { Picture } from '#engine/colour/photograph-cover.ts';
import { pictureHeader } from '#platform/photographs/header.ts';

const here = createRequire(import.meta.url);
/** Node has it, but its types know it only together with those of a browser. */
const { WebAssembly: wasm } = globalThis as unknown as { WebAssembly: { Module: new (bytes: Uint8Array) => never } };
const compiled = (file: string): never => new wasm.Module(readFileSync(here.resolve(file)));

/** The codecs answer with the browser's class for pixels, which this side does not have. */
class Pixels implements Picture {
  readonly data: Uint8ClampedArray;
  readonly width: number;
  readonly height: number;
  constructor(data: Uint8ClampedArray, width: number, height: number) {
    this.data = data;
    this.width = width;
    this.height = height;
  }
}

let ready: Promise<void> | null = null;
const codecs = (): Promise<void> =>
  (ready ??= (async () => {
    (globalThis as { ImageData?: unknown }).ImageData ??= Pixels;
    const png = compiled('@jsquash/png/codec/pkg/squoosh_png_bg.wasm');
    await initJpegDecoder(compiled('@jsquash/jpeg/codec/dec/mozjpeg_dec.wasm'));
    await initJpegEncoder(compiled('@jsquash/jpeg/codec/enc/mozjpeg_enc.wasm'));
    await initPngDecoder(png);
    await initPngEncoder(png);
  })());

/** Bytes that own their memory, as the codecs want them. */
const owned = (bytes: Uint8Array): ArrayBuffer => new Uint8Array(bytes).buffer;

/**
 * Decodes a JPEG or PNG, turned upright as its camera noted. The head is looked at first.
 * @throws RangeError with field `base64` where the file is refused or damaged
 */
export const decodePhotograph = async (bytes: Uint8Array): Promise<Picture> => {
  const head = pictureHeader(bytes);
  if (!head.ok) throw Object.assign(new RangeError(head.reason), { field: 'base64' });
  await codecs();
  try {
    return head.mediaType === 'image/jpeg'
      ? await decodeJpeg(owned(bytes), { preserveOrientation: true })
      : await decodePng(owned(bytes));
  } catch {
    // A decoder that stopped half-way is not used again.
    ready = null;
    throw Object.assign(new RangeError('cannot be decoded: the file is damaged'), { field: 'base64' });
  }
};

/** @param quality 0–100 */
export const jpegOf = async (picture: Picture, quality: number): Promise<Uint8Array> => {
  await codecs();
  return new Uint8Array(await encodeJpeg(picture as Parameters<typeof encodeJpeg>[0], { quality }));
};

export const pngOf = async (picture: Picture): Promise<Uint8Array> => {
  await codecs();
  return new Uint8Array(await encodePng(picture as Parameters<typeof encodePng>[0]));
};
