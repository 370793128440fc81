/** A value of a directory: TIFF type, and its bytes in the order of the block. */
interface Entry {
  readonly tag: number;
  readonly type: 2 | 4 | 5;
  readonly count: number;
  readonly bytes: Buffer;
}

export interface CameraSays {
  readonly time?: string;
  readonly offset?: string;
  readonly offsetOfOriginal?: string;
  readonly direction?: readonly [number, number];
  readonly reference?: string;
}

/**
 * An Exif block written by hand from CIPA DC-008 and TIFF 6.0: header of eight bytes, directory 0 with the pointers to the Exif directory
 * (8769H) and the GPS directory (8825H), each directory a count of two bytes, entries of twelve, a next pointer of four, then the values
 * that do not fit into four bytes.
 */
export const exifBlock = (says: CameraSays, little: boolean): Buffer => {
  const u16 = (value: number): Buffer => {
    const bytes = Buffer.alloc(2);
    if (little) bytes.writeUInt16LE(value);
    else bytes.writeUInt16BE(value);
    return bytes;
  };
  const u32 = (value: number): Buffer => {
    const bytes = Buffer.alloc(4);
    if (little) bytes.writeUInt32LE(value);
    else bytes.writeUInt32BE(value);
    return bytes;
  };
  const ascii = (tag: number, text: string | undefined): Entry[] =>
    text === undefined ? [] : [{ tag, type: 2, count: text.length + 1, bytes: Buffer.from(`${text}\0`, 'latin1') }];
  const long = (tag: number, value: number): Entry => ({ tag, type: 4, count: 1, bytes: u32(value) });
  const directory = (at: number, entries: readonly Entry[]): Buffer => {
    let free = at + 2 + 12 * entries.length + 4;
    const heads: Buffer[] = [];
    const values: Buffer[] = [];
    for (const { tag, type, count, bytes } of entries) {
      const inside = bytes.length <= 4;
      heads.push(
        Buffer.concat([
          u16(tag),
          u16(type),
          u32(count),
          inside ? Buffer.concat([bytes, Buffer.alloc(4 - bytes.length)]) : u32(free),
        ]),
      );
      if (inside) continue;
      values.push(bytes);
      free += bytes.length;
    }
    return Buffer.concat([u16(entries.length), ...heads, u32(0), ...values]);
  };
  const exif = [...ascii(0x9003, says.time), ...ascii(0x9010, says.offset), ...ascii(0x9011, says.offsetOfOriginal)];
  const gps = [
    ...ascii(0x10, says.reference),
    ...(says.direction ? [{ tag: 0x11, type: 5 as const, count: 1, bytes: Buffer.concat(says.direction.map(u32)) }] : []),
  ];
  const exifAt = 8 + 2 + 2 * 12 + 4;
  const exifBytes = directory(exifAt, exif);
  const gpsAt = exifAt + exifBytes.length;
  const first = directory(8, [long(0x8769, exifAt), long(0x8825, gpsAt)]);
  return Buffer.concat([Buffer.from(little ? 'II' : 'MM'), u16(42), u32(8), first, exifBytes, directory(gpsAt, gps)]);
};

/** The block as APP1, straight after the start of a JPEG (CIPA DC-008, 4.7.2). */
export const inJpeg = (jpeg: Uint8Array, block: Buffer): Uint8Array => {
  const head = Buffer.from([0xff, 0xe1, 0, 0]);
  head.writeUInt16BE(2 + 6 + block.length, 2);
  return new Uint8Array(Buffer.concat([jpeg.subarray(0, 2), head, Buffer.from('Exif\0\0', 'latin1'), block, jpeg.subarray(2)]));
};

/** The block as chunk eXIf, before the end of a PNG (PNG, third edition, 11.3.4.6); no reader here looks at its check sum. */
export const inPng = (png: Uint8Array, block: Buffer): Uint8Array => {
  const head = Buffer.alloc(8, 'xxxxeXIf');
  head.writeUInt32BE(block.length);
  return new Uint8Array(Buffer.concat([png.subarray(0, 33), head, block, Buffer.alloc(4), png.subarray(33)]));
};
