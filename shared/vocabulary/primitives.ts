import { z } from 'zod';

/** A finite number inside a closed range; the message names the range and the unit. */
export const within = (low: number, high: number, unit = '') =>
  z
    .number({ error: 'must be a number' })
    .min(low, `must be at least ${low}${unit && ` ${unit}`}`)
    .max(high, `must be at most ${high}${unit && ` ${unit}`}`);

/** A share of a whole, 0 to 1. */
export const Share = within(0, 1);

/** The key of a stored thing: lower-case letters, digits and hyphens. */
export const Id = z
  .string()
  .regex(/^[a-z0-9](?:[a-z0-9-]{0,62}[a-z0-9])?$/, 'must be 1 to 64 lower-case letters, digits or hyphens');
export type Id = z.infer<typeof Id>;

/** A name a person gives to something; one line. */
export const Name = z
  .string()
  .trim()
  .min(1, 'must not be empty')
  .max(120, 'must be at most 120 characters')
  .regex(/^[^\p{Cc}]*$/u, 'must not hold control characters');

/** Free words; several lines. */
export const Note = z.string().max(4000, 'must be at most 4000 characters');

const realDate = (text: string): boolean => {
  const [year, month, day] = text.split('-').map(Number) as [number, number, number];
  const leap = (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
  return month >= 1 && month <= 12 && day >= 1 && day <= [31, leap ? 29 : 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month - 1]!;
};

/** A calendar day at the venue, `2027-07-17`, from 1990 to 2099. */
export const LocalDate = z
  .string()
  .regex(/^(?:199\d|20\d\d)-\d\d-\d\d$/, 'must be a day written YYYY-MM-DD')
  .refine(realDate, 'is not a day of the calendar');
export type LocalDate = z.infer<typeof LocalDate>;

/** A wall-clock minute at the venue, `2027-07-17T19:00`. */
export const LocalTime = z
  .string()
  .regex(/^(?:199\d|20\d\d)-\d\d-\d\dT(?:[01]\d|2[0-3]):[0-5]\d$/, 'must be a day and time written YYYY-MM-DDTHH:MM')
  .refine((text) => realDate(text.slice(0, 10)), 'is not a day of the calendar');
export type LocalTime = z.infer<typeof LocalTime>;

/** An hour of the day on the wall clock, `22:00`. */
export const ClockTime = z.string().regex(/^(?:[01]\d|2[0-3]):[0-5]\d$/, 'must be a time written HH:MM');
export type ClockTime = z.infer<typeof ClockTime>;

/** Rises by one with every accepted change; a save that names an older one is a conflict. */
export const Revision = z.int().min(0);
