import type { Forecast, Verdict } from '#shared/vocabulary/forecast.ts';
import type { Polygon } from '#shared/vocabulary/geometry.ts';
import { coverColour, coverSteps } from '#shared/wording/cover-scale.ts';
import { verdictWords } from '#shared/wording/words.ts';
import { show, type UnitSystem } from '#shared/units/quantity.ts';
import { hatch, hatchBox, type Ring } from '#reports/hatch.ts';
import { faint, ink, type Paper } from '#reports/paper.ts';
import type { MapDrawing } from '#reports/sheet.ts';

export interface MapFrame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Light, middle and dark, so that a grey printer tells them apart; new turf is hatched besides. */
export const verdictColours: Readonly<Record<Verdict, string>> = { play: '#eef1ea', patch: '#d9b95c', replace: '#a5492f' };
const newTurf = '#dfe7d2';

type At = (x: number, y: number) => [number, number];

/** Room below a map for the scale bar. */
const barRoom = 16;

/** The ground a map has to hold: the field and every footprint, which may reach onto the hard standing. */
const groundOf = ({ outline, forecast }: MapDrawing): readonly [number, number, number, number] => {
  const corners = [outline, ...forecast.zones.filter((zone) => zone.origin === 'event').flatMap((zone) => zone.outlines)].flat();
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
};

/** Width a map takes at a height. */
export const mapWidth = (drawing: MapDrawing, height: number, most: number): number => {
  const [left, right, bottom, top] = groundOf(drawing);
  return Math.min(most, ((height - barRoom) * (right - left)) / (top - bottom) + 26);
};

/** The field to scale: every cell or zone in its colour, the zones' edges and words, a scale bar and the north. */
export const drawZoneMap = (paper: Paper, drawing: MapDrawing, frame: MapFrame, units: UnitSystem): void => {
  const { doc } = paper;
  const [left, right, bottom, top] = groundOf(drawing);
  const scale = Math.min((frame.width - 24) / (right - left), (frame.height - barRoom) / (top - bottom));
  const at: At = (x, y) => [frame.x + (x - left) * scale, frame.y + (top - y) * scale];
  doc.save();
  if (drawing.fill === 'floors') drawFloors(paper, drawing, at);
  else drawCells(paper, drawing, at, scale);
  for (const zone of drawing.forecast.zones) {
    if (zone.origin === 'rest' || drawing.fill === 'floors') continue;
    for (const outline of zone.outlines)
      pathOf(paper, ringOf(outline, at))
        .lineWidth(zone.origin === 'event' ? 0.9 : 0.3)
        .strokeColor(ink)
        .stroke();
  }
  pathOf(paper, ringOf(drawing.outline, at)).lineWidth(1.3).strokeColor(ink).stroke();
  doc.restore();
  drawLabels(paper, drawing, at, scale);
  drawScaleBar(paper, frame.x, frame.y + (top - bottom) * scale + 12, scale, units);
  drawNorth(paper, frame.x + (right - left) * scale + 12, frame.y + 16, drawing.bearing);
};

const ringOf = (outline: Polygon, at: At): Ring => outline.map(([x, y]) => at(x, y));

const pathOf = (paper: Paper, ring: Ring) => {
  const [first, ...others] = ring;
  paper.doc.moveTo(...first!);
  for (const corner of others) paper.doc.lineTo(...corner);
  return paper.doc.closePath();
};

/** What a cell is coloured with, and whether it is hatched besides. */
const colourOf = ({ fill, forecast, replaced }: MapDrawing): ((cell: number) => string) => {
  const { cells, zones } = forecast;
  const isNew = new Set(replaced);
  const ofCover = (cover: readonly number[]) => (cell: number) => coverColour(cover[cells.group[cell]!]!);
  switch (fill) {
    case 'after':
      return ofCover(cells.coverAfter);
    case 'recovered': {
      const home = ofCover(cells.coverHome);
      return (cell) => (isNew.has(zones[cells.zone[cell]!]?.letter ?? '') ? newTurf : home(cell));
    }
    case 'verdict':
      return (cell) => verdictColours[zones[cells.zone[cell]!]?.verdict ?? 'play'];
    default:
      return ofCover(cells.coverHome);
  }
};

/** Cells row by row; neighbours of the same colour are one strip, so that the file stays small. */
const drawCells = (paper: Paper, drawing: MapDrawing, at: At, scale: number): void => {
  const { doc } = paper;
  const { cells } = drawing.forecast;
  const colour = colourOf(drawing);
  const half = cells.size / 2;
  for (let from = 0; from < cells.x.length;) {
    const own = colour(from);
    let until = from + 1;
    while (
      until < cells.x.length &&
      cells.y[until] === cells.y[from] &&
      cells.x[until]! - cells.x[until - 1]! < 1.5 * cells.size &&
      colour(until) === own
    )
      until++;
    const [x, y] = at(cells.x[from]! - half, cells.y[from]! + half);
    const width = (cells.x[until - 1]! - cells.x[from]! + cells.size) * scale + 0.2;
    const height = cells.size * scale + 0.2;
    doc.rect(x, y, width, height).fillColor(own).fill();
    if (own === newTurf || (drawing.fill === 'verdict' && own === verdictColours.replace))
      hatchBox(doc, x, y, width, height, own === newTurf ? ink : '#ffffff');
    from = until;
  }
};

/** Footprints hatched by what lies on them; the zone named first lies on top. */
const drawFloors = (paper: Paper, { outline, forecast, floors }: MapDrawing, at: At): void => {
  pathOf(paper, ringOf(outline, at)).fillColor('#f1f4ea').fill();
  for (const zone of forecast.zones.filter((one) => one.origin === 'event').toReversed()) {
    for (const polygon of zone.outlines) {
      const ring = ringOf(polygon, at);
      pathOf(paper, ring).fillColor('#ffffff').fill();
      const pattern = floors[zone.letter];
      if (pattern !== undefined) hatch(paper.doc, ring, pattern);
      pathOf(paper, ring).lineWidth(1).strokeColor(ink).stroke();
    }
  }
};

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}
const meets = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

/** Straight runs of a zone's cells: where words can stand, widest first, then nearest to its middle. */
const runsOf = ({ cells }: Forecast, zone: number): readonly { x: number; y: number; width: number }[] => {
  const inside = cells.x.map((_, cell) => cell).filter((cell) => cells.zone[cell] === zone);
  if (inside.length === 0) return [];
  const middle = inside.reduce((sum, cell) => sum + cells.y[cell]!, 0) / inside.length;
  const runs: { x: number; y: number; width: number }[] = [];
  for (let from = 0; from < inside.length;) {
    let until = from + 1;
    while (
      until < inside.length &&
      cells.y[inside[until]!] === cells.y[inside[from]!] &&
      cells.x[inside[until]!]! - cells.x[inside[until - 1]!]! < 1.5 * cells.size
    )
      until++;
    const [first, last] = [cells.x[inside[from]!]!, cells.x[inside[until - 1]!]!];
    runs.push({ x: (first + last) / 2, y: cells.y[inside[from]!]!, width: last - first + cells.size });
    from = until;
  }
  return runs.toSorted((a, b) => b.width - a.width || Math.abs(a.y - middle) - Math.abs(b.y - middle));
};

/** pt, of words on a zone; letters are made smaller where zones are small. */
const labelSizes = [7.5, 6.5, 5.5] as const;

/** Words on every zone, in a white box inside it, clear of the others; the letter alone where there is no room. */
const drawLabels = (paper: Paper, { forecast, labels }: MapDrawing, at: At, scale: number): void => {
  const { doc } = paper;
  const placed: Box[] = [];
  forecast.zones.forEach((zone, index) => {
    const runs = runsOf(forecast, index);
    if (runs.length === 0) return;
    const option = (text: string, size: number, run: (typeof runs)[number]) => {
      const [x, y] = at(run.x, run.y);
      const width = doc.font('bold').fontSize(size).widthOfString(text) + size / 2;
      const height = size * 1.33;
      return { text, size, box: { x: x - width / 2, y: y - height / 2, width, height }, fits: width <= run.width * scale };
    };
    const sizesOf = (text: string): readonly number[] => (text === zone.letter ? labelSizes : labelSizes.slice(0, 1));
    const options = [...new Set([labels[zone.letter] ?? zone.letter, zone.letter])].flatMap((text) =>
      sizesOf(text).flatMap((size) => runs.map((run) => option(text, size, run))),
    );
    const clear = options.filter(({ box }) => !placed.some((other) => meets(box, other)));
    // A zone too narrow for its letter still has one, over its edges.
    const best = clear.find(({ fits }) => fits) ?? clear.find(({ text }) => text === zone.letter) ?? options.at(-1)!;
    placed.push(best.box);
    doc
      .rect(best.box.x, best.box.y, best.box.width, best.box.height)
      .fillColor('#ffffff')
      .fillOpacity(0.88)
      .fill()
      .fillOpacity(1);
    doc
      .font('bold')
      .fontSize(best.size)
      .fillColor(ink)
      .text(best.text, best.box.x + best.size / 4, best.box.y + 0.05 * best.size, { lineBreak: false });
  });
};

const drawScaleBar = (paper: Paper, x: number, y: number, scale: number, units: UnitSystem): void => {
  const length = units === 'us' ? 50 * 0.9144 : 40;
  const { doc } = paper;
  doc
    .moveTo(x, y - 3)
    .lineTo(x, y)
    .lineTo(x + length * scale, y)
    .lineTo(x + length * scale, y - 3)
    .lineWidth(0.8)
    .strokeColor(ink)
    .stroke();
  doc
    .font('regular')
    .fontSize(7.5)
    .fillColor(faint)
    .text(show(length, 'length', units, 0), x + length * scale + 4, y - 7, { lineBreak: false });
};

/** An arrow to the north; the sheet's up is the field's +y. */
const drawNorth = (paper: Paper, x: number, y: number, bearing: number): void => {
  const turn = (-bearing * Math.PI) / 180;
  const [dx, dy] = [Math.sin(turn), -Math.cos(turn)];
  const { doc } = paper;
  doc
    .moveTo(x - 9 * dx, y - 9 * dy)
    .lineTo(x + 9 * dx, y + 9 * dy)
    .lineWidth(1)
    .strokeColor(ink)
    .stroke();
  doc
    .moveTo(x + 9 * dx, y + 9 * dy)
    .lineTo(x + 3 * dx - 3 * dy, y + 3 * dy + 3 * dx)
    .lineTo(x + 3 * dx + 3 * dy, y + 3 * dy - 3 * dx)
    .closePath()
    .fillColor(ink)
    .fill();
  doc
    .font('bold')
    .fontSize(7.5)
    .fillColor(ink)
    .text('N', x + 13 * dx - 3, y + 13 * dy - 5, { lineBreak: false });
};

/** What the colours mean, as one line of boxes. */
export const drawLegend = (paper: Paper, legend: 'cover' | 'verdict' | 'floors', drawing: MapDrawing, y: number): number => {
  const { doc } = paper;
  const entries =
    legend === 'cover'
      ? [
          ...coverSteps.map((step) => ({
            colour: step.colour as string,
            pattern: null as number | null,
            words: step.words as string,
          })),
          ...(drawing.fill === 'recovered' || drawing.replaced.length > 0
            ? [{ colour: newTurf, pattern: 0, words: 'new turf' }]
            : []),
        ]
      : legend === 'verdict'
        ? (Object.keys(verdictColours) as Verdict[]).map((verdict) => ({
            colour: verdictColours[verdict],
            pattern: null,
            words: verdictWords[verdict],
          }))
        : drawing.floorNames.map((words, pattern) => ({ colour: '#ffffff', pattern, words }));
  let x = paper.left;
  let line = y;
  doc.font('regular').fontSize(7.5);
  for (const { colour, pattern, words } of entries) {
    const width = 18 + doc.widthOfString(words) + 12;
    if (x + width > paper.left + paper.width && x > paper.left) {
      x = paper.left;
      line += 12;
    }
    doc.rect(x, line, 14, 8).fillColor(colour).fill();
    if (pattern !== null)
      hatch(
        doc,
        [
          [x, line],
          [x + 14, line],
          [x + 14, line + 8],
          [x, line + 8],
        ],
        pattern,
      );
    doc.rect(x, line, 14, 8).lineWidth(0.4).strokeColor(ink).stroke();
    doc
      .font('regular')
      .fontSize(7.5)
      .fillColor(ink)
      .text(words, x + 18, line - 1, { lineBreak: false });
    x += width;
  }
  return line + 12;
};
