import type { UnitSystem } from '#shared/units/quantity.ts';
import { faint, ink, Paper, type PaperSize, type Typeface } from '#reports/paper.ts';
import { drawPlanChart } from '#reports/plan-chart.ts';
import type { Part, Picture, Sheet } from '#reports/sheet.ts';
import { drawLegend, drawZoneMap, mapWidth } from '#reports/zone-map.ts';

export interface PrintWishes {
  readonly paper: PaperSize;
  readonly units: UnitSystem;
  readonly typeface: Typeface;
}

/** Sizes of the print that are tried to hold a sheet to its pages. */
const scales = [1, 0.95, 0.9, 0.85, 0.8] as const;

/** Prints a sheet: as PDF bytes, with the typeface embedded and every part tagged in reading order. */
export const printSheet = (sheet: Sheet, wishes: PrintWishes): Promise<Uint8Array> => {
  const [largest, ...others] = scales;
  const first = laidOut(sheet, wishes, largest);
  const tooLong = sheet.pages !== null && first.pages > sheet.pages;
  if (!tooLong && !endsInFewLines(first)) return first.finish();
  const wanted = tooLong ? sheet.pages! : first.pages - 1;
  let best = first;
  for (const scale of others) {
    const smaller = laidOut(sheet, wishes, scale);
    if (smaller.pages < best.pages) best = smaller;
    if (best.pages <= wanted) break;
  }
  return best.finish();
};

/** A page is not begun for a few lines: a little smaller, they stand on the page before. */
const endsInFewLines = (paper: Paper): boolean => paper.pages > 1 && paper.y < paper.bottom / 5;

const laidOut = (sheet: Sheet, wishes: PrintWishes, scale: number): Paper => {
  const format = { size: wishes.paper, large: sheet.format === 'large', turned: sheet.turned, scale };
  const paper = new Paper(format, sheet.title, wishes.typeface);
  drawParts(paper, sheet.parts, wishes.units);
  return paper;
};

const drawParts = (paper: Paper, parts: readonly Part[], units: UnitSystem): void =>
  parts.forEach((_, index) => drawPart(paper, parts, index, units));

const drawPart = (paper: Paper, parts: readonly Part[], index: number, units: UnitSystem): void => {
  const part = parts[index]!;
  const after = signaturesAfter(paper, parts, index);
  const above = parts[index - 1];
  switch (part.part) {
    case 'heading':
      return paper.heading(part.text, leastHeight(paper, parts, index + 1));
    case 'sentence':
      return paper.sentence(part.text, part.strong === true ? 'strong' : 'plain', { after });
    case 'small':
      return paper.sentence(part.text, 'small', { after });
    case 'list':
      return paper.list(part.items, part.mark ?? 'dash', part.small === true ? 7.6 : 8.8, { after });
    case 'table':
      return paper.table(part, { after, heading: above?.part === 'heading' ? above.text : null });
    case 'maps':
      return drawMaps(paper, part, units);
    case 'chart':
      return drawPlanChart(paper, part.chart);
    case 'columns':
      return drawColumns(paper, part, units);
    case 'blanks':
      return drawBlanks(paper, part.labels);
    case 'pictures':
      return drawPictures(paper, part.pictures, after);
    case 'page':
      return paper.page();
  }
};

const blanksHeight = 42;

/**
 * pt of the signatures that follow a part, with their heading and the small print below them; 0 where none follow. A page of signatures
 * alone could belong to anything.
 */
const signaturesAfter = (paper: Paper, parts: readonly Part[], index: number): number => {
  const next = parts[index + 1];
  if (next?.part === 'heading')
    return parts[index + 2]?.part === 'blanks' ? paper.heightOfHeading(next.text) + signaturesAfter(paper, parts, index + 1) : 0;
  if (next?.part !== 'blanks') return 0;
  const below = parts[index + 2];
  return blanksHeight + (below?.part === 'small' ? paper.heightOf(below.text, 7.6, paper.width) + 3 : 0);
};

/** How much of a part must stand on the page of the heading above it. */
const leastHeight = (paper: Paper, parts: readonly Part[], index: number): number => {
  const part = parts[index];
  switch (part?.part) {
    case 'maps':
      return paper.size(part.height) + 40;
    case 'chart':
      return Math.min(part.chart.rows.length, 20) * part.chart.rowHeight + 90;
    case 'table':
      return part.rows.length === 0 ? paper.size(30) : paper.startOfTable(part, signaturesAfter(paper, parts, index));
    case 'columns':
      return Math.max(leastHeight(paper, part.left, 0), leastHeight(paper, part.right, 0));
    case 'pictures':
      return heightOfPictures(paper, part.pictures.slice(0, pictureColumns));
    case 'blanks':
      return signaturesAfter(paper, parts, index - 1);
    default:
      return paper.size(30);
  }
};

const captionRoom = 12;

const drawMaps = (paper: Paper, part: Extract<Part, { part: 'maps' }>, units: UnitSystem): void => {
  const { maps, legend } = part;
  const height = paper.size(part.height);
  paper.room(height + captionRoom + 30);
  const share = paper.width / maps.length;
  maps.forEach((drawing, index) => {
    const x = paper.left + index * share;
    const width = mapWidth(drawing, height, share - 6);
    const bbox = [x, paper.y, x + width, paper.y + captionRoom + height];
    paper.mark(
      'Figure',
      () => {
        paper.doc
          .font('bold')
          .fontSize(8.5)
          .fillColor(ink)
          .text(drawing.caption, x, paper.y, { width: share - 4, height: captionRoom, ellipsis: true });
        drawZoneMap(paper, drawing, { x, y: paper.y + captionRoom + 1, width, height }, units);
      },
      { alt: `${drawing.caption}. ${drawing.inWords}`, bbox },
    );
  });
  paper.y += height + captionRoom + 8;
  paper.ornament(() => {
    paper.y = drawLegend(paper, legend, maps.at(-1)!, paper.y);
  });
  paper.y += 2;
};

/** Two columns side by side; the page goes on below the longer one. */
const drawColumns = (paper: Paper, { left, right, share }: Extract<Part, { part: 'columns' }>, units: UnitSystem): void => {
  const gap = 14;
  const [from, width, top, page] = [paper.left, paper.width, paper.y, paper.pages];
  paper.width = width * share - gap / 2;
  drawParts(paper, left, units);
  const [leftEnd, leftPages] = [paper.y, paper.pages];
  paper.left = from + width * share + gap / 2;
  paper.width = width * (1 - share) - gap / 2;
  // A left column that went on to another page takes the right one with it.
  if (leftPages === page) paper.y = top;
  drawParts(paper, right, units);
  paper.left = from;
  paper.width = width;
  if (paper.pages === leftPages) paper.y = Math.max(paper.y, leftEnd);
};

const drawBlanks = (paper: Paper, labels: readonly string[]): void => {
  const { doc } = paper;
  paper.room(blanksHeight);
  const share = paper.width / labels.length;
  labels.forEach((label, index) => {
    const x = paper.left + index * share;
    paper.ornament(() =>
      doc
        .moveTo(x, paper.y + 24)
        .lineTo(x + share - 12, paper.y + 24)
        .lineWidth(0.6)
        .strokeColor(ink)
        .stroke(),
    );
    paper.mark('P', () =>
      doc
        .font('regular')
        .fontSize(7.6)
        .fillColor(faint)
        .text(label, x, paper.y + 26, { width: share - 12, height: 11, ellipsis: true }),
    );
  });
  paper.y += blanksHeight;
};

const pictureColumns = 3;
const captionSize = 7.2;
const pictureHeight = 110;
const pictureShare = (paper: Paper): number => paper.width / pictureColumns;

/** pt of a row of pictures with the longest of its captions. */
const heightOfPictures = (paper: Paper, row: readonly Picture[]): number =>
  paper.size(pictureHeight) +
  Math.max(...row.map((one) => paper.heightOf(one.caption, captionSize, pictureShare(paper) - 8))) +
  10;

const drawPictures = (paper: Paper, pictures: readonly Picture[], after: number): void => {
  const { doc } = paper;
  const share = pictureShare(paper);
  const high = paper.size(pictureHeight);
  for (let from = 0; from < pictures.length; from += pictureColumns) {
    const row = pictures.slice(from, from + pictureColumns);
    const height = heightOfPictures(paper, row);
    paper.room(height + (from + pictureColumns >= pictures.length ? after : 0));
    row.forEach(({ bytes, caption: words }, index) => {
      const x = paper.left + index * share;
      const bbox = [x, paper.y, x + share - 8, paper.y + high];
      paper.mark('Figure', () => doc.image(Buffer.from(bytes), x, paper.y, { fit: [share - 8, high] }), {
        alt: words,
        bbox,
      });
      paper.mark('Caption', () =>
        doc
          .font('regular')
          .fontSize(paper.size(captionSize))
          .fillColor(faint)
          .text(words, x, paper.y + high + 2, { width: share - 8 }),
      );
    });
    paper.y += height;
  }
};
