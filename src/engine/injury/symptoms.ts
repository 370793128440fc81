import type { Symptom as SymptomName } from '#shared/vocabulary/forecast.ts';
import { causes, type ByCause, type Cause } from '#engine/injury/causes.ts';

/** The true state of one zone on one day, and what it lost that day. */
export interface TurfDay {
  /** a covering lies on it when the inspector comes */
  readonly covered: boolean;
  /** true green cover at the end of the day, 0–1 */
  readonly cover: number;
  /** green cover lost that day by cause, as shares of the ground */
  readonly lost: ByCause;
  /** m */
  readonly ruts: number;
  /** how far the density hinders roots, 0–1 */
  readonly compaction: number;
  /** risk index 0–1 */
  readonly diseaseRisk: number;
  /** growth potential 0–1 */
  readonly growth: number;
  /** dark-equivalent days on the clock */
  readonly darkDays: number;
  /** how wet the surface is, 0 firm … 1 standing water */
  readonly wet: number;
}

/** Days between a thing happening and an eye seeing it. */
export interface SymptomLags {
  readonly scaldFirst: number;
  readonly scaldLast: number;
  readonly diseaseFirst: number;
  readonly diseaseLast: number;
  readonly spillFirst: number;
  readonly spillLast: number;
  readonly wetnessFirst: number;
  readonly wetnessLast: number;
  /** growth potential at which green-up begins, and at which it is plain what is dead */
  readonly greenUpFirst: number;
  readonly greenUpLast: number;
  /** dark-equivalent days at which leaves are stretched, and at which they are stretched most */
  readonly stretchFirst: number;
  readonly stretchLast: number;
}

export interface Symptom {
  readonly id: SymptomName;
  /** 0–1 */
  readonly severity: number;
}

/** What a person standing on the zone would see. */
export interface SeenDay {
  /** green cover as it looks; null while a covering hides it */
  readonly cover: number | null;
  /** worst first; empty under a covering */
  readonly symptoms: readonly Symptom[];
  /** lost already but not showing yet, worst first: what plugs, a tug test or a canopy thermometer would find */
  readonly hidden: readonly Symptom[];
}

const symptomOf: Readonly<Record<Cause, SymptomName>> = {
  light: 'yellowing',
  heat: 'scald',
  frost: 'winter-death',
  wear: 'worn',
  load: 'torn',
  wetness: 'wilting',
  spill: 'spill-burn',
};

/** Anything fainter than this is not noticed. */
const noticed = 0.02;
/** m of rut at which the severity is full. */
const deepRut = 0.025;
/** d after which an outbreak that has not come is no longer expected from one wet spell. */
const diseaseFades = 21;

const ramp = (value: number, first: number, last: number): number =>
  last <= first ? Number(value >= first) : Math.min(1, Math.max(0, (value - first) / (last - first)));

/** Share of a loss of day `then` that shows on day `now`. */
const shownShare = (cause: Cause, history: readonly TurfDay[], then: number, now: number, lags: SymptomLags): number => {
  const age = now - then;
  switch (cause) {
    case 'heat':
      return ramp(age, lags.scaldFirst, lags.scaldLast);
    case 'wetness':
      return ramp(age, lags.wetnessFirst, lags.wetnessLast);
    case 'spill':
      return ramp(age, lags.spillFirst, lags.spillLast);
    case 'frost': {
      let greenUp = 0;
      for (let day = then; day <= now; day++)
        greenUp = Math.max(greenUp, ramp(history[day]!.growth, lags.greenUpFirst, lags.greenUpLast));
      return greenUp;
    }
    default:
      return 1;
  }
};

const worstFirst = (symptoms: readonly Symptom[]): readonly Symptom[] =>
  symptoms.filter((symptom) => symptom.severity >= noticed).toSorted((a, b) => b.severity - a.severity);

/** Largest risk of the last weeks, each day's at the share of the lag it has passed. */
const diseaseShown = (history: readonly TurfDay[], now: number, lags: SymptomLags): number => {
  let shown = 0;
  for (let day = Math.max(0, now - diseaseFades); day <= now; day++) {
    shown = Math.max(shown, history[day]!.diseaseRisk * ramp(now - day, lags.diseaseFirst, lags.diseaseLast));
  }
  return shown;
};

/**
 * What an inspector would see on one day of a zone's true history.
 *
 * Ruts, wear and torn turf show at once; yellowing and stretched leaves when the covering is off; scald after 1–3 d, disease after
 * 3–7 d, spill burn after 2–7 d, winter death at green-up. A loss that does not show yet still looks green, so the zone looks better
 * than it is. Severity of a loss is its part of the gap in the cover that shows, and fades as the gap closes.
 * @param history the days in order from before the event @param now index of the day
 * @throws RangeError when the day is outside the history
 */
export const seenOn = (history: readonly TurfDay[], now: number, lags: SymptomLags): SeenDay => {
  const today = history[now];
  if (!today) throw new RangeError(`day: ${now} is outside the history of ${history.length} days`);
  const shown: Record<Cause, number> = { light: 0, heat: 0, frost: 0, wear: 0, load: 0, wetness: 0, spill: 0 };
  const notYet: Record<Cause, number> = { ...shown };
  for (let day = 0; day <= now; day++) {
    for (const cause of causes) {
      const loss = history[day]!.lost[cause];
      if (loss <= 0) continue;
      const part = shownShare(cause, history, day, now, lags);
      shown[cause] += loss * part;
      notYet[cause] += loss * (1 - part);
    }
  }
  const disease = diseaseShown(history, now, lags);
  const hidden = worstFirst(causes.map((cause) => ({ id: symptomOf[cause], severity: Math.min(1, notYet[cause]) })));
  if (today.covered) return { cover: null, symptoms: [], hidden };
  const waiting = causes.reduce((sum, cause) => sum + notYet[cause], 0);
  const looks = Math.min(1, today.cover + waiting);
  const visible = causes.reduce((sum, cause) => sum + shown[cause], 0);
  const gap = 1 - looks;
  const symptoms = worstFirst([
    ...causes.map((cause) => ({
      id: symptomOf[cause],
      severity: visible > 0 ? Math.min(shown[cause], (gap * shown[cause]) / visible) : 0,
    })),
    { id: 'ruts' as const, severity: ramp(today.ruts, 0, deepRut) },
    { id: 'compaction' as const, severity: today.compaction },
    {
      id: 'stretched-leaf' as const,
      severity:
        today.darkDays < lags.stretchFirst ? 0 : Math.max(noticed, ramp(today.darkDays, lags.stretchFirst, lags.stretchLast)),
    },
    { id: 'disease' as const, severity: disease },
    { id: 'too-wet' as const, severity: today.wet },
  ]);
  return { cover: looks, symptoms, hidden };
};

/** The same for every day of a history. */
export const seenEveryDay = (history: readonly TurfDay[], lags: SymptomLags): readonly SeenDay[] =>
  history.map((_, day) => seenOn(history, day, lags));
