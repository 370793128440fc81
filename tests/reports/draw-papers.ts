import { execFileSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { RecoveryPapers } from '#reports/recovery-papers.ts';
import { printSheet } from '#reports/print-sheet.ts';
import { everySheet, type PrintedKind } from '#reports/sheets/every-sheet.ts';
import { crowdedPapers } from '#tests/reports/crowded-papers.ts';
import { examplePapers, wishes } from '#tests/reports/example-papers.ts';
import { foreseen, handBack, openSample, settle } from '#tests/services/evidence/sample-handed-back.ts';

/*
 * Every paper as PDF and, where pdftoppm is installed, page by page as a picture, to be looked at: of the sample handed back, of the event
 * of the tests and of a crowded one, on both sizes. `npm run node -- tests/reports/draw-papers.ts`, or with words of the file names
 * (`crowded a4 meeting`) for some of them. They are made anew here and accepted by eye.
 */

const folder = fileURLToPath(new URL('./pictures', import.meta.url));
mkdirSync(folder, { recursive: true });
const wanted = process.argv.slice(2);
const asked = (name: string): boolean => wanted.every((word) => name.includes(word));
const keep = (name: string, bytes: Uint8Array): void => {
  const file = join(folder, name);
  writeFileSync(`${file}.pdf`, bytes);
  execFileSync('pdftoppm', ['-r', '70', '-png', `${file}.pdf`, file]);
};

const kinds = Object.keys(everySheet) as PrintedKind[];
const sizes = ['letter', 'a4'] as const;
const names = (event: string) =>
  kinds
    .flatMap((kind) => sizes.map((size) => ({ kind, size, name: `${kind}-${event}-${size}` })))
    .filter(({ name }) => asked(name));

const drawEvent = async (event: string, papers: RecoveryPapers): Promise<void> => {
  for (const { kind, size, name } of names(event))
    keep(name, await printSheet(everySheet[kind](papers, 'si'), { ...wishes, paper: size }));
};

await drawEvent('small', examplePapers());
await drawEvent('crowded', await crowdedPapers());
if (names('sample').length > 0) {
  const open = await openSample();
  const first = await foreseen(open);
  const then = await handBack(open, first);
  await settle(open);
  for (const { kind, size, name } of names('sample'))
    keep(name, (await open.paper(then.next.id, kind, size, [first.plan.id])).bytes);
  await open.close();
}
