import type { CameraNote } from '#shared/vocabulary/photograph.ts';

/*
 * What a camera noted of time and direction: Exif, CIPA DC-008 (4.5.4 interoperability structure, 4.6.5 Exif IFD, 4.6.6 GPS IFD, 4.7.2 APP1),
 * on the TIFF 6.0 directories it is built from; in a PNG the same block lies in the chunk eXIf. Nothing else is read: not the place, not
 * the device.
 */

const tag = {
  exifDirectory: 0x8769,
  gpsDirectory: 0x8825,
  originalTime: 0x9003,
  offset: 0x9010,
  offsetOfOriginal: 0x9011,
  directionReference: 0x10,
  direction: 0x11,
} as const;
/** Bytes of one value of each TIFF type; types left out are not asked for. */
const sizes: Readonly<Record<number, number>> = { 2: 1, 4: 4, 5: 8 };
/** A directory longer than this is none of a camera. */
const mostEntries = 512;

/** Null where the file has no such note or one that cannot be read: a note is never a reason to refuse a photograph. */
export const cameraNoteOf = (bytes: Uint8Array): CameraNote | null => {
  const block = bytes[0] === 0xff ? blockOfJpeg(bytes) : blockOfPng(bytes);
  try {
    return block && noteIn(block);
  } catch (error) {
    // Points outside of its own block.
    if (error instanceof RangeError) return null;
    throw error;
  }
};

const viewOf = (bytes: Uint8Array): DataView => new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);

const blockOfJpeg = (bytes: Uint8Array): Uint8Array | null => {
  const view = viewOf(bytes);
  for (let at = 2; at + 10 <= bytes.length && bytes[at] === 0xff;) {
    const marker = bytes[at + 1]!;
    if (marker === 0xda || marker === 0xd9) return null;
    if (marker === 0xff) at++;
    else {
      const length = view.getUint16(at + 2);
      // "Exif" and two zeros.
      if (marker === 0xe1 && view.getUint32(at + 4) === 0x45786966 && view.getUint16(at + 8) === 0)
        return bytes.subarray(at + 10, at + 2 + length);
      at += 2 + length;
    }
  }
  return null;
};

const blockOfPng = (bytes: Uint8Array): Uint8Array | null => {
  const view = viewOf(bytes);
  for (let at = 8; at + 12 <= bytes.length; at += 12 + view.getUint32(at))
    // "eXIf"
    if (view.getUint32(at + 4) === 0x65584966) return bytes.subarray(at + 8, at + 8 + view.getUint32(at));
  return null;
};

interface Value {
  readonly type: number;
  readonly count: number;
  /** Where it begins in the block. */
  readonly at: number;
}

const noteIn = (block: Uint8Array): CameraNote | null => {
  const view = viewOf(block);
  const order = view.getUint16(0);
  const little = order === 0x4949;
  if ((!little && order !== 0x4d4d) || view.getUint16(2, little) !== 42) return null;
  const directory = (from: number): ReadonlyMap<number, Value> => {
    const values = new Map<number, Value>();
    const entries = view.getUint16(from, little);
    for (let index = 0; index < Math.min(entries, mostEntries); index++) {
      const entry = from + 2 + 12 * index;
      const [type, count] = [view.getUint16(entry + 2, little), view.getUint32(entry + 4, little)];
      const size = sizes[type];
      if (size === undefined) continue;
      const at = size * count <= 4 ? entry + 8 : view.getUint32(entry + 8, little);
      values.set(view.getUint16(entry, little), { type, count, at });
    }
    return values;
  };
  const under = (pointer: number): ReadonlyMap<number, Value> => {
    const value = first.get(pointer);
    return value?.type === 4 ? directory(view.getUint32(value.at, little)) : new Map();
  };
  const text = (value: Value | undefined): string =>
    value?.type !== 2 || value.count > 64
      ? ''
      : String.fromCharCode(...block.subarray(value.at, value.at + value.count)).replace(/\0.*$/s, '');
  const first = directory(view.getUint32(4, little));
  const exif = under(tag.exifDirectory);
  const gps = under(tag.gpsDirectory);
  const direction = gps.get(tag.direction);
  const degrees =
    direction?.type === 5 ? view.getUint32(direction.at, little) / view.getUint32(direction.at + 4, little) : Number.NaN;
  const takenAt = timeIn(text(exif.get(tag.originalTime)));
  const bearing = degrees >= 0 && degrees <= 360 ? (Math.round(degrees * 100) / 100) % 360 : null;
  if (takenAt === null && bearing === null) return null;
  const reference = text(gps.get(tag.directionReference));
  return {
    takenAt,
    offset: takenAt === null ? null : offsetIn(text(exif.get(tag.offsetOfOriginal)) || text(exif.get(tag.offset))),
    bearing,
    north: bearing === null ? null : reference === 'T' ? 'true' : reference === 'M' ? 'magnetic' : null,
  };
};

/** "2027:07:19 15:20:31" as a wall-clock second; null where it is blank or no time of the calendar. */
const timeIn = (text: string): string | null => {
  const found = /^(\d{4}):(\d\d):(\d\d) (\d\d):(\d\d):(\d\d)$/.exec(text);
  if (!found) return null;
  const [, year, month, day, hour, minute, second] = found;
  const time = `${year}-${month}-${day}T${hour}:${minute}:${second}`;
  const read = new Date(`${time}Z`);
  const stands = Number.isFinite(read.getTime()) && read.toISOString().startsWith(time);
  // A camera whose clock was never set begins at some year before.
  return stands && year! >= '1990' && year! < '2100' ? time : null;
};

const offsetIn = (text: string): string | null => (/^[+-](0\d|1[0-4]):[0-5]\d$/.test(text) ? text : null);
