/** One drawing of the icon: a PNG of `size` × `size` pixels. */
export interface IconDrawing {
  readonly size: number;
  readonly png: Uint8Array;
}

/** A Windows icon: a directory of 16 bytes a drawing, then the drawings, which may be whole PNG files since Windows Vista. */
export const icoOf = (drawings: readonly IconDrawing[]): Buffer => {
  const head = Buffer.alloc(6 + 16 * drawings.length);
  head.writeUInt16LE(1, 2);
  head.writeUInt16LE(drawings.length, 4);
  let at = head.length;
  for (const [index, { size, png }] of drawings.entries()) {
    const entry = 6 + 16 * index;
    // 0 stands for 256.
    head.writeUInt8(size % 256, entry);
    head.writeUInt8(size % 256, entry + 1);
    head.writeUInt16LE(1, entry + 4);
    head.writeUInt16LE(32, entry + 6);
    head.writeUInt32LE(png.length, entry + 8);
    head.writeUInt32LE(at, entry + 12);
    at += png.length;
  }
  return Buffer.concat([head, ...drawings.map(({ png }) => png)]);
};

/** Names of PNG drawings in a macOS icon by their size in pixels. */
const icnsNames: Readonly<Record<number, string>> = {
  16: 'icp4',
  32: 'icp5',
  128: 'ic07',
  256: 'ic08',
  512: 'ic09',
  1024: 'ic10',
};
export const icnsSizes = Object.keys(icnsNames).map(Number);

/** A macOS icon: `icns`, the length of all, then drawings, each with its name and its length, heads included. */
export const icnsOf = (drawings: readonly IconDrawing[]): Buffer => {
  const part = (name: string, content: Uint8Array): Buffer => {
    const head = Buffer.alloc(8);
    head.write(name, 'latin1');
    head.writeUInt32BE(8 + content.length, 4);
    return Buffer.concat([head, content]);
  };
  return part('icns', Buffer.concat(drawings.map(({ size, png }) => part(icnsNames[size]!, png))));
};
