import { CsvError, parse } from 'csv-parse/sync';
import type { WeatherValues } from '#shared/parameters/weather.ts';
import { calendarDay, dayNumber, dayOfYear } from '#engine/weather/calendar-day.ts';
import type { DailySite } from '#engine/weather/daily-radiation.ts';
import { windAtTwoMetres } from '#engine/weather/humidity.ts';
import { dateFrom, dayFrom, figureFrom, isMissingCode, monthPlace, type DatePattern } from '#platform/weather-files/csv-cells.ts';
import { columnFrom, type CsvColumn, type CsvQuantity } from '#platform/weather-files/csv-columns.ts';
import { dayProblems, nothingRead, valueProblem, type ReadDay, type ReadQuantity } from '#platform/weather-files/day-limits.ts';
import { filledDays, type ReadRow } from '#platform/weather-files/filled-days.ts';
import { noFindings, refuse, reportOf, type Findings, type WeatherImport } from '#platform/weather-files/import-report.ts';
import { textProblem } from '#platform/weather-files/weather-text.ts';

/** What an import needs to know of the venue. */
export interface ImportPlace {
  readonly site: DailySite;
  readonly values: WeatherValues;
  /** Size of the file, bytes; the length of the text where it is left out. */
  readonly byteLength?: number;
}

interface Line {
  readonly line: number;
  readonly cells: readonly string[];
}

/** A column with its place in the line. */
interface Placed extends CsvColumn {
  readonly place: number;
}

const dateColumns = ['date', 'year', 'month', 'day'] as const;
const needed = ['maximum', 'minimum', 'rain'] as const;
const isReading = (quantity: CsvQuantity): quantity is ReadQuantity => !(dateColumns as readonly string[]).includes(quantity);

/** The mark that parts the cells, told from the first line that is not a comment. */
const delimiterOf = (text: string): string | null => {
  const head = text.split(/\r\n|\r|\n/, 60).find((line) => line.trim() !== '' && !line.startsWith('#')) ?? '';
  const bare = head.replace(/"[^"]*"/g, '').replace(/\([^)]*\)|\[[^\]]*\]/g, '');
  const counts = ([';', '\t', ','] as const).map((mark) => ({ mark, count: bare.split(mark).length - 1 }));
  const best = counts.reduce((a, b) => (b.count > a.count ? b : a));
  return best.count > 0 ? best.mark : null;
};

const linesOf = (text: string, delimiter: string, findings: Findings): Line[] => {
  try {
    const records = parse(text, {
      delimiter,
      comment: '#',
      comment_no_infix: true,
      skip_empty_lines: true,
      relax_column_count: true,
      info: true,
      record_delimiter: ['\r\n', '\n', '\r'],
    }) as unknown as { record: string[]; info: { lines: number } }[];
    return records
      .map(({ record, info }) => ({ line: info.lines, cells: record }))
      .filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  } catch (error) {
    if (!(error instanceof CsvError)) throw error;
    const line = typeof error['lines'] === 'number' ? error['lines'] : 0;
    refuse(findings, line, null, 'the line cannot be read as CSV: check its quotation marks');
    return [];
  }
};

const headerColumns = (header: Line, findings: Findings): Placed[] => {
  const placed: Placed[] = [];
  if (header.cells.every((cell) => /^[\s\d.,;:/+-]*$/.test(cell))) {
    refuse(findings, header.line, null, 'the first line must name the columns: date, maximum, minimum, rain and perhaps more');
    return placed;
  }
  header.cells.forEach((cell, place) => {
    const name = cell.trim();
    if (name === '') return;
    const reading = columnFrom(name);
    if (reading.kind === 'refused') refuse(findings, header.line, name, reading.reason);
    if (reading.kind === 'unknown') findings.cautions.push(`the column "${name}" is not known and was left out`);
    if (reading.kind !== 'column') return;
    const twin = placed.find((other) => other.quantity === reading.column.quantity);
    if (twin !== undefined)
      refuse(findings, header.line, name, `means the same as the column "${twin.header}": which one counts?`);
    placed.push({ ...reading.column, place });
  });
  const has = (quantity: CsvQuantity) => placed.some((column) => column.quantity === quantity);
  if (!has('date') && !(has('year') && has('month') && has('day'))) {
    refuse(findings, header.line, null, 'there is no column for the date (date, or year, month and day)');
  }
  for (const quantity of needed) {
    if (!has(quantity)) refuse(findings, header.line, null, `there is no column for the ${quantity}`);
  }
  return placed;
};

/** The dates of all lines; the order of day and month is told from the file as a whole. */
const datesOf = (lines: readonly Line[], columns: readonly Placed[], findings: Findings): (number | null)[] => {
  const at = (quantity: CsvQuantity) => columns.find((column) => column.quantity === quantity);
  const whole = at('date');
  const patterns = lines.map(({ cells }): DatePattern => {
    if (whole !== undefined) return dateFrom(cells[whole.place] ?? '');
    const [year, month, day] = (['year', 'month', 'day'] as const).map((part) =>
      Number((cells[at(part)!.place] ?? '').trim() || NaN),
    );
    return dayFrom(year!, month!, day!);
  });
  const slashed = patterns.filter((pattern) => pattern.kind === 'slashed');
  const place = monthPlace(slashed);
  if (slashed.length > 0 && place === null) {
    const reason = 'the file does not tell which number is the day and which the month; write dates as YYYY-MM-DD';
    refuse(findings, lines[patterns.findIndex((pattern) => pattern.kind === 'slashed')]!.line, whole!.header, reason);
    return patterns.map(() => null);
  }
  return patterns.map((pattern, i) => {
    const known =
      pattern.kind === 'slashed'
        ? dayFrom(pattern.year, place === 1 ? pattern.first : pattern.second, place === 1 ? pattern.second : pattern.first)
        : pattern;
    if (known.kind === 'known') return known.number;
    if (known.kind === 'wrong') refuse(findings, lines[i]!.line, whole?.header ?? null, known.reason);
    return null;
  });
};

const traced = (cell: string): boolean => /^(?:t|tr|trace)$/i.test(cell.trim());

/** Reads the values of one line into a day; refuses what cannot be. */
const readDay = (
  { line, cells }: Line,
  number: number,
  columns: readonly Placed[],
  commaParts: boolean,
  style: { comma: number; point: number },
  findings: Findings,
): ReadDay => {
  const day = nothingRead();
  for (const column of columns) {
    const { quantity } = column;
    if (!isReading(quantity)) continue;
    const cell = cells[column.place] ?? '';
    if (quantity === 'rain' && traced(cell)) {
      day.rain = 0;
      findings.filledDays.push({ line, number, quantity: 'rain', how: 'a trace taken as none' });
      continue;
    }
    const figure = figureFrom(cell, { commaParts });
    if ('missing' in figure) continue;
    if ('reason' in figure) {
      refuse(findings, line, column.header, figure.reason);
      continue;
    }
    if (figure.decimalComma) style.comma ||= line;
    else if (cell.includes('.')) style.point ||= line;
    if (isMissingCode(quantity, figure.value, column.factor)) continue;
    const converted = figure.value * column.factor + column.offset;
    const value = quantity === 'wind' && column.height !== 2 ? windAtTwoMetres(converted, column.height) : converted;
    const problem = valueProblem(quantity, value);
    if (problem !== null) refuse(findings, line, column.header, problem);
    else day[quantity] = quantity === 'humidity' ? Math.min(1, value) : value;
  }
  return day;
};

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

/** What shows only over a whole column: another quantity under its name, or another unit. */
const checkColumns = (rows: readonly ReadRow[], columns: readonly Placed[], latitude: number, findings: Findings): void => {
  const header = (quantity: CsvQuantity) => columns.find((column) => column.quantity === quantity)?.header ?? null;
  const known = (quantity: ReadQuantity) => rows.flatMap(({ day }) => (day[quantity] === null ? [] : [day[quantity]]));
  const first = rows[0]!.line;
  const ranges = rows.flatMap(({ day }) => (day.maximum === null || day.minimum === null ? [] : [day.maximum - day.minimum]));
  if (ranges.length >= 5 && median(ranges) > 26) {
    const reason = `maximum and minimum lie ${median(ranges).toFixed(0)} K apart on the middle day; no place has that: does one column hold something else?`;
    refuse(findings, first, header('maximum'), reason);
  }
  const humidity = known('humidity');
  const percent = columns.some((column) => column.quantity === 'humidity' && column.factor === 0.01);
  if (percent && humidity.length >= 5 && Math.max(...humidity) <= 0.0101) {
    refuse(findings, first, header('humidity'), 'the values lie between 0 and 1; name the unit, "humidity (share)"');
  }
  const rain = known('rain');
  if (rain.length >= 60 && rain.every((mm) => mm > 0)) {
    refuse(findings, first, header('rain'), 'it rains on every day; does the column hold something else?');
  }
  const warm = (months: readonly number[]) =>
    rows.flatMap(({ number, day }) => (months.includes(calendarDay(number).month) && day.maximum !== null ? [day.maximum] : []));
  const [northern, southern] = [warm([6, 7, 8]), warm([12, 1, 2])];
  if (Math.abs(latitude) > 25 && northern.length > 60 && southern.length > 60) {
    const summerFirst = median(northern) > median(southern);
    if (summerFirst !== latitude > 0) {
      findings.cautions.push('the warm months are those of the other half of the world: is this the right place?');
    }
  }
};

const earliest = dayNumber(1990, 1, 1);
const latest = dayNumber(2099, 12, 31);

/** Reads the lines under the header into rows, one a day. */
const rowsOf = (
  lines: readonly Line[],
  columns: readonly Placed[],
  delimiter: string,
  latitude: number,
  findings: Findings,
): ReadRow[] => {
  const cellsInHeader = Math.max(...columns.map((column) => column.place)) + 1;
  const whole = lines.filter(({ line, cells }) => {
    if (cells.length >= cellsInHeader) return true;
    refuse(findings, line, null, `the line has ${cells.length} cells where the header asks for ${cellsInHeader}`);
    return false;
  });
  const numbers = datesOf(whole, columns, findings);
  const style = { comma: 0, point: 0 };
  const rows: ReadRow[] = [];
  const header = (quantity: ReadQuantity) => columns.find((column) => column.quantity === quantity)?.header ?? null;
  const old = { days: 0, line: 0 };
  whole.forEach((line, i) => {
    const number = numbers[i]!;
    if (number === null) return;
    if (number > latest) refuse(findings, line.line, null, 'the day lies after 2099');
    if (number < earliest) {
      old.line ||= line.line;
      old.days++;
      return;
    }
    const day = readDay(line, number, columns, delimiter === ',', style, findings);
    const { year, month, day: dayOfMonth } = calendarDay(number);
    for (const { quantity, reason } of dayProblems(day, latitude, dayOfYear(year, month, dayOfMonth))) {
      refuse(findings, line.line, header(quantity), reason);
    }
    rows.push({ line: line.line, number, day });
  });
  if (old.days > 0) findings.skipped.push({ line: old.line, reason: `${old.days} days before 1990 were left out` });
  if (style.comma > 0 && style.point > 0) {
    const line = Math.max(style.comma, style.point);
    refuse(findings, line, null, 'the file has decimal commas and decimal points; one of them must be a thousands mark');
  } else if (style.comma > 0) findings.cautions.push('figures were read with a decimal comma');
  return rows;
};

/**
 * Days from a CSV text: one line a day, a header that names the columns, in any order. Needed: date, maximum, minimum, rain. Taken
 * where present: radiation or sunshine, vapour pressure, dew point or humidity, wind. Units stand in the header, `Tmax (°F)`.
 * Cells parted by comma, semicolon or tab; decimal comma or point; lines that begin with `#` are comments.
 * Anything that cannot be is refused by line, and then no day is given.
 */
export const csvDays = (given: string, place: ImportPlace): WeatherImport => {
  const findings = noFindings();
  const text = given.replace(/^\uFEFF/, '');
  const problem = textProblem(given, place.byteLength ?? given.length);
  if (problem !== null) {
    refuse(findings, 0, null, problem);
    return reportOf(findings, []);
  }
  const delimiter = delimiterOf(text);
  if (delimiter === null) {
    refuse(findings, 1, null, 'the line has a single column; cells must be parted by comma, semicolon or tab');
    return reportOf(findings, []);
  }
  const [header, ...lines] = linesOf(text, delimiter, findings);
  if (header === undefined) return reportOf(findings, []);
  const columns = headerColumns(header, findings);
  for (const { header: name, quantity, unit, unitNamed, height } of columns) {
    if (!isReading(quantity)) continue;
    const where = quantity === 'wind' ? ` at ${height} m` : '';
    findings.columns.push({ column: name, quantity, unit: `${unit}${where}${unitNamed ? '' : ' (not named in the header)'}` });
  }
  findings.read = lines.length;
  if (findings.refused.length > 0 || lines.length === 0) return reportOf(findings, []);
  const { site, values } = place;
  const rows = rowsOf(lines, columns, delimiter, site.latitude, findings);
  if (findings.refused.length > 0 || rows.length === 0) return reportOf(findings, []);
  checkColumns(rows, columns, site.latitude, findings);
  const columnFor = (quantity: ReadQuantity) => columns.find((column) => column.quantity === quantity)?.header ?? null;
  return reportOf(findings, filledDays(rows, site, values, findings, columnFor));
};
