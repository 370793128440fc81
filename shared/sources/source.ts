/**
 * How the entry of a work was written: as it stands in print; by a title that was not compared with the work; by a title of our own where
 * only the finding was at hand; or wholly from memory. It says nothing about the numbers taken from the work: their standing does.
 */
export const entries = ['as printed', 'title from memory', 'title in our words', 'from memory'] as const;
export type Entry = (typeof entries)[number];

/** One published work that a number or an equation comes from. */
export interface Source {
  /** Who wrote it, as it would stand in a reference list: "Allen, Pereira, Raes & Smith". */
  readonly authors: string;
  readonly year: number | null;
  readonly title: string;
  /** Journal, volume and pages; publisher; report number. */
  readonly where: string;
  readonly entry: Entry;
}

/** The work as a list of references prints it, with what in it was not compared with print. */
export const citation = ({ authors, year, title, where, entry }: Source): string =>
  `${authors}${year === null ? '' : ` ${year}`}. ${title}. ${where}${entry === 'as printed' ? '' : ` (${entry})`}.`;

/** Checks the shape of a family of sources while keeping the literal ids, so that a misspelt id does not compile. */
export const sourcesOf = <const Ids extends string>(sources: Readonly<Record<Ids, Source>>): Readonly<Record<Ids, Source>> =>
  sources;
