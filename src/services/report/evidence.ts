import { dateOf } from '#shared/calendar/local-time.ts';
import type { PlanRun } from '#shared/contract/contract.ts';
import { figure, show, type UnitSystem } from '#shared/units/quantity.ts';
import { bookingStages, type Booking } from '#shared/vocabulary/booking.ts';
import type { Forecast } from '#shared/vocabulary/forecast.ts';
import type { Inspection, SpotReading } from '#shared/vocabulary/inspection.ts';
import type { Assimilation } from '#shared/vocabulary/learning.ts';
import type { LocalTime } from '#shared/vocabulary/primitives.ts';
import type { Venue } from '#shared/vocabulary/venue.ts';
import { defectCauseWords, defectWords, inspectionWords, spillWords } from '#shared/wording/inspections.ts';
import type { ForecastQuestion } from '#engine/forecast/question.ts';
import type {
  Evidence,
  KeptPlan,
  SeenDefect,
  SeenHours,
  SeenInspection,
  SeenPicture,
  SeenReading,
} from '#reports/recovery-papers.ts';
import { compareLetters, counted, dayWords, moment, shortened } from '#reports/wording.ts';
import { eveningOf } from '#services/learning/seen-in-inspections.ts';
import type { Contents } from '#store/store.ts';

/** What was seen and done, in the shape the papers print. Inspections that were put right give way to the later ones. */
export const evidenceOf = async (
  contents: Contents,
  venue: Venue,
  kept: KeptPlan,
  first: PlanRun,
  units: UnitSystem,
): Promise<Evidence> => {
  const lines = await contents.inspections.list(venue.id, kept.booking.id);
  const standing = lines.filter((line) => line.correctedBy === null).map((line) => line.inspection);
  const pictures = await picturesOf(contents, standing);
  const assimilations = (await contents.learning.assimilations(venue.id)).filter((one) => one.createdAt <= kept.plan.createdAt);
  const foreseen = await firstForecast(contents, kept, first);
  const here = { venue, forecast: foreseen?.result ?? kept.forecast.result, units };
  return {
    inspections: standing.map((inspection) => seenInspection(inspection, here, pictures)),
    hours: hoursOf(kept.booking, foreseen?.booking ?? null),
    lessons: lessonsOf(
      assimilations.find((one) => one.bookingId === kept.booking.id),
      units,
    ),
    changedSettings: await changedSettings(contents, venue, kept),
    pastCases: await pastCases(contents, assimilations, kept.booking.id),
  };
};

/**
 * What the first kept plan of the booking was made from, before any reading weighed it: the forecast that the fact is held against. Null
 * where the plan was made from that very one.
 */
const firstForecast = async (
  contents: Contents,
  kept: KeptPlan,
  first: PlanRun,
): Promise<{ readonly result: Forecast; readonly booking: Booking | null } | null> => {
  const id = (await contents.learning.assimilation(first.forecastId))?.parentId ?? first.forecastId;
  if (id === kept.forecast.id) return null;
  const run = await contents.runs.find(id);
  const input = await contents.runs.inputOf(id);
  return run && input !== null ? { result: run.result, booking: (JSON.parse(input) as ForecastQuestion).booking } : null;
};

interface Here {
  readonly venue: Venue;
  readonly forecast: Forecast;
  readonly units: UnitSystem;
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;
const percent = (share: number): string => `${Math.round(100 * share)} %`;

const seenInspection = (inspection: Inspection, here: Here, pictures: ReadonlyMap<string, SeenPicture>): SeenInspection => {
  const letters = [...new Set(inspection.readings.map((spot) => spot.zone))].toSorted(compareLetters);
  const cover: Record<string, number> = {};
  for (const letter of letters) {
    const covers = inspection.readings.flatMap((spot) => (spot.zone === letter && spot.cover !== null ? [spot.cover] : []));
    if (covers.length > 0) cover[letter] = mean(covers);
  }
  return {
    stage: inspectionWords[inspection.kind],
    at: inspection.at,
    by: inspection.inspector,
    witness:
      inspection.witnesses
        .map((one) => (one.answer === 'named' ? `${one.name} (${one.party})` : `declined by ${one.party}`))
        .join(', ') || 'none named',
    weather: inspection.weather,
    readings: letters.flatMap((letter) => readingsOf(inspection, letter, here)),
    defects: defectsOf(inspection, here.units),
    pictures: inspection.photographs.flatMap((id) => pictures.get(id) ?? []),
    cover,
    note: inspection.note,
  };
};

/** A quantity of a spot, how it is said, and whether the worst of the spots counts or their mean. */
interface Kind {
  readonly what: string;
  readonly of: (spot: SpotReading) => number | null;
  readonly said: (value: number, units: UnitSystem) => string;
  readonly worst?: true;
}

const kinds: readonly Kind[] = [
  { what: 'live cover', of: (spot) => spot.cover, said: percent },
  { what: 'deepest rut', of: (spot) => spot.rut, said: (value, units) => show(value, 'smallLength', units), worst: true },
  { what: 'colour, 1 to 9', of: (spot) => spot.colour, said: (value) => figure(value, 1) },
  { what: 'dark green colour index', of: (spot) => spot.greenIndex, said: (value) => figure(value, 2) },
  { what: 'moisture by volume', of: (spot) => spot.moisture, said: percent },
  { what: 'hardness', of: (spot) => spot.hardness?.peak ?? null, said: (value) => `${figure(value, 0)} g` },
  { what: 'traction', of: (spot) => spot.traction, said: (value) => `${figure(value, 0)} N·m` },
  { what: 'penetration', of: (spot) => spot.penetration, said: (value, units) => show(value, 'pressure', units) },
  { what: 'infiltration', of: (spot) => spot.infiltration, said: (value, units) => `${show(value, 'rain', units)}/h` },
  { what: 'canopy temperature', of: (spot) => spot.canopyTemperature, said: (value, units) => show(value, 'temperature', units) },
  { what: 'soil temperature', of: (spot) => spot.soilTemperature, said: (value, units) => show(value, 'temperature', units) },
];

const readingsOf = (inspection: Inspection, letter: string, { venue, forecast, units }: Here): readonly SeenReading[] => {
  const spots = inspection.readings.filter((spot) => spot.zone === letter);
  return kinds.flatMap((kind): SeenReading[] => {
    const values = spots.flatMap((spot) => kind.of(spot) ?? []);
    if (values.length === 0) return [];
    const value = kind.worst ? Math.max(...values) : mean(values);
    const { coverNeeded, rutAllowed } = venue.rules;
    const asked =
      kind.what === 'live cover'
        ? { required: `${percent(coverNeeded)} or more`, met: value >= coverNeeded }
        : kind.what === 'deepest rut'
          ? { required: `${show(rutAllowed, 'smallLength', units)} or less`, met: value <= rutAllowed }
          : { required: '', met: null };
    const zone = forecast.zones.find((one) => one.letter === letter);
    const day = forecast.days.indexOf(eveningOf(inspection.at));
    const foreseen =
      zone === undefined || day < 0
        ? undefined
        : kind.what === 'live cover'
          ? zone.cover.p50[day]
          : kind.worst
            ? zone.ruts.p50[day]
            : undefined;
    const hammer = spots.find((spot) => spot.hardness !== null)?.hardness;
    const how =
      kind.what === 'hardness' && hammer ? `, ${figure(hammer.hammerMass, 2)} kg hammer, drop ${hammer.dropNumber}` : '';
    return [
      {
        zone: letter,
        point: values.length === 1 ? (spots[0]!.point ?? '') : `${values.length} spots`,
        what: `${kind.what}${how}`,
        value: kind.said(value, units),
        forecast: foreseen === undefined ? '' : kind.said(foreseen, units),
        ...asked,
      },
    ];
  });
};

const defectsOf = (inspection: Inspection, units: UnitSystem): readonly SeenDefect[] => [
  ...inspection.defects.map((defect) => ({
    zone: defect.zone,
    words: [defectWords[defect.kind], defect.words].filter(Boolean).join(': '),
    size:
      [
        defect.length === null ? '' : show(defect.length, 'length', units),
        defect.area === null ? '' : show(defect.area, 'area', units),
        defect.depth === null ? '' : `${show(defect.depth, 'smallLength', units)} deep`,
      ]
        .filter(Boolean)
        .join(', ') || 'not measured',
    cause: defectCauseWords[defect.cause],
    clause: defect.chargeable ? (defect.clause ?? 'chargeable, no clause') : '',
  })),
  ...inspection.spills.map((spill) => ({
    zone: spill.zone,
    words: [`spill of ${spillWords[spill.agent]}`, spill.at === null ? '' : moment(spill.at), spill.treatment]
      .filter(Boolean)
      .join(', '),
    size: [spill.volume === null ? '' : show(spill.volume, 'spilled', units), show(spill.area, 'area', units)]
      .filter(Boolean)
      .join(', '),
    cause: 'spill',
    clause: '',
  })),
];

/** Characters of a photograph's own words below its picture: what is longer stays in the workspace. */
const mostCaption = 160;

const picturesOf = async (contents: Contents, inspections: readonly Inspection[]): Promise<ReadonlyMap<string, SeenPicture>> => {
  const pictures = new Map<string, SeenPicture>();
  for (const id of inspections.flatMap((inspection) => inspection.photographs)) {
    const photograph = await contents.photographs.find(id);
    if (!photograph) continue;
    const caption = [
      photograph.takenAt.replace('T', ' '),
      photograph.zone === null ? '' : `zone ${photograph.zone}`,
      photograph.point ?? '',
      photograph.bearing === null ? '' : `bearing ${Math.round(photograph.bearing)}°`,
      shortened(photograph.words, mostCaption),
      `SHA-256 ${photograph.sha256.slice(0, 12)}`,
    ];
    pictures.set(id, { caption: caption.filter(Boolean).join(', '), bytes: await contents.photographs.thumbnail(id) });
  }
  return pictures;
};

/** From handback on the hours of a booking are those in fact; before it they are only booked. */
const hoursOf = (booking: Booking, before: Booking | null): readonly SeenHours[] => {
  if (booking.stage === 'cancelled' || bookingStages.indexOf(booking.stage) < bookingStages.indexOf('handed-back')) return [];
  return [...new Set(booking.layers.map((layer) => layer.zone))].toSorted(compareLetters).map((zone) => {
    const fact = spanOf(booking, zone)!;
    const booked = spanOf(before ?? booking, zone);
    return { zone, on: fact.on, off: fact.off, bookedOn: booked?.on ?? null, bookedOff: booked?.off ?? null };
  });
};

const spanOf = (booking: Booking, zone: string): { readonly on: LocalTime; readonly off: LocalTime } | null => {
  const layers = booking.layers.filter((layer) => layer.zone === zone);
  if (layers.length === 0) return null;
  return {
    on: layers.map((layer) => layer.on).toSorted()[0]!,
    off: layers
      .map((layer) => layer.off)
      .toSorted()
      .at(-1)!,
  };
};

const lessonsOf = (assimilation: Assimilation | undefined, units: UnitSystem): readonly string[] => {
  if (assimilation === undefined) return [];
  const covers = assimilation.seen.filter((one) => one.quantity === 'cover' && one.used);
  const { before, after } = assimilation.replaceArea;
  return [
    ...(covers.length === 0
      ? []
      : [
          `Cover seen against forecast: ${covers
            .map(
              (one) =>
                `${one.zone} on ${dayWords(dateOf(one.at))} ${percent(one.seen)} seen, ${percent(one.before.p50)} forecast`,
            )
            .join('; ')}.`,
        ]),
    `Weighed by what was seen, the area to be replaced goes from ${show(before.p50, 'area', units)} to ${show(after.p50, 'area', units)} in the middle; ${figure(assimilation.effectiveSize, 0)} of ${assimilation.members} members still count.`,
  ];
};

const changedSettings = async (contents: Contents, venue: Venue, kept: KeptPlan): Promise<readonly string[]> =>
  (await contents.learning.proposals(venue.id)).flatMap(({ decision, changes }) =>
    decision?.answer !== 'accepted' || decision.decidedAt > kept.plan.createdAt
      ? []
      : changes
          .filter((change) => decision.names.includes(change.name))
          .map(
            (change) =>
              `${change.name}: ${figure(change.before.value, 3)} to ${figure(change.after.value, 3)} ${change.unit}, accepted by ${decision.by} on ${decision.decidedAt.slice(0, 10)}.`,
          ),
  );

/** Newest comparison of each other event here. */
const pastCases = async (
  contents: Contents,
  assimilations: readonly Assimilation[],
  bookingId: string,
): Promise<readonly string[]> => {
  const said: string[] = [];
  const named = new Set<string | null>([bookingId, null]);
  for (const one of assimilations) {
    if (named.has(one.bookingId)) continue;
    named.add(one.bookingId);
    const covers = one.seen.filter((line) => line.quantity === 'cover');
    if (covers.length === 0) continue;
    const booking = await contents.bookings.find(one.bookingId!);
    const missed = mean(covers.map((line) => Math.abs(line.seen - line.before.p50)));
    said.push(
      `${booking?.name ?? one.bookingId!}: cover seen ${percent(mean(covers.map((line) => line.seen)))}, forecast ${percent(mean(covers.map((line) => line.before.p50)))}, off by ${Math.round(100 * missed)} points a zone (${counted(covers.length, 'reading of a zone', 'readings of zones')}).`,
    );
  }
  return said;
};
