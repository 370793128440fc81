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
  parts.forEach((part, index) => drawPart(paper, part, parts[index + 1], units));

const drawPart = (paper: Paper, part: Part, next: Part | undefined, units: UnitSystem): void => {
  switch (part.part) {
    case 'heading':
      return paper.heading(part.text, leastHeight(paper, next));
    case 'sentence':
      return paper.sentence(part.text, part.strong === true ? 'strong' : 'plain');
    case 'small':
      return paper.sentence(part.text, 'small');
    case 'list':
      return paper.list(part.items, part.mark ?? 'dash', part.small === true ? 7.6 : 8.8);
    case 'table':
      return paper.table(part);
    case 'maps':
      return drawMaps(paper, part, units);
    case 'chart':
      return drawPlanChart(paper, part.chart);
    case 'columns':
      return drawColumns(paper, part, units);
    case 'blanks':
      return drawBlanks(paper, part.labels);
    case 'pictures':
      return drawPictures(paper, part.pictures);
    case 'page':
      return paper.page();
  }
};

/** How much of the next part must stand on the page of its heading. */
const leastHeight = (paper: Paper, next: Part | undefined): number => {
  switch (next?.part) {
    case 'maps':
      return paper.size(next.height) + 40;
    case 'chart':
      return Math.min(next.chart.rows.length, 20) * next.chart.rowHeight + 90;
    case 'table':
      return next.rows.length === 0 ? paper.size(30) : paper.startOfTable(next);
    case 'columns':
      return Math.max(leastHeight(paper, next.left[0]), leastHeight(paper, next.right[0]));
    case 'pictures':
      return 130;
    case 'blanks':
      return 50;
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
  paper.room(42);
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
  paper.y += 42;
};

const drawPictures = (paper: Paper, pictures: readonly Picture[]): void => {
  const { doc } = paper;
  const columns = 3;
  const share = paper.width / columns;
  const caption = { size: 7.2, width: share - 8 };
  const pictureHeight = paper.size(110);
  for (let from = 0; from < pictures.length; from += columns) {
    const row = pictures.slice(from, from + columns);
    const captions = Math.max(...row.map((one) => paper.heightOf(one.caption, caption.size, caption.width)));
    paper.room(pictureHeight + captions + 10);
    row.forEach(({ bytes, caption: words }, index) => {
      const x = paper.left + index * share;
      const bbox = [x, paper.y, x + share - 8, paper.y + pictureHeight];
      paper.mark('Figure', () => doc.image(Buffer.from(bytes), x, paper.y, { fit: [share - 8, pictureHeight] }), {
        alt: words,
        bbox,
      });
      paper.mark('Caption', () =>
        doc
          .font('regular')
          .fontSize(paper.size(caption.size))
          .fillColor(faint)
          .text(words, x, paper.y + pictureHeight + 2, { width: caption.width }),
      );
    });
    paper.y += pictureHeight + captions + 10;
  }
};
