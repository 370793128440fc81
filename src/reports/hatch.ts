import { ink } from '#reports/paper.ts';

/** Corners of a closed figure on the page, pt. */
export type Ring = readonly (readonly [number, number])[];

/** Directions of the lines, in degrees, and how far apart they are, pt. Told apart without colour. */
const patterns = [
  { angles: [45], gap: 5 },
  { angles: [-45], gap: 5 },
  { angles: [45, -45], gap: 6 },
  { angles: [0], gap: 4.5 },
  { angles: [90], gap: 4.5 },
  { angles: [0, 90], gap: 6 },
  { angles: [20], gap: 3 },
  { angles: [70], gap: 3 },
] as const;

/** Fills a figure with lines. */
export const hatch = (doc: PDFKit.PDFDocument, ring: Ring, pattern: number): void => {
  const { angles, gap } = patterns[pattern % patterns.length]!;
  const xs = ring.map(([x]) => x);
  const ys = ring.map(([, y]) => y);
  const [mx, my] = [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
  const reach = Math.hypot(Math.max(...xs) - mx, Math.max(...ys) - my) + gap;
  doc.save();
  const [first, ...others] = ring;
  doc.moveTo(...(first as [number, number]));
  for (const corner of others) doc.lineTo(...(corner as [number, number]));
  doc.closePath().clip();
  doc.lineWidth(0.35).strokeColor(ink);
  for (const angle of angles) {
    const [cos, sin] = [Math.cos((angle * Math.PI) / 180), Math.sin((angle * Math.PI) / 180)];
    for (let off = -reach; off <= reach; off += gap)
      doc
        .moveTo(mx - reach * cos - off * sin, my - reach * sin + off * cos)
        .lineTo(mx + reach * cos - off * sin, my + reach * sin + off * cos);
  }
  doc.stroke();
  doc.restore();
};

/** Slanting lines over a box, in step with every other box, so that strips of one zone read as one. */
export const hatchBox = (doc: PDFKit.PDFDocument, x: number, y: number, width: number, height: number, colour: string): void => {
  const gap = 5;
  doc.lineWidth(0.4).strokeColor(colour);
  // Lines x + y = k · gap, cut to the box.
  for (let k = Math.ceil((x + y) / gap); k * gap <= x + width + y + height; k++) {
    const sum = k * gap;
    const fromX = Math.max(x, sum - (y + height));
    const toX = Math.min(x + width, sum - y);
    if (toX > fromX) doc.moveTo(fromX, sum - fromX).lineTo(toX, sum - toX);
  }
  doc.stroke();
};
