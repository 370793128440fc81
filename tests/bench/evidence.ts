import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openApplication } from '#application/application.ts';
import { shippedContent } from '#application/shipped-content.ts';
import { systemClock } from '#platform/clock/clock.ts';
import { jpegOf, pngOf } from '#platform/photographs/codecs.ts';
import { leaf, lit, painted, straw } from '#tests/platform/photographs/synthetic-pictures.ts';

/*
 * Times of the evidence: a photograph of 12 megapixels counted in a worker, and a workspace with 500 photographs opened.
 * `npm run node -- tests/bench/evidence.ts`. The second figure counts all threads of the program and nobody else's.
 */

const folder = mkdtempSync(join(tmpdir(), 'fieldback-bench-'));
const file = join(folder, 'workspace.fieldback');
const open = () => openApplication({ file, firstContent: shippedContent, clock: systemClock, log: () => undefined });
const timed = async <Value>(words: string, work: () => Promise<Value>): Promise<Value> => {
  const [start, before] = [performance.now(), process.cpuUsage()];
  const value = await work();
  const took = performance.now() - start;
  const { user, system } = process.cpuUsage(before);
  process.stdout.write(`${words}: ${took.toFixed(0)} ms, of them ${((user + system) / 1000).toFixed(0)} ms of processor\n`);
  return value;
};

let application = await timed('an empty workspace begun', open);
const base64Of = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');
const soft = painted(4000, 3000, (x, y) =>
  lit(Math.sin(x / 9) + Math.sin(y / 7) > 0 ? leaf : straw, 0.8 + 0.2 * Math.sin(x / 50)),
);
for (const [name, bytes] of [
  ['JPEG', await jpegOf(soft, 80)],
  ['PNG', await pngOf(painted(4000, 3000, (x, y) => (((x >> 4) + (y >> 4)) % 2 ? leaf : straw)))],
] as const) {
  const request = { of: { base64: base64Of(bytes) }, frame: null };
  await application.ask('photograph/measure', request);
  const answer = await timed(`12 megapixels, ${name} of ${(bytes.length / 1e6).toFixed(1)} MB, counted in a worker`, () =>
    application.ask('photograph/measure', request),
  );
  if (!answer.ok) process.stdout.write(`${answer.failure.message}\n`);
}

for (let number = 0; number < 500; number++) {
  const picture = painted(200, 150, (x) => (x < number % 200 ? leaf : straw));
  await application.ask('photograph/add', {
    photograph: {
      venueId: 'sample-bowl',
      bookingId: 'july-concert',
      zone: 'G',
      point: `G${number}`,
      takenAt: '2027-07-19T15:00',
      bearing: null,
      fileName: `${number}.png`,
      words: '',
    },
    base64: base64Of(await pngOf(picture)),
  });
}
await application.close();
application = await timed('a workspace with 500 photographs opened', open);
await timed('its 500 photographs listed', () =>
  application.ask('photograph/list', { venueId: 'sample-bowl', bookingId: 'july-concert' }),
);
await application.close();
rmSync(folder, { recursive: true, force: true });
