import { quantities } from '#shared/units/quantity.ts';

/** Units that stand behind a number: those of the quantities, and those that are written in words of their own. */
const units = new Set([
  ...Object.values(quantities).flatMap(({ si, us }) => [si.unit, us.unit]),
  ...['d', 'days', 'min', 't', 'g', 'N·m', 'mm/h', 'in/h', 'points'],
]);
const literally = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
const behindNumber = new RegExp(`(?<=\\d) (?=(?:${[...units].map(literally).join('|')})(?![\\p{L}\\d]))`, 'gu');
const beforeNumber = /(?<=(?<![\p{L}\d])[A-Z]{3}) (?=−?\d)/gu;
const inDate =
  /(?<=\b(?:Sun|Mon|Tue|Wed|Thu|Fri|Sat)) (?=\d)|(?<=\b\d{1,2}) (?=(?:Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)\b)/g;

/** A text whose lines never end between a number and its unit, a currency and its sum, or within a date: no-break spaces stand there. */
export const heldTogether = (text: string): string =>
  text.replace(behindNumber, '\u00A0').replace(beforeNumber, '\u00A0').replace(inDate, '\u00A0');
