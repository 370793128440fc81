import type { Forecast, Verdict } from '#shared/vocabulary/forecast.ts';
import type { Polygon } from '#shared/vocabulary/geometry.ts';
import { coverColour, coverSteps } from '#shared/wording/cover-scale.ts';
import { verdictMarks } from '#shared/wording/words.ts';
import { faint, ink, type Paper } from '#reports/paper.ts';
import { show, type UnitSystem } from '#shared/units/quantity.ts';

export interface MapFrame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface MapSubject {
  readonly forecast: Forecast;
  readonly outline: Polygon;
  /** Bearing of the field's +y axis, °. */
  readonly bearing: number;
  /** Which of the two states is drawn. */
  readonly state: 'after' | 'home';
}

/** The field to scale with the state of every cell as a colour, the zones' edges and letters, and the verdict as a letter beside. */
export const drawZoneMap = (paper: Paper, subject: MapSubject, frame: MapFrame, units: UnitSystem): void => {
  const { doc } = paper;
  // Footprints may reach onto the hard standing: the frame holds them too.
  const corners = [
    subject.outline,
    ...subject.forecast.zones.filter((zone) => zone.origin === 'event').flatMap((zone) => zone.outlines),
  ].flat();
  const xs = corners.map(([x]) => x);
  const ys = corners.map(([, y]) => y);
  const [left, right, bottom, top] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const scale = Math.min(frame.width / (right - left), (frame.height - 16) / (top - bottom));
  const at = (x: number, y: number): [number, number] => [frame.x + (x - left) * scale, frame.y + (top - y) * scale];
  doc.save();
  drawCells(paper, subject, at, scale);
  for (const zone of subject.forecast.zones) {
    if (zone.origin === 'rest') continue;
    for (const outline of zone.outlines)
      ring(paper, outline, at)
        .lineWidth(zone.origin === 'event' ? 0.9 : 0.3)
        .strokeColor(ink)
        .stroke();
  }
  ring(paper, subject.outline, at).lineWidth(1.2).strokeColor(ink).stroke();
  doc.restore();
  for (const zone of subject.forecast.zones) label(paper, subject.forecast, zone.letter, zone.verdict, at);
  drawScaleBar(paper, frame, scale, units);
  drawNorth(paper, frame.x + (right - left) * scale + 12, frame.y + 16, subject.bearing);
};

const ring = (paper: Paper, outline: Polygon, at: (x: number, y: number) => [number, number]) => {
  const [first, ...others] = outline.map(([x, y]) => at(x, y));
  paper.doc.moveTo(...first!);
  for (const corner of others) paper.doc.lineTo(...corner);
  return paper.doc.closePath();
};

/** Cells row by row; neighbours of the same colour are one strip, so that the file stays small. */
const drawCells = (
  paper: Paper,
  { forecast, state }: MapSubject,
  at: (x: number, y: number) => [number, number],
  scale: number,
): void => {
  const { cells } = forecast;
  const cover = state === 'after' ? cells.coverAfter : cells.coverHome;
  const half = cells.size / 2;
  for (let from = 0; from < cells.x.length;) {
    const colour = coverColour(cover[cells.group[from]!]!);
    let until = from + 1;
    while (until < cells.x.length && cells.y[until] === cells.y[from] && coverColour(cover[cells.group[until]!]!) === colour)
      until++;
    const [x, y] = at(cells.x[from]! - half, cells.y[from]! + half);
    paper.doc
      .rect(x, y, (cells.x[until - 1]! - cells.x[from]! + cells.size) * scale + 0.2, cells.size * scale + 0.2)
      .fillColor(colour)
      .fill();
    from = until;
  }
};

/** The letter of a zone on the cell nearest to the middle of its turf, with the verdict's letter. */
const label = (
  paper: Paper,
  { cells, zones }: Forecast,
  letter: string,
  verdict: Verdict,
  at: (x: number, y: number) => [number, number],
): void => {
  const own = zones.findIndex((zone) => zone.letter === letter);
  const inside = cells.x.map((_, cell) => cell).filter((cell) => cells.zone[cell] === own);
  if (inside.length === 0) return;
  const mean = (values: readonly number[]): number => inside.reduce((sum, cell) => sum + values[cell]!, 0) / inside.length;
  const [mx, my] = [mean(cells.x), mean(cells.y)];
  const nearest = inside.reduce((best, cell) =>
    Math.hypot(cells.x[cell]! - mx, cells.y[cell]! - my) < Math.hypot(cells.x[best]! - mx, cells.y[best]! - my) ? cell : best,
  );
  const [x, y] = at(cells.x[nearest]!, cells.y[nearest]!);
  const text = `${letter} ${verdictMarks[verdict]}`;
  const { doc } = paper;
  doc.font('bold').fontSize(7.5);
  const width = doc.widthOfString(text) + 5;
  doc
    .rect(x - width / 2, y - 5, width, 10)
    .fillColor('#ffffff')
    .fillOpacity(0.85)
    .fill()
    .fillOpacity(1);
  doc.fillColor(ink).text(text, x - width / 2 + 2.5, y - 4.5, { lineBreak: false });
};

const drawScaleBar = (paper: Paper, frame: MapFrame, scale: number, units: UnitSystem): void => {
  const length = units === 'us' ? 50 * 0.9144 : 40;
  const { doc } = paper;
  const y = frame.y + frame.height - 6;
  doc
    .moveTo(frame.x, y - 3)
    .lineTo(frame.x, y)
    .lineTo(frame.x + length * scale, y)
    .lineTo(frame.x + length * scale, y - 3)
    .lineWidth(0.8)
    .strokeColor(ink)
    .stroke();
  doc
    .font('regular')
    .fontSize(7.5)
    .fillColor(faint)
    .text(show(length, 'length', units, 0), frame.x + length * scale + 4, y - 6, { lineBreak: false });
};

/** An arrow to the north; the sheet's up is the field's +y. */
const drawNorth = (paper: Paper, x: number, y: number, bearing: number): void => {
  const turn = (-bearing * Math.PI) / 180;
  const [dx, dy] = [Math.sin(turn), -Math.cos(turn)];
  const { doc } = paper;
  doc
    .moveTo(x - 10 * dx, y - 10 * dy)
    .lineTo(x + 10 * dx, y + 10 * dy)
    .lineWidth(1)
    .strokeColor(ink)
    .stroke();
  doc
    .moveTo(x + 10 * dx, y + 10 * dy)
    .lineTo(x + 4 * dx - 3 * dy, y + 4 * dy + 3 * dx)
    .lineTo(x + 4 * dx + 3 * dy, y + 4 * dy - 3 * dx)
    .closePath()
    .fillColor(ink)
    .fill();
  doc
    .font('bold')
    .fontSize(8)
    .text('N', x + 14 * dx - 3, y + 14 * dy - 5, { lineBreak: false });
};

/** The colour scale as a row of boxes with their cover. */
export const drawCoverLegend = (paper: Paper, x: number, y: number): void => {
  const { doc } = paper;
  doc.font('regular').fontSize(7.5).fillColor(faint).text('Live cover', x, y, { lineBreak: false });
  coverSteps.forEach((step, index) => {
    doc
      .rect(x, y + 12 + 13 * index, 14, 10)
      .fillColor(step.colour)
      .fill();
    doc
      .rect(x, y + 12 + 13 * index, 14, 10)
      .lineWidth(0.3)
      .strokeColor(faint)
      .stroke();
    doc.fillColor(ink).text(step.words, x + 19, y + 12 + 13 * index, { lineBreak: false });
  });
};
