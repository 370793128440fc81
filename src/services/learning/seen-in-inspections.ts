import { addDays, clockOf, dateOf } from '#shared/calendar/local-time.ts';
import type { ParameterValues } from '#shared/parameters/catalogue.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import type { Inspection } from '#shared/vocabulary/inspection.ts';
import type { LeftOut } from '#shared/vocabulary/learning.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';
import { errorOfMean, type Seen } from '#engine/learning/seen.ts';

/** A reading ready for the engine, with where it came from. */
export interface SeenAt extends Seen {
  readonly inspectionId: string;
  readonly at: LocalTime;
  readonly readings: number;
}

export interface SeenInInspections {
  readonly seen: readonly SeenAt[];
  readonly leftOut: readonly LeftOut[];
}

/** Readings of the morning belong to the evening before, since the forecast knows evenings. */
const noon = '12:00';
export const eveningOf = (at: LocalTime): string => (clockOf(at) < noon ? addDays(dateOf(at), -1) : dateOf(at));

/**
 * What inspections say that a forecast speaks of too: mean cover of a zone, and its deepest rut. All else they hold is evidence, but no
 * equation of the forecast gives a figure for it.
 */
export const seenInInspections = (
  inspections: readonly Inspection[],
  { days, zones }: Pick<Forecast, 'days' | 'zones'>,
  values: ParameterValues,
): SeenInInspections => {
  const seen: SeenAt[] = [];
  const leftOut: LeftOut[] = [];
  const known = new Set(zones.map((zone) => zone.letter));
  for (const inspection of inspections) {
    const { id, at } = inspection;
    const leave = (reason: string): void => void leftOut.push({ inspectionId: id, reason });
    const evening = eveningOf(at);
    if (!days.includes(evening)) {
      leave(`was made at ${at}, outside the days of the forecast`);
      continue;
    }
    const found = ofInspection(inspection, values);
    if (found.length === 0) leave('has no reading of cover or ruts, which is what the forecast can be held against');
    for (const one of found)
      if (known.has(one.zone)) seen.push({ ...one, inspectionId: id, at, evening });
      else leave(`reads zone ${one.zone}, which the forecast does not have`);
  }
  return { seen, leftOut };
};

type Found = Pick<SeenAt, 'zone' | 'quantity' | 'value' | 'error' | 'readings'>;

const ofInspection = ({ readings, defects }: Inspection, values: ParameterValues): readonly Found[] => {
  const letters = [...new Set([...readings, ...defects].map(({ zone }) => zone))].toSorted();
  return letters.flatMap((zone): Found[] => {
    const spots = readings.filter((spot) => spot.zone === zone);
    const covers = spots.flatMap(({ cover }) => (cover === null ? [] : [cover]));
    const ruts = [
      ...spots.flatMap(({ rut }) => (rut === null ? [] : [rut])),
      ...defects.flatMap((defect) =>
        defect.zone === zone && (defect.kind === 'rut' || defect.kind === 'pad-mark') && defect.depth !== null
          ? [defect.depth]
          : [],
      ),
    ];
    return [
      ...(covers.length === 0
        ? []
        : [
            {
              zone,
              quantity: 'cover' as const,
              value: covers.reduce((sum, one) => sum + one, 0) / covers.length,
              readings: covers.length,
              error: errorOfMean(values['learning.coverReading'], covers.length, values['learning.coverModel']),
            },
          ]),
      ...(ruts.length === 0
        ? []
        : [
            {
              zone,
              quantity: 'ruts' as const,
              // The forecast speaks of the deepest.
              value: Math.max(...ruts),
              readings: ruts.length,
              error: errorOfMean(values['learning.rutReading'], 1, values['learning.rutModel']),
            },
          ]),
    ];
  });
};
