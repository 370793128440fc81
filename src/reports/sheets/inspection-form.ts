import { show, type UnitSystem } from '#shared/units/quantity.ts';
import type { RecoveryPapers } from '#reports/recovery-papers.ts';
import { heading, sentence, small, table, type Sheet } from '#reports/sheet.ts';
import { titleOf, zoneName } from '#reports/wording.ts';

/** Points of a zone, from its size: three at least, one more for every 400 m², ten at most. */
export const pointsOf = (area: number): number => Math.min(10, 3 + Math.floor(area / 400));

/** Zones of a form that is one side. */
const mostOnOneSide = 8;

/** The form for a walk over the field, filled by hand: baseline, handback, or one of the later days. */
export const inspectionForm = (papers: RecoveryPapers, units: UnitSystem): Sheet => {
  const zones = papers.forecast.result.zones;
  return {
    title: titleOf(papers, 'Baseline and handback form'),
    format: 'standard',
    turned: true,
    pages: zones.length <= mostOnOneSide ? 1 : null,
    parts: [
      sentence('Underline one:   baseline     handback     + 24 h     + 72 h     + 7 d     other ______________'),
      {
        part: 'blanks',
        labels: ['Who', 'Date and minute', 'Weather, since when dry', 'Hammer mass, drop, probe', 'Sheet number, of how many'],
      },
      heading('Readings: the mean of the points of a zone, the worst point behind it'),
      table(
        [
          ['Zone', 3],
          ['Turf', 1.2, 'right'],
          ['Points', 0.8, 'right'],
          ['Cover %', 1.1],
          ['Colour 1–9', 1.1],
          ['Moisture %', 1.2],
          ['Hardness', 1.2],
          ['Traction', 1.1],
          ['Penetration', 1.3],
          ['Infiltration', 1.2],
          ['Temperature', 1.3],
          ['Pictures', 1.4],
        ],
        zones.map((zone) => [
          zoneName(zone),
          show(zone.area, 'area', units),
          String(pointsOf(zone.area)),
          ...Array<string>(9).fill(''),
        ]),
        '',
        { rowHeight: 20 },
      ),
      heading('Defects and spills'),
      table(
        [
          ['Zone', 0.8],
          ['What', 3],
          ['Length, area, depth', 2.2],
          ['Cause: production, crowd, weather, venue, unknown', 3.4],
          ['Treatment', 2],
          ['Clause', 1],
          ['Picture, bearing', 1.6],
        ],
        Array.from({ length: zones.length <= mostOnOneSide ? 5 : 8 }, () => Array<string>(7).fill('')),
        '',
        { rowHeight: 22 },
      ),
      {
        part: 'blanks',
        labels: [
          'For the venue, name and signature',
          'For the promoter, name and signature',
          'or: declined to sign, and who saw it',
        ],
      },
      small(
        'A line is never rubbed out: strike it, write a new one and name the old one. A picture before is worth the claim after: take the same points with the same bearing.',
      ),
    ],
  };
};
