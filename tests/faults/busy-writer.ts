import { openApplication } from '#application/application.ts';
import { smallVenue } from '#tests/contract/small-venue.ts';
import { documentOf } from '#tests/faults/documents.ts';

/**
 * A program that writes to the workspace it is given until somebody ends it, or for the number of rounds it is given. Prints a line of
 * JSON for every answer: `{ "stored": ["venue id", revision] }` or `{ "failed": kind, "message": … }`.
 */
const [file = '', rounds = 'Infinity'] = process.argv.slice(2);
const application = await openApplication({ file, waitMs: 5000 });
const tell = (line: unknown): void => void process.stdout.write(`${JSON.stringify(line)}\n`);
if (application.trouble) tell({ failed: application.trouble.kind, message: application.trouble.message });

const listed = await application.ask('venue/list', {});
const venues = new Map(listed.ok ? listed.value.map(({ id, revision }) => [id, revision]) : []);

tell({ ready: true });
for (let round = 0; round < Number(rounds); round++) {
  const id = `venue-${venues.size}`;
  const answer = await application.ask('venue/import', { document: documentOf(id) });
  if (answer.ok) {
    venues.set(id, answer.value.revision);
    tell({ stored: [id, answer.value.revision] });
  } else {
    tell({ failed: answer.failure.kind, message: answer.failure.message });
    if (answer.failure.kind !== 'busy' && answer.failure.kind !== 'conflict') break;
  }
  const [first, revision] = [...venues][round % venues.size] ?? [];
  if (first === undefined || revision === undefined) continue;
  const saved = await application.ask('venue/save', { venue: { ...smallVenue, id: first, revision, about: `round ${round}` } });
  if (saved.ok) {
    venues.set(first, saved.value.revision);
    tell({ stored: [first, saved.value.revision] });
  }
  if (round % 5 === 4) await application.copyNow().catch((error: unknown) => tell({ failed: 'copy', message: String(error) }));
}
await application.close();
