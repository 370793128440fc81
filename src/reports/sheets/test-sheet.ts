import { show, type UnitSystem } from '#shared/units/quantity.ts';
import { addHours } from '#shared/calendar/local-time.ts';
import type { RecoveryPapers } from '#reports/recovery-papers.ts';
import { heading, sentence, small, strong, table, type Sheet } from '#reports/sheet.ts';
import { moment, percent, titleOf } from '#reports/wording.ts';
import { replacedZones } from '#reports/drawings.ts';

/** Test points of the whole field, shared by area; every zone has at least two. */
const wanted = 48;

export const testPoints = (areas: readonly number[]): readonly number[] => {
  const total = areas.reduce((sum, area) => sum + area, 0);
  return areas.map((area) => Math.max(2, Math.round((wanted * area) / total)));
};

/** The sheet that goes with the measured tests before the home date: point by point, to be filled by hand. */
export const testSheet = (papers: RecoveryPapers, units: UnitSystem): Sheet => {
  const { venue, forecast } = papers;
  const { zones, homeDate } = forecast.result;
  const counts = testPoints(zones.map((zone) => zone.area));
  const fresh = new Set(replacedZones(papers));
  const from = addHours(homeDate.start, -venue.rules.certifyLead, venue.place.timeZone);
  return {
    title: titleOf(papers, 'Test sheet for the home date'),
    format: 'standard',
    turned: false,
    pages: null,
    parts: [
      strong(`Tests not before ${moment(from)}; ${homeDate.name} ${moment(homeDate.start)}.`),
      sentence(
        `The venue asks for ${percent(venue.rules.coverNeeded)} live cover and ruts of at most ${show(venue.rules.rutAllowed, 'smallLength', units)}. Hardness, traction and evenness: the competition’s own limits and method; write them here before the first point.`,
      ),
      {
        part: 'blanks',
        labels: ['Hardness, limits and hammer', 'Traction, limits and device', 'Evenness, limits', 'Moisture, limits and depth'],
      },
      heading('Points'),
      table(
        [
          ['Point', 0.8],
          ['Zone', 2.6],
          ['Cover %', 1],
          ['Hardness', 1.1],
          ['Traction', 1.1],
          ['Moisture', 1.1],
          ['Evenness', 1.1],
          ['Seam holds', 1.1],
          ['Met', 0.8],
        ],
        zones.flatMap((zone, index) =>
          Array.from({ length: counts[index]! }, (_, point) => [
            `${zone.letter}${point + 1}`,
            point === 0 ? zone.name : '',
            '',
            '',
            '',
            '',
            '',
            fresh.has(zone.letter) ? '' : 'no seam',
            '',
          ]),
        ),
        '',
        { rowHeight: 13 },
      ),
      heading('Outcome'),
      table(
        [
          ['Points that miss, and what is done', 5],
          ['Tested again at', 2],
          ['Met', 1],
        ],
        Array.from({ length: 3 }, () => ['', '', '']),
        '',
        { rowHeight: 20 },
      ),
      { part: 'blanks', labels: ['Tested by, date, hour', 'For the competition', 'Head of grounds'] },
      small('The owner and the competition decide on play. This sheet only holds what was measured.'),
    ],
  };
};
