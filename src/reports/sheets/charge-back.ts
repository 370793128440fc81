import { figure, show, type UnitSystem } from '#shared/units/quantity.ts';
import { costWords, exactMoney, fateWords, type AccountLine } from '#shared/vocabulary/money.ts';
import type { RecoveryPapers, SeenInspection } from '#reports/recovery-papers.ts';
import { heading, list, sentence, small, strong, table, type Part, type Sheet } from '#reports/sheet.ts';
import { picturesOf } from '#reports/sheets/recovery-report.ts';
import { unitAmount } from '#shared/wording/amounts.ts';
import { causesInWords, counted, dayWords, moment, orDash, percent, titleOf, zoneName } from '#reports/wording.ts';

/** The claim: what it was before and after, why, every line with its clause and proof, cap, deposit and the days that count. */
export const chargeBack = (papers: RecoveryPapers, units: UnitSystem): Sheet => {
  const { account, terms, currency } = papers.money;
  const money = (value: number): string => exactMoney(value, currency);
  const last = account.lines.at(-1)?.entry;
  const title = titleOf(papers, 'Charge-back');
  return {
    title: {
      ...title,
      facts: [
        ...title.facts.slice(0, 3),
        last === undefined
          ? `no line of cost, ${title.facts[3]!}`
          : `lines 1 to ${last.number}, last ${last.enteredAt.slice(0, 10)}`,
      ],
    },
    format: 'standard',
    turned: false,
    pages: null,
    parts: [
      strong(
        terms === null
          ? 'No terms are entered for this booking: nothing can be claimed from anybody.'
          : `Claimed from ${terms.payer}: ${money(account.claim)}${account.claimBy === null ? '' : `, to be made by ${dayWords(account.claimBy)} ${account.claimBy.slice(0, 4)}`}.`,
      ),
      ...(terms === null
        ? []
        : [
            sentence(
              `Handed back ${account.handedBack === null ? 'at an hour not recorded' : moment(account.handedBack)}. Claim within ${counted(terms.claimDays, 'day')}; damage that shows late within ${counted(terms.lateDays, 'day')}${account.lateBy === null ? '' : `, by ${dayWords(account.lateBy)}`}.`,
            ),
          ]),
      heading('Account'),
      ...accountPart(papers),
      ...linesPart(papers),
      ...notClaimed(papers),
      ...beforeAndAfter(papers, units),
      ...clauses(papers),
      ...picturesPart(papers),
      ...(terms === null
        ? []
        : [
            heading('Signed'),
            { part: 'blanks' as const, labels: ['Head of grounds, date', 'Finance, date', 'Received for the payer, date'] },
          ]),
      small(
        'Every line is quantity times price in the smallest unit of the currency, rounded once. Charged part and rest of each line add up to it; claim and what the venue bears add up to the total.',
      ),
    ],
  };
};

/** From the cost to the claim and from the claim to the balance, each step a line; only the total where nobody has agreed to pay. */
const accountPart = ({ money: { account, terms, currency } }: RecoveryPapers): readonly Part[] => {
  const row = (words: string, value: number): readonly string[] => [words, exactMoney(value, currency).slice(4)];
  const total = row('Cost of the event to the field, all lines', account.total);
  const venue = row('Borne by the venue: all lines less the claim', account.venueBears);
  return [
    table(
      [
        ['', 5],
        [currency, 2, 'right'],
      ],
      terms === null
        ? [total, row('Borne by the venue', account.venueBears)]
        : [
            total,
            row('Charged, proven, found by the claim day', account.chargeable),
            row('Plus late-damage supplement', account.supplement),
            row(
              terms.excess > 0 ? 'Less what the venue bears first' : 'Less what the venue bears first (nothing agreed)',
              -account.excess,
            ),
            row(
              terms.cap === null
                ? 'Less what is above the cap (no cap agreed)'
                : `Less what is above the cap of ${exactMoney(terms.cap, currency)}`,
              -account.aboveCap,
            ),
            row('Claim', account.claim),
            row('Kept from the deposit', account.depositKept),
            row('Balance due: claim less what is kept', account.balanceDue),
            row('Deposit returned', account.depositReturned),
            venue,
          ],
      '',
    ),
  ];
};

/** As many decimals as were entered. */
const quantityWords = (quantity: number): string =>
  figure(quantity, [0, 1, 2].find((digits) => Number(quantity.toFixed(digits)) === quantity) ?? 3);

const lineRow = ({ entry, charged, own }: AccountLine): readonly string[] => [
  `${entry.number}${entry.corrects === null ? '' : ` (for ${entry.corrects})`}`,
  entry.date,
  `${costWords[entry.kind]}: ${entry.words}${entry.zone === null ? '' : `, ${entry.zone}`}`,
  unitAmount(quantityWords(entry.quantity), entry.unit),
  exactMoney(entry.price, entry.currency).slice(4),
  exactMoney(entry.sum, entry.currency).slice(4),
  entry.clause ?? '–',
  exactMoney(charged, entry.currency).slice(4),
  exactMoney(own, entry.currency).slice(4),
  orDash(entry.evidence),
];

const lineColumns = [
  ['Line', 0.8],
  ['Day', 1.3],
  ['What', 3.4],
  ['Quantity', 1.4, 'right'],
  ['Price', 1.1, 'right'],
  ['Sum', 1.4, 'right'],
  ['Clause', 0.9],
  ['Charged', 1.4, 'right'],
  ['Venue', 1.4, 'right'],
  ['Proof', 3],
] as const;

const linesPart = ({ money: { account, currency } }: RecoveryPapers): readonly Part[] => {
  const lines = account.lines.filter((line) => line.fate === 'claimed' || line.fate === 'late' || line.fate === 'own');
  const add = (part: (line: AccountLine) => number): string =>
    exactMoney(
      lines.reduce((sum, line) => sum + part(line), 0),
      currency,
    ).slice(4);
  return [
    heading('Lines'),
    table(
      lineColumns,
      lines.length === 0
        ? []
        : [
            ...lines.map((line) => (line.fate === 'late' ? lineRow(line).with(0, `${line.entry.number} late`) : lineRow(line))),
            ['', '', 'Sum', '', '', add((line) => line.entry.sum), '', add((line) => line.charged), add((line) => line.own), ''],
          ],
      'No line of cost is entered yet.',
      { sum: true },
    ),
  ];
};

const notClaimed = ({ money: { account } }: RecoveryPapers): readonly Part[] => {
  const left = account.lines.filter((line) => ['unproven', 'too-late', 'corrected'].includes(line.fate));
  if (left.length === 0 && account.otherCurrency === 0) return [];
  return [
    heading('Not claimed'),
    table(
      [
        ['Line', 0.8],
        ['Day', 1.2],
        ['What', 4],
        ['Sum', 1.6, 'right'],
        ['Why', 3],
      ],
      left.map(({ entry, fate }) => [
        String(entry.number),
        entry.date,
        `${costWords[entry.kind]}: ${entry.words}`,
        exactMoney(entry.sum, entry.currency).slice(4),
        fateWords[fate],
      ]),
      'None.',
    ),
    ...(account.otherCurrency > 0
      ? [
          sentence(
            `${counted(account.otherCurrency, 'line')} in another currency ${account.otherCurrency === 1 ? 'is' : 'are'} in no sum.`,
          ),
        ]
      : []),
  ];
};

/** Baseline against handback as seen, and beside it what the forecast said and why. */
const beforeAndAfter = (papers: RecoveryPapers, units: UnitSystem): readonly Part[] => {
  const { inspections } = papers.evidence;
  const first = inspections[0];
  const last = inspections.at(-1);
  const seen = (inspection: SeenInspection | undefined, letter: string): string => {
    const cover = inspection?.cover[letter];
    return cover === undefined ? '–' : percent(cover);
  };
  return [
    heading('Before and after, and why'),
    table(
      [
        ['Zone', 3],
        ['Turf', 1.4, 'right'],
        [first === undefined ? 'Before, seen' : `${first.stage}, seen`, 1.3, 'right'],
        [last === undefined || last === first ? 'After, seen' : `${last.stage}, seen`, 1.3, 'right'],
        ['After, forecast', 1.5, 'right'],
        ['Covered', 1.2, 'right'],
        ['What took it, by the forecast', 4],
      ],
      papers.forecast.result.zones
        .filter((zone) => zone.origin === 'event')
        .map((zone) => [
          zoneName(zone),
          show(zone.area, 'area', units),
          seen(first, zone.letter),
          last === first ? '–' : seen(last, zone.letter),
          `${percent(zone.coverAfter.p50)} (${Math.round(100 * zone.coverAfter.p10)}–${Math.round(100 * zone.coverAfter.p90)})`,
          `${zone.hoursCovered} h`,
          causesInWords(zone.causes),
        ]),
      'No zone of the event lies on turf.',
    ),
    ...(inspections.length === 0
      ? [sentence('No inspection is recorded: a claim without a signed baseline and handback is hard to hold.')]
      : [
          sentence(
            inspections
              .map((one) => `${one.stage} ${moment(one.at)} by ${one.by}, witness ${one.witness}`)
              .join('; ')
              .concat('.'),
          ),
          ...defectsOf(papers),
        ]),
  ];
};

const defectsOf = ({ evidence }: RecoveryPapers): readonly Part[] => {
  const defects = evidence.inspections.flatMap((one) => one.defects.map((defect) => ({ stage: one.stage, ...defect })));
  return defects.length === 0
    ? []
    : [
        table(
          [
            ['Seen at', 1.2],
            ['Zone', 0.6],
            ['Defect', 4.6],
            ['Size', 1.9],
            ['Cause', 1.2],
            ['Clause', 1.1],
          ],
          defects.map((one) => [one.stage, one.zone, one.words, one.size, one.cause, orDash(one.clause)]),
          '',
        ),
      ];
};

const clauses = ({ money: { terms } }: RecoveryPapers): readonly Part[] =>
  terms === null || terms.clauses.length === 0
    ? []
    : [
        heading('Clauses relied on'),
        list(terms.clauses.map((clause) => `${clause.number} (${clause.share} %): ${clause.words}`)),
      ];

const picturesPart = (papers: RecoveryPapers): readonly Part[] => {
  const pictures = picturesOf(papers, 12);
  return pictures.length === 0 ? [] : [heading('Photographs'), { part: 'pictures', pictures }];
};
