import { addDays, clockOf, dateOf, daysBetween, hoursBetween, midnight } from '#shared/calendar/local-time.ts';
import { faint, ink, rule, type Paper } from '#reports/paper.ts';
import type { ChartDrawing } from '#reports/sheet.ts';

const labelWidth = 34;
const headRoom = 26;
const peopleRoom = 34;

/** Jobs as bars over days, a row a zone and one for the whole field; decisions and trucks as marks above, people at work below. */
export const drawPlanChart = (paper: Paper, chart: ChartDrawing): void => {
  const most = Math.max(1, Math.floor((paper.bottom - 60 - headRoom - peopleRoom - 36) / chart.rowHeight));
  for (let from = 0; from < chart.rows.length; from += most) {
    const rows = chart.rows.slice(from, from + most);
    const last = from + most >= chart.rows.length;
    const people = last ? chart.people : [];
    const height = headRoom + rows.length * chart.rowHeight + (people.length > 0 ? peopleRoom : 0) + 16;
    paper.room(height);
    const said = rows.map(
      (row) =>
        `${row.name}: ${row.bars.map((bar) => `${bar.words} ${bar.from.slice(5, 16).replace('T', ' ')}`).join(', ') || 'nothing'}`,
    );
    const bbox = [paper.left, paper.y, paper.left + paper.width, paper.y + height];
    paper.mark('Figure', () => drawRows(paper, { ...chart, rows, people }), {
      alt: `Chart of the jobs. ${said.join('. ')}.`,
      bbox,
    });
    paper.y += height;
  }
};

const drawRows = (paper: Paper, chart: ChartDrawing): void => {
  const { doc } = paper;
  const first = dateOf(chart.from);
  const days = daysBetween(first, dateOf(chart.until)) + 1;
  const left = paper.left + labelWidth;
  const right = paper.left + paper.width;
  const hour = (right - left) / hoursBetween(midnight(first), midnight(addDays(first, days)), chart.timeZone);
  const x = (time: string): number =>
    Math.min(right, left + Math.max(0, hoursBetween(midnight(first), time, chart.timeZone)) * hour);
  const top = paper.y + headRoom;
  const bottom = top + chart.rows.length * chart.rowHeight;
  drawDays(paper, chart, { first, days, x, top, bottom, right });
  chart.rows.forEach((row, index) => {
    const y = top + index * chart.rowHeight;
    doc
      .font('bold')
      .fontSize(8)
      .fillColor(ink)
      .text(row.name, paper.left, y + chart.rowHeight / 2 - 5, { lineBreak: false });
    doc
      .moveTo(paper.left, y + chart.rowHeight)
      .lineTo(right, y + chart.rowHeight)
      .lineWidth(0.3)
      .strokeColor(rule)
      .stroke();
    for (const bar of row.bars) drawBar(paper, bar, x, y, chart.rowHeight);
  });
  const home = x(chart.homeDate);
  doc
    .moveTo(home, top - 4)
    .lineTo(home, bottom + 4)
    .lineWidth(1.4)
    .strokeColor(ink)
    .stroke();
  doc
    .font('bold')
    .fontSize(7)
    .fillColor(ink)
    .text('home date', Math.min(home - 40, right - 42), bottom + 4, { width: 40, align: 'right', lineBreak: false });
  if (chart.people.length > 0) drawPeople(paper, chart, x, left, right, bottom + 14);
};

const drawBar = (
  paper: Paper,
  bar: ChartDrawing['rows'][number]['bars'][number],
  x: (time: string) => number,
  y: number,
  height: number,
): void => {
  const { doc } = paper;
  const [from, until] = [x(bar.from), Math.max(x(bar.until), x(bar.from) + 1.5)];
  doc
    .rect(from, y + 2, until - from, height - 4)
    .fillColor(bar.worked ? '#3d7a73' : '#d8d4ca')
    .fill();
  doc
    .rect(from, y + 2, until - from, height - 4)
    .lineWidth(0.4)
    .strokeColor(ink)
    .stroke();
  doc.font('regular').fontSize(6.2);
  if (doc.widthOfString(bar.words) + 3 < until - from)
    doc.fillColor(bar.worked ? '#ffffff' : ink).text(bar.words, from + 1.5, y + height / 2 - 4, { lineBreak: false });
};

interface Grid {
  readonly first: string;
  readonly days: number;
  readonly x: (time: string) => number;
  readonly top: number;
  readonly bottom: number;
  readonly right: number;
}

/** Days as columns with their date, and the marks above them, those that would touch one line higher. */
const drawDays = (paper: Paper, chart: ChartDrawing, { first, days, x, top, bottom, right }: Grid): void => {
  const { doc } = paper;
  const every = Math.max(1, Math.ceil((days * 24) / (right - paper.left)));
  for (let day = 0; day <= days; day++) {
    const at = x(midnight(addDays(first, day)));
    doc.moveTo(at, top).lineTo(at, bottom).lineWidth(0.3).strokeColor(rule).stroke();
    if (day < days && day % every === 0)
      doc
        .font('regular')
        .fontSize(6.5)
        .fillColor(faint)
        .text(addDays(first, day).slice(5), at + 1, top - 9, { lineBreak: false });
  }
  let [free, line] = [-Infinity, 0];
  for (const mark of chart.marks) {
    const at = x(mark.at);
    doc
      .moveTo(at, top - 1)
      .lineTo(at - 2.5, top - 6)
      .lineTo(at + 2.5, top - 6)
      .closePath()
      .fillColor('#a5492f')
      .fill();
    doc.moveTo(at, top).lineTo(at, bottom).lineWidth(0.5).dash(2, { space: 2 }).strokeColor('#a5492f').stroke().undash();
    const words = `${mark.words} ${clockOf(mark.at)}`;
    doc.font('regular').fontSize(6.5);
    const width = doc.widthOfString(words);
    const start = Math.min(at, right - width);
    line = start < free ? line + 1 : 0;
    free = Math.max(free, start + width + 4);
    if (line < 2) doc.fillColor(ink).text(words, start, top - 18 - 8 * line, { lineBreak: false });
  }
};

const drawPeople = (
  paper: Paper,
  chart: ChartDrawing,
  x: (time: string) => number,
  left: number,
  right: number,
  top: number,
): void => {
  const { doc } = paper;
  const most = Math.max(...chart.people.map((span) => span.count));
  const height = peopleRoom - 12;
  doc
    .font('regular')
    .fontSize(6.5)
    .fillColor(faint)
    .text(`people, most ${most}`, paper.left, top, { width: labelWidth - 2 });
  for (const span of chart.people) {
    const [from, until] = [x(span.from), x(span.until)];
    const tall = (span.count / most) * height;
    doc
      .rect(from, top + height - tall, Math.max(0.6, until - from), tall)
      .fillColor('#8aa7a2')
      .fill();
  }
  doc
    .moveTo(left, top + height)
    .lineTo(right, top + height)
    .lineWidth(0.4)
    .strokeColor(ink)
    .stroke();
};
