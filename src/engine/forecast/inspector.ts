import type { Symptom } from '#shared/vocabulary/forecast.ts';
import type { LocalDate } from '#shared/vocabulary/primitives.ts';
import { causes, noCauses, type ByCause } from '#engine/injury/causes.ts';
import { diseasePressure, diseaseRisk } from '#engine/injury/disease-risk.ts';
import { diseaseTraitsOf, symptomLagsOf } from '#engine/injury/injury-traits.ts';
import { seenOn, type TurfDay } from '#engine/injury/symptoms.ts';
import { growthPotential } from '#engine/recovery/growth-potential.ts';
import type { Workshop } from '#engine/forecast/workshop.ts';
import { lyingAt } from '#engine/forecast/exposure.ts';
import type { Member } from '#engine/forecast/member.ts';
import type { UsualCourse } from '#engine/forecast/tally.ts';

/** Days after the last covering on which an inspector looks: at once, +1, +3, +7, and the morning of the home date. */
const looks = [0, 1, 3, 7];

/**
 * What an inspector would see on a zone in the usual season: its largest group stands for it.
 * @param off day the last covering comes off @param home day of the home date
 */
export const inspect = (shop: Workshop, usual: UsualCourse, member: Member, zone: number, off: number, home: number) => {
  const { groups, period } = shop.scene;
  const at = groups.reduce(
    (best, group, index) => (group.zone === zone && (best < 0 || group.area > groups[best]!.area) ? index : best),
    -1,
  );
  const history = historyOf(shop, usual, member, at);
  const lags = symptomLagsOf(member.values);
  const days = [...new Set([...looks.map((wait) => off + wait), home])].filter((day) => day < period.days.length && day <= home);
  return days.flatMap((day): { date: LocalDate; symptom: Symptom; severity: number }[] =>
    seenOn(history, day, lags).symptoms.map(({ id, severity }) => ({
      date: period.days[day]!,
      symptom: id,
      severity: Math.round(severity * 1000) / 1000,
    })),
  );
};

const historyOf = (shop: Workshop, usual: UsualCourse, member: Member, at: number): readonly TurfDay[] => {
  const { period, groups } = shop.scene;
  const { firstHour } = period;
  const track = usual.tracks[at]!;
  const lost = usual.notes[at]!.lost!;
  const water = usual.water[at]!;
  const disease = diseaseTraitsOf(member.values);
  const { compactionFree, compactionStop, growth } = member.traits;
  const { exposure } = groups[at]!;
  let pressure = 0;
  return period.days.map((_, day) => {
    const stretch = lyingAt(exposure, firstHour[day]! + 10);
    const wetHours = stretch ? 24 : member.weather.rain[day]! > 0 ? 10 : 4;
    // Dew and rain wet open turf too; only what a covering adds counts towards its disease.
    pressure = stretch
      ? diseasePressure(pressure, wetHours, member.air[day]!, disease)
      : pressure * Math.exp(-1 / disease.memory);
    const saturated = shop.profile.saturated[0]! / shop.profile.thickness[0]!;
    return {
      covered: stretch !== null,
      cover: track.cover[day]!,
      lost: lostOn(track.cover[day - 1] ?? track.cover[day]!, lost, day),
      ruts: track.ruts[day]!,
      compaction: Math.min(1, Math.max(0, (track.density[day]! - compactionFree) / (compactionStop - compactionFree))),
      diseaseRisk: diseaseRisk(pressure, disease),
      growth: growthPotential(member.air[day]!, growth),
      darkDays: 0,
      wet: water.airless[day] ? Math.min(1, water.top[day]! / saturated) : 0,
    };
  });
};

/** Cover lost on a day by cause, as shares of the ground: the cover of the evening before times what the logarithms say. */
const lostOn = (before: number, lost: Float64Array, day: number): ByCause => {
  const gone = causes.map(
    (_, cause) => lost[day * causes.length + cause]! - (day > 0 ? lost[(day - 1) * causes.length + cause]! : 0),
  );
  const total = gone.reduce((sum, part) => sum + part, 0);
  if (total <= 0) return noCauses;
  const whole = before * (1 - Math.exp(-total));
  return Object.fromEntries(causes.map((cause, index) => [cause, (whole * gone[index]!) / total])) as ByCause;
};
