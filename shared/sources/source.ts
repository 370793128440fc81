/** One published work that a number or an equation comes from. */
export interface Source {
  /** Who wrote it, as it would stand in a reference list: "Allen, Pereira, Raes & Smith". */
  readonly authors: string;
  readonly year: number | null;
  readonly title: string;
  /** Journal, volume and pages; publisher; report number. */
  readonly where: string;
}

/** Checks the shape of a family of sources while keeping the literal ids, so that a misspelt id does not compile. */
export const sourcesOf = <const Ids extends string>(sources: Readonly<Record<Ids, Source>>): Readonly<Record<Ids, Source>> =>
  sources;
