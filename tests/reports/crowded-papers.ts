import type { RecoveryPapers, SeenInspection } from '#reports/recovery-papers.ts';
import { pngOf } from '#platform/photographs/codecs.ts';
import { exampleEntry, examplePapers, exampleTerms, moneyWith } from '#tests/reports/example-papers.ts';
import { leaf, painted, straw } from '#tests/platform/photographs/synthetic-pictures.ts';

/** A name as long as a name may be. */
const long = (words: string): string =>
  `${words}, with everything that was ever called part of it and the strip behind it as well`.slice(0, 120);

const pictureOf = async (number: number): Promise<Uint8Array> =>
  pngOf(painted(160, 120, (x, y) => ((x * 7 + y * 13 + number) % 100 < 40 ? leaf : straw)));

/** Words as long as a note may be, higher than a page in a column of a table; every one can be found again. */
export const longest: readonly string[] = Array.from({ length: 500 }, (_, index) => `w${1000 + index}x`);

/** A walk with a reading of three kinds in every zone, a defect in each, spills and pictures. */
const walk = async (letters: readonly string[], stage: string, at: string): Promise<SeenInspection> => ({
  stage,
  at,
  by: 'A. Beispielsdottir-Oluwaseun of the tests',
  witness: 'declined by Promoter, M. Vantongeren (Production)',
  weather: 'dry, 27 °C',
  readings: letters.flatMap((zone) => [
    { zone, point: `${zone}1`, what: 'live cover', value: '60 %', forecast: '71 %', required: '90 % or more', met: false },
    { zone, point: '3 spots', what: 'hardness, 2.25 kg hammer, drop 4', value: '88 g', forecast: '', required: '', met: null },
    { zone, point: '3 spots', what: 'deepest rut', value: '12 mm', forecast: '9 mm', required: '13 mm or less', met: true },
  ]),
  defects: letters.map((zone, index) => ({
    zone,
    words:
      index === 3
        ? longest.join(' ')
        : index % 2 === 0
          ? 'pad mark: an outrigger pad sunk at its north edge because the spreader below it had been taken away in the night'
          : 'spill of hydraulic oil, at 2027-07-19 04:00, detergent within 20 minutes, then flushed to the collecting tray',
    size: '3.0 m, 9 m², 30 mm deep',
    cause: 'production',
    clause: '7.2 and annex B-14',
  })),
  pictures: await Promise.all(
    letters.slice(0, 7).map(async (zone, index) => ({
      caption: `${at.replace('T', ' ')}, zone ${zone}, ${zone}1, bearing 14°, ${index % 2 ? long('Barricade line') : 'Barricade line'}, SHA-256 0123456789ab`,
      bytes: await pictureOf(index),
    })),
  ),
  cover: Object.fromEntries(letters.map((letter) => [letter, 0.6])),
  note: '',
});

/**
 * As much as one event may hold: forty zones with long names, two hundred jobs and one for the field, sixty trucks, sixty lines of cost
 * with long words, two walks with a hundred and twenty readings, eighty defects, some in as many words as a note may have, and fourteen
 * pictures.
 */
export const crowdedPapers = async (): Promise<RecoveryPapers> => {
  const entries = Array.from({ length: 60 }, (_, index) =>
    exampleEntry(index + 1, {
      words: index % 3 === 0 ? long('Thick cut as delivered') : 'Thick cut as delivered',
      evidence:
        index % 5 === 0
          ? 'delivery notes 4471-0001 to 4471-0060, weighbridge tickets, and the photographs of each load'
          : 'invoice 4471',
      sum: 304_500 + 1_234_567 * index,
    }),
  );
  const papers = examplePapers(40, 60, { money: moneyWith({ ...exampleTerms, cap: 9_500_000_00 }, entries) });
  const longName = <Zone extends { name: string }>(zone: Zone, index: number): Zone =>
    index % 4 === 0 ? { ...zone, name: long(zone.name) } : zone;
  const booking = { ...papers.booking, name: long(papers.booking.name), zones: papers.booking.zones.map(longName) };
  const result = { ...papers.forecast.result, zones: papers.forecast.result.zones.map(longName) };
  const letters = result.zones.map((zone) => zone.letter);
  const { plan } = papers.plan;
  const decisions = Array.from({ length: 5 }, (_, index) => ({
    ...plan.decisions[0]!,
    name: `${index + 1}. ${plan.decisions[0]!.name}`,
  }));
  const kept = {
    booking,
    forecast: { ...papers.forecast, result },
    plan: { ...papers.plan, plan: { ...plan, decisions } },
    estimate: papers.estimate,
  };
  return {
    ...papers,
    ...kept,
    venue: { ...papers.venue, name: long(papers.venue.name) },
    alternatives: Array.from({ length: 4 }, (_, index) => ({
      ...kept,
      booking: { ...booking, name: `${index + 1}. ${booking.name}`.slice(0, 120) },
    })),
    season: Array.from({ length: 12 }, () => ({ kept, money: papers.money })),
    evidence: {
      inspections: [await walk(letters, 'baseline', '2027-07-12T05:10'), await walk(letters, 'handback', '2027-07-19T15:30')],
      hours: letters.map((zone) => ({
        zone,
        on: '2027-07-12T06:00',
        off: '2027-07-18T19:00',
        bookedOn: '2027-07-12T06:00',
        bookedOff: '2027-07-18T12:00',
      })),
      lessons: ['Cover seen against forecast: A 60 % seen, 71 % forecast; B 61 % seen, 70 % forecast.'],
      changedSettings: ['reserve.darkDays.cool: 5.000 to 4.200 d, accepted by Head of the tests on 2027-07-20.'],
      pastCases: ['Another event: cover seen 60 %, forecast 71 %, off by 11 points a zone (6 readings of zones).'],
    },
  };
};
