import type { PhotographType } from '#shared/vocabulary/photograph.ts';

/** What the head of a file says of the picture, read without decoding it; or why it is refused. */
export type PictureHeader =
  | { readonly ok: true; readonly mediaType: PhotographType; readonly width: number; readonly height: number }
  | { readonly ok: false; readonly reason: string };

/** A few kilobytes can unpack to gigabytes: what a decoder may be asked to fill is bounded before it runs. */
const mostPixels = 40_000_000;
const longestSide = 16_384;
/** Passes of a progressive JPEG; each is decoded over the whole picture. */
const mostScans = 64;

const refused = (reason: string): PictureHeader => ({ ok: false, reason });

export const pictureHeader = (bytes: Uint8Array): PictureHeader => {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length > 4 && bytes[0] === 0xff && bytes[1] === 0xd8) return jpegHeader(bytes, view);
  if (bytes.length > 45 && view.getUint32(0) === 0x89504e47 && view.getUint32(4) === 0x0d0a1a0a) return pngHeader(view);
  return refused('is neither a JPEG nor a PNG picture');
};

const sized = (mediaType: PhotographType, width: number, height: number): PictureHeader => {
  if (width < 1 || height < 1) return refused('says it has no pixels');
  if (width > longestSide || height > longestSide || width * height > mostPixels)
    return refused(
      `says it has ${width} × ${height} pixels; at most ${mostPixels / 1e6} million and ${longestSide} a side are taken`,
    );
  return { ok: true, mediaType, width, height };
};

const jpegHeader = (bytes: Uint8Array, view: DataView): PictureHeader => {
  let found: PictureHeader | null = null;
  let scans = 0;
  let at = 2;
  while (at + 4 <= bytes.length) {
    if (bytes[at] !== 0xff) {
      // Picture data up to the next marker; before the first scan there is none.
      if (scans === 0) return refused('is a damaged JPEG: its head cannot be followed');
      const next = bytes.indexOf(0xff, at);
      at = next < 0 ? bytes.length : next;
      continue;
    }
    const marker = bytes[at + 1]!;
    if (marker === 0xff) at++;
    else if (marker === 0 || marker === 1 || (marker >= 0xd0 && marker <= 0xd7)) at += 2;
    else if (marker === 0xd9) return found ?? refused('is a JPEG without a picture');
    else {
      const length = view.getUint16(at + 2);
      if (length < 2) return refused('is a damaged JPEG: its head cannot be followed');
      if (marker === 0xda && ++scans > mostScans) return refused(`is a JPEG of more than ${mostScans} passes`);
      if (isFrame(marker)) {
        if (found || at + 10 > bytes.length) return refused('is a damaged JPEG: it says twice how large it is');
        const [precision, channels] = [bytes[at + 4], bytes[at + 9]!];
        if (marker > 0xc2 || precision !== 8 || (channels !== 1 && channels !== 3))
          return refused('is a JPEG of a rare kind: save it as an ordinary photograph of 8 bits and three channels');
        found = sized('image/jpeg', view.getUint16(at + 7), view.getUint16(at + 5));
        if (!found.ok) return found;
      }
      if (marker === 0xda && !found) return refused('is a damaged JPEG: it does not say how large it is');
      at += 2 + length;
    }
  }
  // The end marker may be the last two bytes.
  if (found && scans > 0 && bytes[bytes.length - 2] === 0xff && bytes[bytes.length - 1] === 0xd9) return found;
  return refused('is a JPEG that ends before it is whole');
};

/** Markers that say how large the picture is; the three left out have other meanings. */
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;

const pngHeader = (view: DataView): PictureHeader => {
  const chunk = (at: number): number => view.getUint32(at + 4);
  if (view.getUint32(8) !== 13 || chunk(8) !== 0x49484452) return refused('is a damaged PNG: it does not say how large it is');
  const found = sized('image/png', view.getUint32(16), view.getUint32(20));
  if (!found.ok) return found;
  for (let at = 8; at + 12 <= view.byteLength; at += 12 + view.getUint32(at)) if (chunk(at) === 0x49454e44) return found;
  return refused('is a PNG that ends before it is whole');
};
