import PDFDocument from 'pdfkit';
import { heldTogether } from '#reports/held-together.ts';
import type { Column, TablePart, TitleBlock } from '#reports/sheet.ts';

/** The two weights of the typeface as bytes, so that a paper embeds its own letters. */
export interface Typeface {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

export type PaperSize = 'letter' | 'a4';

export interface PaperFormat {
  readonly size: PaperSize;
  /** Tabloid or A3. */
  readonly large: boolean;
  readonly turned: boolean;
  /** Size of the print; 1 is ordinary. */
  readonly scale: number;
}

type Element = PDFKit.PDFStructureElement;

/** What an element of the text can carry; the type declarations know only a part of it. */
type ElementOptions = PDFKit.Mixins.StructureElementOptions & { bbox?: number[]; scope?: 'Column' };

/** What a part needs to know of those beside it. */
export interface Beside {
  /** pt of what follows and stands on the page of the end of the part: signatures below what they sign. */
  readonly after?: number;
  /** The heading right above a table, said again where the table goes on. */
  readonly heading?: string | null;
}

const margin = 36;
const footHeight = 20;
/** Most rows of a table that is not broken at all, where half a page holds them. */
const unbrokenRows = 7;
/** Room at the sides of a cell, so that a right-aligned column does not touch the next. */
const cellPad = 3.5;
export const ink = '#1b1b1a';
export const faint = '#5b5a56';
export const rule = '#b9b7b0';

const sizes = { letter: ['LETTER', 'TABLOID'], a4: ['A4', 'A3'] } as const;

/**
 * A drawing sheet of plain parts: title block, headings, sentences, tables that never break inside a row, and room for drawings.
 * Everything is placed from the top down and tagged in that order, so that a reader hears it as it is seen. A part that does not fit
 * begins a new page. The same parts give the same bytes.
 */
export class Paper {
  readonly doc: PDFKit.PDFDocument;
  readonly scale: number;
  readonly bottom: number;
  /** Left edge and width of what is being written: the page, or a column of it. */
  left = margin;
  width: number;
  y = margin;
  readonly #title: TitleBlock;
  readonly #done: Promise<Uint8Array>;
  readonly #root: Element;
  readonly #widthsOfWords = new Map<string, number>();
  #pages = 1;

  constructor(format: PaperFormat, title: TitleBlock, typeface: Typeface) {
    this.doc = new PDFDocument({
      size: sizes[format.size][format.large ? 1 : 0],
      layout: format.turned ? 'landscape' : 'portrait',
      margin: 0,
      bufferPages: true,
      lang: 'en',
      displayTitle: true,
      tagged: true,
      pdfVersion: '1.7',
      info: {
        Title: `${title.paper}: ${title.subject}`,
        Author: 'Fieldback',
        Subject: title.venue,
        CreationDate: new Date(title.createdAt),
        ModDate: new Date(title.createdAt),
      },
    });
    this.doc.registerFont('regular', Buffer.from(typeface.regular));
    this.doc.registerFont('bold', Buffer.from(typeface.bold));
    this.scale = format.scale;
    this.width = this.doc.page.width - 2 * margin;
    this.bottom = this.doc.page.height - margin - footHeight;
    this.#title = title;
    this.#done = collected(this.doc);
    this.#root = this.doc.struct('Document', { title: title.paper });
    this.doc.addStructure(this.#root);
    this.#plainSpaces();
    this.#block();
  }

  get pages(): number {
    return this.#pages;
  }

  /** pt of text of an ordinary size, at the scale of this paper. */
  size(points: number): number {
    return points * this.scale;
  }

  /** Goes to a new page when less than `height` pt is left. */
  room(height: number): void {
    if (this.y + height > this.bottom) this.page();
  }

  page(): void {
    this.doc.addPage();
    this.#pages++;
    this.y = margin;
    this.#runningHead();
  }

  /** Draws something that is read, as one element of the text. */
  mark(type: string, draw: () => void, options: ElementOptions = {}, under: Element = this.#root): void {
    const element = this.doc.struct(type, options);
    under.add(element);
    const content = this.doc.markStructureContent(type);
    draw();
    this.doc.endMarkedContent();
    element.add(content);
    element.end();
  }

  /** Draws something that is only seen: rules, running heads. */
  ornament(draw: () => void): void {
    this.doc.markContent('Artifact', { type: 'Layout' });
    draw();
    this.doc.endMarkedContent();
  }

  /** Both spaces have one glyph, and who copies a text gets the one that was drawn first: the plain one. */
  #plainSpaces(): void {
    this.ornament(() => {
      for (const font of ['regular', 'bold']) this.doc.font(font).fontSize(1).text(' ', margin, margin, { lineBreak: false });
    });
  }

  /** A heading, kept on the page of what follows it when that needs no more than `keep` pt. */
  heading(words: string, keep = 40): void {
    const text = heldTogether(words);
    const height = this.heightOfHeading(words);
    if (this.y + height + Math.min(keep, this.bottom - margin - 60) > this.bottom) this.page();
    this.y += this.size(6);
    this.mark('H2', () => this.#write(text, 'bold', 11.5, ink, this.left, this.y, this.width));
    this.y += height - this.size(6);
  }

  /** A paragraph; `strong` for the one sentence that must be read, `small` for what is there to be looked up. */
  sentence(words: string, weight: 'plain' | 'strong' | 'small' = 'plain', { after = 0 }: Beside = {}): void {
    const text = heldTogether(words);
    const [font, size] = weight === 'strong' ? (['bold', 11] as const) : (['regular', weight === 'small' ? 7.6 : 9.2] as const);
    const height = this.#heightOf(text, font, size, this.width);
    this.room(height + 3 + after);
    this.mark('P', () => this.#write(text, font, size, weight === 'small' ? faint : ink, this.left, this.y, this.width));
    this.y += height + this.size(3);
  }

  list(given: readonly string[], mark: 'dash' | 'box' | 'number', size: number, { after = 0 }: Beside = {}): void {
    if (given.length === 0) return;
    const items = given.map(heldTogether);
    const element = this.doc.struct('L');
    this.#root.add(element);
    const indent = this.size(mark === 'number' ? 18 : 12);
    const heights = items.map((item) => this.#heightOf(item, 'regular', size, this.width - indent));
    items.forEach((item, index) => {
      const height = heights[index]!;
      // Below the last two items stands what follows.
      const last = index === items.length - 2 && after > 0 ? heights.at(-1)! + this.size(2) : 0;
      this.room(height + 2 + last + (index >= items.length - 2 ? after : 0));
      const row = this.doc.struct('LI');
      element.add(row);
      const sign = (draw: () => void): void => this.mark('Lbl', draw, {}, row);
      if (mark === 'box')
        sign(() =>
          this.doc
            .rect(this.left, this.y + this.size(2), this.size(7), this.size(7))
            .lineWidth(0.7)
            .strokeColor(ink)
            .stroke(),
        );
      else sign(() => this.#write(mark === 'number' ? `${index + 1}.` : '–', 'regular', size, ink, this.left, this.y, indent));
      this.mark('LBody', () => this.#write(item, 'regular', size, ink, this.left + indent, this.y, this.width - indent), {}, row);
      row.end();
      this.y += height + this.size(2);
    });
    element.end();
    this.y += this.size(2);
  }

  /**
   * A table; its head stands again on each page, and a row is never torn apart unless it is higher than a page. A short table is not
   * broken at all; where a long one goes on, the heading above it is said again.
   */
  table(given: TablePart, { after = 0, heading = null }: Beside = {}): void {
    if (given.rows.length === 0) return this.sentence(given.empty, 'plain', { after });
    const { columns, rows, rowHeight = 0, sum = false } = tableHeldTogether(given);
    const widths = this.#widths(columns, rows, sum);
    const heads = columns.map((column) => column.head);
    const named = heads.some((head) => head !== '');
    const headHeight = named ? this.#rowHeight(heads, widths, true, 0) : 0;
    this.room(this.startOfTable(given, after));
    const element = this.doc.struct('Table');
    this.#root.add(element);
    if (named) this.#row(element, columns, widths, heads, headHeight, 'head');
    else this.#ruleAt(0.8);
    const goOn = (): void => {
      this.page();
      if (heading !== null) this.#goesOn(heading);
      if (named) this.ornament(() => this.#cells(columns, widths, heads, headHeight, true, faint));
      this.y += headHeight;
      this.#ruleAt(0.8);
    };
    const waiting = [...rows];
    for (let cells = waiting.shift(); cells !== undefined; cells = waiting.shift()) {
      const [now, ...rest] = this.#pieces(cells, widths, this.bottom - this.y);
      waiting.unshift(...rest);
      const bold = sum && waiting.length === 0;
      const height = this.#rowHeight(now!, widths, bold, rowHeight);
      // A sum does not stand alone at the top of a page, and neither does the last row, nor a signature without a row above it.
      const last = waiting.length === 1 ? this.#rowHeight(waiting[0]!, widths, sum, rowHeight) : 0;
      const beside = height + last > this.#mostRowHeight ? 0 : last;
      if (this.y + height + beside + (waiting.length <= 1 ? after : 0) > this.bottom) goOn();
      const top = this.y;
      this.#row(element, columns, widths, now!, height, bold ? 'sum' : 'body');
      if (rowHeight > 0) this.#boxesAt(widths, top);
    }
    element.end();
    this.y += this.size(5);
  }

  #goesOn(heading: string): void {
    const words = `${heldTogether(heading)}, continued`;
    this.ornament(() => this.#write(words, 'bold', 9, faint, this.left, this.y, this.width));
    this.y += this.#heightOf(words, 'bold', 9, this.width) + this.size(2);
  }

  /** Height of the head and the first rows of a table, which stand on one page; of a short one all rows and what follows them. */
  startOfTable(given: Pick<TablePart, 'columns' | 'rows' | 'rowHeight'>, after = 0): number {
    const { columns, rows, rowHeight = 0 } = tableHeldTogether(given);
    const widths = this.#widths(columns, rows, false);
    const head = this.#rowHeight(
      columns.map((column) => column.head),
      widths,
      true,
      0,
    );
    const of = (some: typeof rows): number =>
      some.reduce((all, cells) => all + this.#rowHeight(cells, widths, false, rowHeight), head) + this.size(4);
    const most = (this.bottom - margin) / 2;
    const unbroken = rows.length <= unbrokenRows ? of(rows) + after : Infinity;
    return unbroken <= most ? unbroken : Math.min(of(rows.slice(0, 3)), most);
  }

  /** Widths as the sheet shares them out, moved only where the longest word of a column would be torn. */
  #widths(columns: readonly Column[], rows: readonly (readonly string[])[], sum: boolean): readonly number[] {
    const total = columns.reduce((all, column) => all + column.width, 0);
    const shared = columns.map((column) => (column.width / total) * this.width);
    const needed = columns.map((column, index) =>
      Math.min(
        this.width / 4,
        2 * cellPad +
          1 +
          Math.max(
            this.#longestWord(column.head, 'bold'),
            ...rows.map((cells, row) =>
              this.#longestWord(cells[index] ?? '', sum && row === rows.length - 1 ? 'bold' : 'regular'),
            ),
          ),
      ),
    );
    const short = shared.reduce((all, width, index) => all + Math.max(0, needed[index]! - width), 0);
    const spare = shared.reduce((all, width, index) => all + Math.max(0, width - needed[index]!), 0);
    if (short === 0 || spare === 0) return shared;
    const taken = Math.min(1, short / spare);
    return shared.map((width, index) =>
      width < needed[index]!
        ? width + (needed[index]! - width) * Math.min(1, spare / short)
        : width - (width - needed[index]!) * taken,
    );
  }

  #longestWord(text: string, font: 'regular' | 'bold'): number {
    return Math.max(0, ...text.split(/[ \n]+/).map((word) => this.#widthOf(word, font)));
  }

  #widthOf(word: string, font: 'regular' | 'bold'): number {
    const key = `${font} ${word}`;
    let width = this.#widthsOfWords.get(key);
    if (width === undefined) {
      width = this.doc.font(font).fontSize(this.size(8.2)).widthOfString(word);
      this.#widthsOfWords.set(key, width);
    }
    return width;
  }

  /** Numbers the pages and gives the bytes. */
  async finish(): Promise<Uint8Array> {
    const { count } = this.doc.bufferedPageRange();
    const width = this.doc.page.width - 2 * margin;
    for (let page = 0; page < count; page++) {
      this.doc.switchToPage(page);
      const y = this.doc.page.height - margin - 9;
      this.doc.markContent('Artifact', { type: 'Pagination' });
      this.doc.font('regular').fontSize(7.5).fillColor(faint);
      this.doc.text(this.#title.footnote, margin, y, { width: width - 80, lineBreak: false, ellipsis: true, height: 10 });
      this.doc.text(`page ${page + 1} of ${count}`, margin + width - 80, y, { width: 80, align: 'right', lineBreak: false });
      this.doc.endMarkedContent();
    }
    this.#root.end();
    this.doc.end();
    return this.#done;
  }

  /** Height that a heading takes, with the room above and below it. */
  heightOfHeading(words: string): number {
    return this.#heightOf(heldTogether(words), 'bold', 11.5, this.width) + this.size(9);
  }

  /** Height that a text takes. */
  heightOf(text: string, size: number, width: number): number {
    return this.#heightOf(text, 'regular', size, width);
  }

  #heightOf(text: string, font: 'regular' | 'bold', size: number, width: number): number {
    return this.doc
      .font(font)
      .fontSize(this.size(size))
      .heightOfString(text || ' ', { width });
  }

  #write(text: string, font: 'regular' | 'bold', size: number, colour: string, x: number, y: number, width: number): void {
    this.doc.font(font).fontSize(this.size(size)).fillColor(colour).text(text, x, y, { width });
  }

  get #mostRowHeight(): number {
    return this.bottom - margin - 90;
  }

  /**
   * A row higher than a page as what fits into `room` pt of this one and the rest, which goes on in the same columns; a row that a page
   * holds stays whole. Where little room is left, as much as a new page holds.
   */
  #pieces(cells: readonly string[], widths: readonly number[], room: number): readonly (readonly string[])[] {
    const whole = this.#mostRowHeight - this.size(3);
    const within = (most: number) => (text: string, index: number) =>
      this.#heightOf(text, 'bold', 8.2, widths[index]! - 2 * cellPad) <= most;
    if (cells.every(within(whole))) return [cells];
    const fits = within(room > whole / 3 ? Math.min(whole, room - this.size(3)) : whole);
    const rests = cells.map((cell, index) => {
      if (fits(cell, index)) return [cell, ''] as const;
      const words = cell.split(' ');
      let [low, high] = [1, words.length];
      while (low < high) {
        const middle = Math.ceil((low + high) / 2);
        if (fits(words.slice(0, middle).join(' '), index)) low = middle;
        else high = middle - 1;
      }
      return [words.slice(0, low).join(' '), words.slice(low).join(' ')] as const;
    });
    const rest = rests.map(([, later]) => later);
    const first = rests.map(([now]) => now);
    return rest.some((text) => text !== '') ? [first, rest] : [first];
  }

  /** Never higher than a page: a single word that would be is cut with an ellipsis. */
  #rowHeight(cells: readonly string[], widths: readonly number[], bold: boolean, least: number): number {
    const heights = cells.map((cell, index) =>
      this.#heightOf(cell, bold ? 'bold' : 'regular', 8.2, widths[index]! - 2 * cellPad),
    );
    return Math.min(Math.max(least, ...heights) + this.size(3), this.#mostRowHeight);
  }

  #row(
    table: Element,
    columns: readonly Column[],
    widths: readonly number[],
    cells: readonly string[],
    height: number,
    kind: 'head' | 'body' | 'sum',
  ): void {
    const row = this.doc.struct('TR');
    table.add(row);
    this.#cells(columns, widths, cells, height, kind !== 'body', kind === 'head' ? faint : ink, (draw) =>
      this.mark(kind === 'head' ? 'TH' : 'TD', draw, kind === 'head' ? { scope: 'Column' } : {}, row),
    );
    row.end();
    this.y += height;
    this.#ruleAt(kind === 'head' ? 0.8 : 0.3);
  }

  #cells(
    columns: readonly Column[],
    widths: readonly number[],
    cells: readonly string[],
    height: number,
    bold: boolean,
    colour: string,
    tag: (draw: () => void) => void = (draw) => draw(),
  ): void {
    let x = this.left;
    columns.forEach((column, index) => {
      const cell = cells[index] ?? '';
      tag(() =>
        this.doc
          .font(bold ? 'bold' : 'regular')
          .fontSize(this.size(8.2))
          .fillColor(colour)
          .text(cell, x + cellPad, this.y + this.size(1.5), {
            width: widths[index]! - 2 * cellPad,
            height: height - this.size(1.5),
            ellipsis: true,
            align: column.align ?? 'left',
          }),
      );
      x += widths[index]!;
    });
  }

  #ruleAt(lineWidth: number): void {
    this.ornament(() =>
      this.doc
        .moveTo(this.left, this.y)
        .lineTo(this.left + this.width, this.y)
        .lineWidth(lineWidth)
        .strokeColor(rule)
        .stroke(),
    );
  }

  /** Lines between the cells of a row that is written on by hand. */
  #boxesAt(widths: readonly number[], top: number): void {
    this.ornament(() => {
      let x = this.left;
      for (const width of widths.slice(0, -1)) {
        x += width;
        this.doc.moveTo(x, top).lineTo(x, this.y);
      }
      this.doc.lineWidth(0.3).strokeColor(rule).stroke();
    });
  }

  #block(): void {
    const { doc } = this;
    const { paper, venue, subject, facts } = this.#title;
    const [left, top, width, height] = [margin, margin, doc.page.width - 2 * margin, 48];
    this.ornament(() => doc.rect(left, top, width, height).lineWidth(0.8).strokeColor(ink).stroke());
    const inner = width * 0.6;
    this.mark('H1', () =>
      doc
        .font('bold')
        .fontSize(fitting(doc.font('bold'), paper, 16, 10, inner))
        .fillColor(ink)
        .text(paper, left + 8, top + 5, { width: inner, lineBreak: false }),
    );
    this.#belongsTo(`${venue} · ${subject}`, [venue, subject], left + 8, top + 28, inner);
    facts.slice(0, 4).forEach((fact, line) =>
      this.mark('P', () =>
        doc
          .font('regular')
          .fontSize(8)
          .fillColor(ink)
          .text(fact, left + width * 0.62, top + 3.5 + 10.6 * line, {
            width: width * 0.38 - 8,
            align: 'right',
            height: 11,
            ellipsis: true,
          }),
      ),
    );
    this.y = top + height + 8;
  }

  /** Venue and event on one line, or, where the names are long, on one line each. */
  #belongsTo(together: string, apart: readonly string[], x: number, y: number, width: number): void {
    const fits = this.doc.font('regular').fontSize(9).widthOfString(together) <= width;
    const lines = fits ? [together] : apart;
    lines.forEach((line, index) => {
      const [size, top] = fits ? [9, y] : [7.5, y - 3 + 10 * index];
      this.mark('P', () =>
        this.doc
          .font('regular')
          .fontSize(size)
          .fillColor(ink)
          .text(line, x, top, { width, height: size + 3, ellipsis: true }),
      );
    });
  }

  /** A text cut to a width with an ellipsis, in the font that is set. */
  #cut(text: string, width: number): string {
    if (this.doc.widthOfString(text) <= width) return text;
    let end = text.length;
    while (end > 0 && this.doc.widthOfString(`${text.slice(0, end).trimEnd()}…`) > width) end--;
    return `${text.slice(0, end).trimEnd()}…`;
  }

  /** On every page after the first: one line that says what it belongs to; long names are cut, each to a fair share. */
  #runningHead(): void {
    const { doc } = this;
    const { paper, venue, subject, facts } = this.#title;
    const width = doc.page.width - 2 * margin;
    this.ornament(() => {
      doc.font('regular').fontSize(7.5).fillColor(faint);
      const room = width * 0.72;
      const all = `${paper} · ${venue} · ${subject}`;
      const share = (room - doc.widthOfString(`${paper} ·  · `)) / 2;
      const words = doc.widthOfString(all) <= room ? all : `${paper} · ${this.#cut(venue, share)} · ${this.#cut(subject, share)}`;
      doc.text(words, margin, margin, { lineBreak: false });
      doc.text(facts.at(-1) ?? '', margin + width * 0.72, margin, {
        width: width * 0.28,
        height: 10,
        ellipsis: true,
        align: 'right',
      });
      doc
        .moveTo(margin, margin + 12)
        .lineTo(margin + width, margin + 12)
        .lineWidth(0.6)
        .strokeColor(ink)
        .stroke();
    });
    this.y = margin + 18;
  }
}

/** A table whose words are held together. */
const tableHeldTogether = <Part extends Pick<TablePart, 'columns' | 'rows'>>(part: Part): Part => ({
  ...part,
  columns: part.columns.map((column) => ({ ...column, head: heldTogether(column.head) })),
  rows: part.rows.map((cells) => cells.map(heldTogether)),
});

/** The largest size between two at which a text keeps to one line. */
const fitting = (doc: PDFKit.PDFDocument, text: string, largest: number, smallest: number, width: number): number => {
  for (let size = largest; size > smallest; size -= 0.5) if (doc.fontSize(size).widthOfString(text) <= width) return size;
  return smallest;
};

const collected = (doc: PDFKit.PDFDocument): Promise<Uint8Array> =>
  new Promise((resolve, reject) => {
    const parts: Buffer[] = [];
    doc.on('data', (part: Buffer) => parts.push(part));
    doc.on('end', () => resolve(Buffer.concat(parts)));
    doc.on('error', reject);
  });
