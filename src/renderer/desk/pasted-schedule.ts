import { loadings, type Booking, type Layer } from '#shared/vocabulary/booking.ts';
import type { Covering } from '#shared/vocabulary/covering.ts';
import { LocalTime } from '#shared/vocabulary/primitives.ts';
import { loadingWords } from '#shared/wording/words.ts';

/** Rows of a spreadsheet as layers, and the lines that could not be read, each with why. */
export interface PastedSchedule {
  readonly layers: readonly Layer[];
  readonly problems: readonly { readonly line: number; readonly reason: string }[];
}

const plain = (text: string): string => text.trim().toLowerCase().replace(/\s+/g, ' ');

/** The one thing whose key or name is, or begins with, what was typed. */
const found = <Thing>(typed: string, all: readonly Thing[], namesOf: (thing: Thing) => readonly string[]): Thing | undefined => {
  const wanted = plain(typed);
  if (wanted === '') return undefined;
  const exact = all.find((thing) => namesOf(thing).some((name) => plain(name) === wanted));
  if (exact) return exact;
  const begun = all.filter((thing) => namesOf(thing).some((name) => plain(name).startsWith(wanted)));
  return begun.length === 1 ? begun[0] : undefined;
};

/**
 * A moment as spreadsheets write it: `2027-07-12 10:00`, `2027-07-12T10:00`, `7/12/2027 10:00 PM`, `12.7.2027 22:00`.
 * @param monthFirst how `7/12/2027` is meant
 * @returns null where it is none of these, or no moment of the calendar
 */
export const momentOf = (typed: string, monthFirst: boolean): string | null => {
  const match =
    /^(?:(\d{4})-(\d{1,2})-(\d{1,2})|(\d{1,2})([/.])(\d{1,2})[/.](\d{4}))[T ,]+(\d{1,2}):(\d{2})(?::\d{2})?\s*([ap]m)?$/i.exec(
      typed.trim(),
    );
  if (!match) return null;
  const [, isoYear, isoMonth, isoDay, one, mark, two, year, hour, minute, half] = match;
  const [month, day] = isoYear ? [isoMonth, isoDay] : mark === '/' && monthFirst ? [one, two] : [two, one];
  const late = half?.toLowerCase() === 'pm';
  const hours = half ? (Number(hour) % 12) + (late ? 12 : 0) : Number(hour);
  const pad = (value: string | number | undefined): string => String(value).padStart(2, '0');
  const time = `${isoYear ?? year}-${pad(month)}-${pad(day)}T${pad(hours)}:${minute}`;
  return LocalTime.safeParse(time).success ? time : null;
};

/**
 * Reads rows copied out of a spreadsheet: zone, floor, on, off and, where given, what stands on it; one row a line, cells parted by tabs
 * (or semicolons). A first row of headings is passed over. What stands on legs, ice and care is taken from the layer of that zone before.
 */
export const pastedSchedule = (
  text: string,
  booking: Booking,
  coverings: readonly Covering[],
  monthFirst: boolean,
): PastedSchedule => {
  const layers: Layer[] = [];
  const problems: { line: number; reason: string }[] = [];
  const rows = text.split(/\r?\n/).map((line) => line.split(line.includes('\t') ? '\t' : ';').map((cell) => cell.trim()));
  rows.forEach((cells, index) => {
    if (cells.every((cell) => cell === '')) return;
    const line = index + 1;
    const [zoneText = '', floorText = '', onText = '', offText = '', loadingText = ''] = cells;
    if (index === 0 && /^(zone|what|where)\b/i.test(zoneText) && momentOf(onText, monthFirst) === null) return;
    const zone = found(zoneText, booking.zones, (one) => [one.letter, one.name, `${one.letter} ${one.name}`]);
    const floor = found(floorText, coverings, (one) => [one.id, one.name]);
    const on = momentOf(onText, monthFirst);
    const off = momentOf(offText, monthFirst);
    const loading = loadingText === '' ? 'open' : found(loadingText, loadings, (one) => [one, loadingWords[one]]);
    const reason = !zone
      ? `no zone is called "${zoneText}"`
      : !floor
        ? `no floor is called "${floorText}"`
        : on === null
          ? `"${onText}" is no day and time; write 2027-07-12 10:00`
          : off === null
            ? `"${offText}" is no day and time; write 2027-07-12 10:00`
            : off <= on
              ? 'it comes off before it goes on'
              : !loading
                ? `"${loadingText}" is none of: ${loadings.map((one) => loadingWords[one]).join(', ')}`
                : null;
    if (reason !== null) return void problems.push({ line, reason });
    const before = booking.layers.find((layer) => layer.zone === zone!.letter);
    layers.push({
      zone: zone!.letter,
      covering: floor!.id,
      on: on!,
      off: off!,
      loading: loading!,
      cleanliness: before?.cleanliness ?? 0.85,
      legs: before?.legs ?? null,
      iceTemperature: loading === 'ice' ? (before?.iceTemperature ?? -5) : null,
      care: [],
    });
  });
  return { layers, problems };
};

/** The booking with the pasted rows in place of those of the same zones; other zones keep theirs. */
export const withSchedule = (booking: Booking, { layers }: PastedSchedule): Booking => {
  const named = new Set(layers.map((layer) => layer.zone));
  return { ...booking, layers: [...booking.layers.filter((layer) => !named.has(layer.zone)), ...layers] };
};
