import type { Row } from '#tests/faults/tally.ts';

/** The lines of README's table, and the kinds of the long table that each sums up. */
const lines: readonly (readonly [string, RegExp])[] = [
  ['programs killed at work: command line, web host, desktop, page', /^(killed|draft)/],
  [
    'files cut short, bits and pages changed, gone, held, without their log; clock and zone changed; strange paths',
    /^(file|clock|path)/,
  ],
  ['disks full or read-only', /^disk/],
  ['old, broken and newer versions of the file', /^(migration|newer)/],
  ['operations through four programs on one file', /^two at once/],
  ['spoilt requests, venues, weather files, photographs, drawings; input made to do harm', /^input/],
  ['calendars and tables of hostile words, read back by other programs', /^output/],
  ['requests that play with headers, drip, or fish for secrets', /^doors/],
  ['calculations cut off, cancelled, overdue, slept through', /^long runs/],
  ['daily work on ten seasons, inside its ratios to one event', /^age/],
];

/** README's table: the rows summed up, as Markdown. A kind that no line takes has a line of its own. */
export const sumsOf = (rows: readonly Row[]): string => {
  const taken = rows.map(({ kind }) => lines.find(([, is]) => is.test(kind))?.[0] ?? kind);
  const said = [...lines.map(([line]) => line), ...taken.filter((line) => !lines.some(([known]) => known === line))];
  const sum = (line: string, of: 'tries' | 'survived' | 'lost'): string =>
    rows.reduce((sofar, row, at) => sofar + (taken[at] === line ? row[of] : 0), 0).toLocaleString('en-US');
  return [
    '| full form, one run | tries | survived | lost |',
    '|---|---|---|---|',
    ...[...new Set(said)]
      .filter((line) => taken.includes(line))
      .map((line) => `| ${line} | ${sum(line, 'tries')} | ${sum(line, 'survived')} | ${sum(line, 'lost')} |`),
    '',
  ].join('\n');
};
