/**
 * `npm run test:faults`: everything in tests/faults, as it runs with every test. `-- --full` runs it with all its tries. Both print what was
 * tried, what survived and what was lost; `-- --full --readme` also puts the sums into the table of README.md when
 * nothing was lost and no test failed. Other arguments go on to
 * the tests.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { sumsOf } from '#tests/faults/sums.ts';
import type { Row } from '#tests/faults/tally.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const words = process.argv.slice(2);
const full = words.includes('--full');
const place = mkdtempSync(join(tmpdir(), 'faults-'));
const table = join(place, 'table.jsonl');

const begun = performance.now();
const run = spawn(
  process.execPath,
  ['src/bootstrap/test.js', '--only', 'faults', ...words.filter((word) => !['--full', '--readme'].includes(word))],
  {
    cwd: root,
    stdio: ['ignore', 'pipe', 'inherit'],
    env: { ...process.env, FIELDBACK_FAULTS: full ? 'full' : 'short', FIELDBACK_FAULTS_TABLE: table },
  },
);
// The count is said once more at the very end, after the table.
let last = '';
run.stdout.setEncoding('utf8').on('data', (part: string) => {
  process.stdout.write(part);
  last = (last + part).slice(-400);
});
const code = await new Promise<number>((resolve) => run.on('close', (ended) => resolve(ended ?? 1)));

const rows = existsSync(table)
  ? readFileSync(table, 'utf8')
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as Row)
      .toSorted((one, other) => one.kind.localeCompare(other.kind))
  : [];
rmSync(place, { recursive: true, force: true });
const cells = [
  ['kind', 'tries', 'survived', 'lost', ''],
  ...rows.map((row) => [row.kind, String(row.tries), String(row.survived), String(row.lost), row.note ?? '']),
];
const widths = [0, 1, 2, 3].map((column) => Math.max(...cells.map((row) => row[column]!.length)));
process.stdout.write(`\n${full ? 'Full form' : 'Short form'}, ${((performance.now() - begun) / 1000).toFixed(0)} s\n\n`);
for (const [kind, ...numbers] of cells) {
  const [tried, survived, lost] = numbers.slice(0, 3).map((text, at) => text.padStart(widths[at + 1]!));
  process.stdout.write(`${kind!.padEnd(widths[0]!)}  ${tried}  ${survived}  ${lost}  ${numbers[3]}`.trimEnd() + '\n');
}
const lost = rows.reduce((sum, row) => sum + row.lost + (row.tries - row.survived), 0);
if (full && words.includes('--readme') && code === 0 && lost === 0) {
  const readme = join(root, 'README.md');
  const text = readFileSync(readme, 'utf8');
  const sums = sumsOf(rows);
  writeFileSync(
    readme,
    text.replace(/^\| full form[^]*?\n(?!\|)/m, () => sums),
  );
}
process.stdout.write(`\n${/\d+ passed, \d+ failed, \d+ skipped/.exec(last)?.[0] ?? 'no test ran'}\n`);
process.exitCode = code !== 0 || lost > 0 || rows.length === 0 ? 1 : 0;
