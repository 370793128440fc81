import PDFDocument from 'pdfkit';

/** The two weights of the typeface as bytes, so that a paper embeds its own letters. */
export interface Typeface {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

export type PaperSize = 'letter' | 'a4';

/** What stands in the title block of every page. */
export interface TitleBlock {
  readonly paper: string;
  readonly venue: string;
  readonly subject: string;
  /** Short facts on the right: home date, run, date. */
  readonly facts: readonly string[];
  /** Said on every page: that the data is invented, that it is a forecast. */
  readonly footnote: string;
  /** Epoch ms; the only time in the file. */
  readonly createdAt: number;
}

export interface Column {
  readonly head: string;
  /** Share of the width of the table. */
  readonly width: number;
  readonly align?: 'left' | 'right';
}

const margin = 40;
export const ink = '#1b1b1a';
export const faint = '#6b6a66';
export const rule = '#b9b7b0';

/**
 * A drawing sheet of plain parts: title block, headings, sentences, tables that never break inside a row, and room for drawings.
 * Everything is placed from the top down; a part that does not fit begins a new page. The same parts give the same bytes.
 */
export class Paper {
  readonly doc: PDFKit.PDFDocument;
  readonly width: number;
  readonly left = margin;
  readonly bottom: number;
  readonly #title: TitleBlock;
  readonly #done: Promise<Uint8Array>;
  y = margin;

  constructor(size: PaperSize, title: TitleBlock, typeface: Typeface) {
    this.doc = new PDFDocument({
      size: size === 'letter' ? 'LETTER' : 'A4',
      margin: 0,
      bufferPages: true,
      lang: 'en',
      displayTitle: true,
      pdfVersion: '1.7',
      info: {
        Title: `${title.paper}: ${title.subject}`,
        Author: 'Fieldback',
        CreationDate: new Date(title.createdAt),
        ModDate: new Date(title.createdAt),
      },
    });
    this.doc.registerFont('regular', Buffer.from(typeface.regular));
    this.doc.registerFont('bold', Buffer.from(typeface.bold));
    this.width = this.doc.page.width - 2 * margin;
    this.bottom = this.doc.page.height - margin - 22;
    this.#title = title;
    this.#done = collected(this.doc);
    this.#block();
  }

  /** Goes to a new page when less than `height` pt is left. */
  room(height: number): void {
    if (this.y + height <= this.bottom) return;
    this.page();
  }

  page(): void {
    this.doc.addPage({ margin: 0 });
    this.y = margin;
    this.#block();
  }

  heading(text: string): void {
    this.room(60);
    this.y += 8;
    this.doc.font('bold').fontSize(12).fillColor(ink).text(text, this.left, this.y, { width: this.width, lineBreak: false });
    this.y += 17;
  }

  /** A paragraph; `strong` for the one sentence that must be read. */
  sentence(text: string, strong = false): void {
    this.doc.font(strong ? 'bold' : 'regular').fontSize(strong ? 11.5 : 9.5);
    const height = this.doc.heightOfString(text, { width: this.width });
    this.room(height + 4);
    this.doc.fillColor(ink).text(text, this.left, this.y, { width: this.width });
    this.y += height + 4;
  }

  list(items: readonly string[]): void {
    for (const item of items) {
      this.doc.font('regular').fontSize(9);
      const height = this.doc.heightOfString(item, { width: this.width - 12 });
      this.room(height + 2);
      this.doc.fillColor(ink).text('–', this.left, this.y, { width: 10, lineBreak: false });
      this.doc.text(item, this.left + 12, this.y, { width: this.width - 12 });
      this.y += height + 2;
    }
  }

  /** A table; its head stands again on each page, and a row is never torn apart. */
  table(columns: readonly Column[], rows: readonly (readonly string[])[], empty = 'None.'): void {
    if (rows.length === 0) return this.sentence(empty);
    const total = columns.reduce((sum, column) => sum + column.width, 0);
    const widths = columns.map((column) => (column.width / total) * this.width);
    const draw = (cells: readonly string[], bold: boolean): void => {
      this.doc.font(bold ? 'bold' : 'regular').fontSize(8.5);
      const heights = cells.map((cell, index) => this.doc.heightOfString(cell || ' ', { width: widths[index]! - 6 }));
      const height = Math.max(...heights) + 4;
      if (this.y + height > this.bottom) {
        this.page();
        if (!bold)
          draw(
            columns.map((column) => column.head),
            true,
          );
        this.doc.font(bold ? 'bold' : 'regular').fontSize(8.5);
      }
      let x = this.left;
      cells.forEach((cell, index) => {
        this.doc
          .fillColor(bold ? faint : ink)
          .text(cell, x + 3, this.y + 2, { width: widths[index]! - 6, align: columns[index]!.align ?? 'left' });
        x += widths[index]!;
      });
      this.y += height;
      this.doc
        .moveTo(this.left, this.y)
        .lineTo(this.left + this.width, this.y)
        .lineWidth(bold ? 0.8 : 0.3)
        .strokeColor(rule)
        .stroke();
    };
    this.room(34);
    draw(
      columns.map((column) => column.head),
      true,
    );
    for (const row of rows) draw(row, false);
    this.y += 6;
  }

  /** Numbers the pages and gives the bytes. */
  async finish(): Promise<Uint8Array> {
    const { count } = this.doc.bufferedPageRange();
    for (let page = 0; page < count; page++) {
      this.doc.switchToPage(page);
      const y = this.doc.page.height - margin - 8;
      this.doc.font('regular').fontSize(7.5).fillColor(faint);
      this.doc.text(this.#title.footnote, this.left, y, { width: this.width - 80, lineBreak: false, ellipsis: true });
      this.doc.text(`page ${page + 1} of ${count}`, this.left + this.width - 80, y, {
        width: 80,
        align: 'right',
        lineBreak: false,
      });
    }
    this.doc.end();
    return this.#done;
  }

  #block(): void {
    const { doc } = this;
    const { paper, venue, subject, facts } = this.#title;
    doc.rect(this.left, this.y, this.width, 48).lineWidth(0.8).strokeColor(ink).stroke();
    doc
      .font('bold')
      .fontSize(15)
      .fillColor(ink)
      .text(paper, this.left + 8, this.y + 6, { width: this.width * 0.6, lineBreak: false });
    doc
      .font('regular')
      .fontSize(9)
      .fillColor(ink)
      .text(`${venue} · ${subject}`, this.left + 8, this.y + 28, { width: this.width * 0.62, height: 12, ellipsis: true });
    facts.slice(0, 4).forEach((fact, line) =>
      doc.fontSize(8).text(fact, this.left + this.width * 0.64, this.y + 4 + 10.5 * line, {
        width: this.width * 0.36 - 8,
        align: 'right',
        height: 11,
        ellipsis: true,
      }),
    );
    this.y += 58;
  }
}

const collected = (doc: PDFKit.PDFDocument): Promise<Uint8Array> =>
  new Promise((resolve, reject) => {
    const parts: Buffer[] = [];
    doc.on('data', (part: Buffer) => parts.push(part));
    doc.on('end', () => resolve(new Uint8Array(Buffer.concat(parts))));
    doc.on('error', reject);
  });
