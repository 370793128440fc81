import { addHours } from '#shared/calendar/local-time.ts';
import { show, type UnitSystem } from '#shared/units/quantity.ts';
import { cautions } from '#shared/wording/words.ts';
import type { RecoveryPapers } from '#reports/recovery-papers.ts';
import { heading, list, sentence, small, strong, table, type Sheet } from '#reports/sheet.ts';
import { bookedSpan, compare, compareLetters, coveringName, moment, titleOf, zoneName } from '#reports/wording.ts';

/** What is done the evening before the first truck, to be ticked off, and where everything begins in the morning. */
export const nightBefore = (papers: RecoveryPapers, units: UnitSystem): Sheet => {
  const { booking, venue, forecast } = papers;
  const booked = bookedSpan(papers);
  const { timeZone } = venue.place;
  const firstTruck = [...booking.traffic.map((pass) => pass.at), ...(booked === null ? [] : [booked.on])].toSorted()[0];
  const rain = rainAhead(papers, firstTruck ?? null, units);
  return {
    title: titleOf(papers, 'Night before'),
    format: 'standard',
    turned: false,
    pages: 2,
    parts: [
      strong(
        firstTruck === undefined
          ? 'Nothing is booked on the turf.'
          : `First on the turf: ${moment(firstTruck)}. Last water between ${moment(addHours(firstTruck, -24, timeZone))} and ${moment(addHours(firstTruck, -12, timeZone))}.`,
      ),
      ...(rain === null ? [] : [sentence(rain)]),
      heading('Record'),
      list(
        [
          'Baseline walk with the promoter: readings at the fixed points of every zone, photographs with bearing, signed by both.',
          'Irrigation run station by station; faults noted before they can be blamed on anybody.',
          'Drains, sensors, goal sockets, cable ducts photographed and flagged.',
        ],
        'box',
      ),
      heading('Turf'),
      list(
        [
          `Mown in two directions at ${show(venue.field.mowingHeight, 'smallLength', units)} or slightly lower, clippings out.`,
          'Swept; nothing loose left on the leaf.',
          'Probe: firm enough for the first truck on every route. Write the readings on the baseline form.',
        ],
        'box',
      ),
      heading('Services'),
      list(
        [
          'Heads lowered, capped and flagged; sensors out.',
          'Stations OFF, controller tagged, and who holds the key written here.',
          'Buried services marked on the ground.',
        ],
        'box',
      ),
      heading('Ground'),
      list(
        [
          'Zones marked with their letters; edges of the haul route painted wide.',
          'Spare panels at the gate and at every turn of the route.',
          'Pallets and steel on hard standing only; the place shown to the loaders.',
          'Spill kits, magnets, rakes, straightedge, probe and camera on the cart.',
        ],
        'box',
      ),
      heading('People'),
      list(
        [
          'Rain plan agreed with production: who says stop, and who calls whom.',
          'Someone of the grounds crew on the field whenever anyone works there; the roster for the first two days is hung up.',
          'Telephone numbers: production, operations, farm, engineer.',
        ],
        'box',
      ),
      heading('Where it begins'),
      table(
        [
          ['Zone', 3],
          ['Floor', 4],
          ['Down from', 2],
          ['Turf', 1.4, 'right'],
          ['Walked', 1],
        ],
        booking.layers
          .toSorted((a, b) => compare(a.on, b.on) || compareLetters(a.zone, b.zone))
          .map((layer) => {
            const zone = forecast.result.zones.find((one) => one.letter === layer.zone);
            return [
              zone === undefined ? layer.zone : zoneName(zone),
              coveringName(papers, layer.covering),
              moment(layer.on),
              zone === undefined ? '–' : show(zone.area, 'area', units),
              '',
            ];
          }),
        'No floor is booked.',
      ),
      { part: 'blanks', labels: ['Done by, date, hour', 'Seen by the head of grounds'] },
      small(`${cautions.structures} ${cautions.people}`),
    ],
  };
};

/** Rain that the forecast's middle member has around the first truck. */
const rainAhead = ({ forecast }: RecoveryPapers, first: string | null, units: UnitSystem): string | null => {
  if (first === null) return null;
  const { days, weather } = forecast.result;
  const at = days.indexOf(first.slice(0, 10));
  if (at < 0) return null;
  const rain = weather.rain.slice(Math.max(0, at - 1), at + 2).reduce((sum, day) => sum + day, 0);
  return rain < 1
    ? 'The reckoned season has no rain around the first truck; look at the real forecast tonight.'
    : `The reckoned season has ${show(rain, 'rain', units)} of rain around the first truck; look at the real forecast tonight.`;
};
