import { figure, show, type UnitSystem } from '#shared/units/quantity.ts';
import { cautions, zoneUseWords } from '#shared/wording/words.ts';
import { mapOf } from '#reports/drawings.ts';
import type { RecoveryPapers } from '#reports/recovery-papers.ts';
import { heading, list, strong, table, type Sheet } from '#reports/sheet.ts';
import { coveringName, moment, titleOf } from '#reports/wording.ts';

/** The field for the promoter's crew, large: who may put what where, and from which hour to which. No forecast stands on it. */
export const promoterMap = (papers: RecoveryPapers, units: UnitSystem): Sheet => {
  const { booking, venue, forecast } = papers;
  return {
    title: { ...titleOf(papers, 'Zone map for the promoter'), footnote: cautions.structures },
    format: 'large',
    turned: true,
    pages: null,
    parts: [
      {
        part: 'columns',
        share: 0.44,
        left: [{ part: 'maps', maps: [mapOf(papers, 'floors', `${venue.name}, to scale`)], height: 590, legend: 'floors' }],
        right: [
          strong('Floor down and up by zone. Ask grounds before anything changes.'),
          table(
            [
              ['Zone', 2.2],
              ['Use', 1.5],
              ['Size', 1.1, 'right'],
              ['Floor', 3],
              ['Floor down from', 1.7],
              ['Floor up by', 1.7],
              ['Rated wheel', 1.2, 'right'],
            ],
            booking.zones.flatMap((zone) => {
              const layers = booking.layers.filter((layer) => layer.zone === zone.letter);
              const area = forecast.result.zones.find((one) => one.letter === zone.letter)?.area ?? 0;
              const head = [`${zone.letter}  ${zone.name}`, zoneUseWords[zone.use], show(area, 'area', units)];
              return layers.length === 0
                ? [[...head, 'no floor: feet only', '–', '–', '–']]
                : layers.map((layer) => [
                    ...head,
                    coveringName(papers, layer.covering),
                    moment(layer.on),
                    moment(layer.off),
                    ratingOf(papers, layer.covering, units),
                  ]);
            }),
            'No zone is drawn yet.',
          ),
          heading('Machines and passes'),
          table(
            [
              ['Zone', 0.8],
              ['Machine', 4],
              ['From', 2],
              ['Passes', 1, 'right'],
            ],
            booking.traffic.map((pass) => [
              pass.zone,
              papers.vehicles.find((one) => one.id === pass.vehicle)?.name ?? pass.vehicle,
              moment(pass.at),
              figure(pass.passes, 0),
            ]),
            'No machine is entered: none drives on the field.',
          ),
          heading('On the field'),
          list([
            'Trucks and lifts keep to the hatched routes; turning, waiting and refuelling on hard standing.',
            'Pallets, steel and chairs never on open grass.',
            'A spill is told to grounds at once: product, amount, place. Nobody washes it away.',
            'Stop when grounds say stop: wet ground or heat under a floor.',
            'Nothing driven into the ground without clearance of buried services.',
            'Each zone is handed back in writing when it is clear.',
          ]),
        ],
      },
    ],
  };
};

const ratingOf = ({ coverings }: RecoveryPapers, id: string, units: UnitSystem): string => {
  const rating = coverings.find((one) => one.id === id)?.wheelRating ?? 0;
  return rating === 0 ? 'feet only' : show(rating, 'force', units);
};
