/** What a zone needs to be ready in the forecast. */
export interface ReadyRules {
  /** green cover, 0–1 */
  readonly cover: number;
  /** m */
  readonly ruts: number;
  /** anchorage of sod, 0–1 */
  readonly anchored: number;
  /** share of seedlings in the cover from which their age counts */
  readonly seedlingShare: number;
  /** h closed after a covering comes off */
  readonly rest: number;
  /** lowest and highest reading of the 2.25 kg hammer, Gmax; null where the venue keeps no band */
  readonly hardness: { readonly low: number; readonly high: number } | null;
}

/** A zone at the hour that counts. */
export interface ZoneState {
  readonly cover: number;
  readonly ruts: number;
  /** 1 where there is no sod */
  readonly anchored: number;
  /** cover of seedlings too young for play, 0–1 */
  readonly youngSeedlings: number;
  /** h since the last covering came off; null where none ever lay; negative where it is still on */
  readonly sinceCovering: number | null;
  /** Gmax; null where it is not known */
  readonly hardness: number | null;
}

/** Why a zone is not ready; the words live with the pages. */
export type NotReadyId =
  'covered' | 'resting' | 'thin' | 'rutted' | 'sod-loose' | 'seedlings-young' | 'hard' | 'soft' | 'hardness-unknown';

export interface Readiness {
  readonly ready: boolean;
  readonly because: readonly NotReadyId[];
  readonly verdict: 'ready in the forecast' | 'not ready in the forecast';
}

/** Slack for sums of floating-point numbers. */
const slack = 1e-9;

/**
 * Whether a zone is ready in the forecast: last covering off and rested, cover at least the rule, ruts within the limit, sod held,
 * seedlings old enough, hardness in its band where there is one.
 */
export const judgeReadiness = (zone: ZoneState, rules: ReadyRules): Readiness => {
  const because: NotReadyId[] = [];
  if (zone.sinceCovering !== null && zone.sinceCovering < 0) because.push('covered');
  else if (zone.sinceCovering !== null && zone.sinceCovering < rules.rest) because.push('resting');
  if (zone.cover < rules.cover - slack) because.push('thin');
  if (zone.ruts > rules.ruts + slack) because.push('rutted');
  if (zone.anchored < rules.anchored - slack) because.push('sod-loose');
  if (zone.cover > 0 && zone.youngSeedlings / zone.cover > rules.seedlingShare + slack) because.push('seedlings-young');
  if (rules.hardness !== null) {
    if (zone.hardness === null) because.push('hardness-unknown');
    else if (zone.hardness > rules.hardness.high) because.push('hard');
    else if (zone.hardness < rules.hardness.low) because.push('soft');
  }
  const ready = because.length === 0;
  return { ready, because, verdict: ready ? 'ready in the forecast' : 'not ready in the forecast' };
};

/** Whether a cover is above a level: at exactly 70.0 % it is not above 70 %. @source tennessee-2010 (70 %), dickson-2018 (50 %) */
export const isAbove = (cover: number, level: number): boolean => cover > level + slack;

export interface CoverMessage {
  readonly level: number;
  /** index of the day on which the cover is no longer above the level */
  readonly day: number;
}

/**
 * One message for each level that the cover falls through, at the first fall; later ones say nothing new.
 * @param covers 0–1, in order of the days @param levels 0–1, e.g. 0.7 and 0.5
 */
export const coverMessages = (covers: ArrayLike<number>, levels: readonly number[]): readonly CoverMessage[] => {
  const messages: CoverMessage[] = [];
  for (const level of levels) {
    for (let day = 1; day < covers.length; day++) {
      if (!isAbove(covers[day - 1]!, level) || isAbove(covers[day]!, level)) continue;
      messages.push({ level, day });
      break;
    }
  }
  return messages.toSorted((a, b) => a.day - b.day || b.level - a.level);
};
