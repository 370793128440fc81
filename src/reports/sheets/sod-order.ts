import { figure, show, type UnitSystem, showMoney } from '#shared/units/quantity.ts';
import type { SodOrder } from '#shared/vocabulary/plan.ts';
import { grassWords } from '#shared/wording/words.ts';
import type { RecoveryPapers } from '#reports/recovery-papers.ts';
import { heading, list, sentence, small, strong, table, type Part, type Sheet } from '#reports/sheet.ts';
import { clockOf } from '#shared/calendar/local-time.ts';
import { counted, farmName, loadedInAll, moment, percent, rolledUp, titleOf, zonesInWords } from '#reports/wording.ts';

/** The order to each farm, with its trucks hour by hour and the way back to the hour of release. */
export const sodOrderSheet = (papers: RecoveryPapers, units: UnitSystem): Sheet => {
  const { orders } = papers.plan.plan;
  return {
    title: titleOf(papers, 'Sod order and truck plan'),
    format: 'standard',
    turned: false,
    pages: null,
    parts: [
      ...(orders.length === 0
        ? [strong('No sod is needed.'), sentence('The plan brings every zone back without new turf.')]
        : orders.flatMap((order, index) => [
            ...(index > 0 ? [{ part: 'page' as const }] : []),
            ...orderPart(papers, order, units),
          ])),
    ],
  };
};

const orderPart = (papers: RecoveryPapers, order: SodOrder, units: UnitSystem): readonly Part[] => {
  const { venue } = papers;
  const farm = venue.farms.find((one) => one.id === order.farm);
  const { currency } = venue.rules;
  const money = (value: number | null): string => (value === null ? 'no price is entered' : showMoney(value, currency));
  const { curfew } = venue.workforce;
  const thickness = farm && (order.cut === 'thin' ? farm.thinCut : farm.thickCut);
  return [
    strong(`Release to ${farmName(papers, order.farm)} by ${moment(order.releaseBy)} at the latest.`),
    table(
      [
        ['', 2],
        ['', 5],
      ],
      [
        ['Area to lie', `${show(order.area, 'area', units)} in ${zonesInWords(order.zones)}`],
        ['Area to cut', `${show(order.ordered, 'area', units)}, with ${percent(venue.rules.sodWaste)} for waste and edges`],
        ...(farm
          ? [
              ['Turf', `${grassWords[farm.grass]}, grown on soil with ${percent(farm.sandShare)} sand`],
              [
                'Cut',
                `${order.cut}${thickness === null || thickness === undefined ? '' : `, ${show(thickness, 'smallLength', units)} of soil`}, rolls ${show(farm.rollWidth, 'length', units, 1)} wide and ${show(farm.rollLength, 'length', units, 1)} long`,
              ],
            ]
          : []),
        [
          'Rolls and weight',
          `${counted(order.rolls, 'whole roll')}, ${show(order.weight, 'mass', units)}, ${counted(order.trucks.length, 'truckload')}`,
        ],
        ['Sod', money(order.price)],
        ['Freight', money(order.freight)],
        ...(order.price === null || order.freight === null ? [] : [['Sod and freight', money(order.price + order.freight)]]),
        ['Called off after release', money(order.cancelFee)],
        [
          'Gate',
          curfew === null
            ? 'no curfew is entered'
            : `no trucks from ${curfew.from} to ${curfew.until}; pallets stay on hard standing`,
        ],
      ],
      '',
    ),
    heading('Trucks'),
    table(
      [
        ['Truck', 0.9, 'right'],
        ['Cut', 2],
        ['Leaves', 1],
        ['At the gate', 2],
        ['First roll', 1.1],
        ['Down', 1.1],
        ['Rolls', 0.9, 'right'],
        ['Area', 1.4, 'right'],
        ['Weight', 1.5, 'right'],
        ['Rolled up', 1.7, 'right'],
        ['Zones', 1.3],
      ],
      order.trucks.length === 0
        ? []
        : [
            ...order.trucks.map((truck) => [
              String(truck.number),
              moment(truck.cut),
              clockOf(truck.leave),
              moment(truck.arrive),
              clockOf(truck.begin),
              clockOf(truck.down),
              String(truck.rolls),
              show(truck.area, 'area', units),
              show(truck.weight, 'mass', units),
              rolledUp(papers, order, truck),
              truck.zones.join(' '),
            ]),
            ['Sum', '', '', '', '', '', ...loadedInAll(order, units), '', ''],
          ],
      'No truck is planned.',
      { sum: true },
    ),
    heading('How the hour of release comes about'),
    table(
      [
        ['Back from the first roll laid', 5],
        ['Hours', 1, 'right'],
        ['Brings us to', 2],
      ],
      order.terms.map((term) => [term.name, figure(term.hours, 1), moment(term.at)]),
      '',
    ),
    heading('To be agreed with the farm'),
    list(
      [
        'A spare harvester, and who calls when the soil at the farm is too wet or frozen to cut.',
        'Driver hours and weigh limits on the way; the farm’s own record of each load goes with the truck.',
        'Lay within a day of the cut; loads that come warm or yellow are turned back at the gate and noted.',
        'No release before the handback inspection of the zone unless this order is signed below.',
      ],
      'box',
    ),
    { part: 'blanks', labels: ['Released by, date, hour', 'Head of grounds', 'Farm, confirmed'] },
    small('Trucks carry what the payload allows; the number follows from area times weight over payload, whole rolls only.'),
  ];
};
