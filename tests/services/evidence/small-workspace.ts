import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from 'vitest';
import type { OperationName, ReplyOf } from '#shared/contract/contract.ts';
import type { Answer, Failure } from '#shared/contract/failure.ts';
import type { Job } from '#shared/contract/job.ts';
import type { SpotReading } from '#shared/vocabulary/inspection.ts';
import { openApplication, type Application } from '#application/application.ts';
import { fixedClock } from '#platform/clock/clock.ts';
import { boardFloor, cart, concert, homeDate, smallVenue } from '#tests/contract/small-venue.ts';

/** A workspace with the small venue and its concert, and questions whose answers must be good or must be refused. */
export interface SmallWorkspace {
  readonly folder: string;
  readonly file: string;
  readonly application: Application;
  readonly good: GoodAnswers;
  refused(name: OperationName, request: unknown): Promise<Failure>;
  close(): Promise<void>;
}

export type GoodAnswers = <Name extends OperationName>(name: Name, request: unknown) => Promise<ReplyOf<Name>>;

/** Asks what must be answered, and waits for long work. */
export const goodAnswers = (application: Pick<Application, 'answer'>): GoodAnswers => {
  const good = async (name: OperationName, request: unknown): Promise<unknown> => {
    const answer = await application.answer(name, request);
    expect(answer, `${name} ${JSON.stringify(answer).slice(0, 400)}`).toMatchObject({ ok: true });
    let value = (answer as Extract<Answer<unknown>, { ok: true }>).value;
    while ((value as Job | null)?.state === 'running') {
      await new Promise((resolve) => setTimeout(resolve, 20));
      value = await good('job/read', { id: (value as Job).id });
    }
    const job = value as Job | null;
    if (job?.operation === undefined || name === 'job/read') return value;
    expect(job.failure, name).toBeUndefined();
    return job.value;
  };
  return good as GoodAnswers;
};

export const smallWorkspace = async (): Promise<SmallWorkspace> => {
  const folder = mkdtempSync(join(tmpdir(), 'fieldback-evidence-'));
  const file = join(folder, 'workspace.fieldback');
  const application = await openApplication({ file, clock: fixedClock('2027-07-25T12:00:00Z'), log: () => undefined });
  const good = goodAnswers(application);
  const refused = async (name: OperationName, request: unknown): Promise<Failure> => {
    const answer = await application.answer(name, request);
    expect(answer, name).toMatchObject({ ok: false });
    return (answer as Extract<Answer<unknown>, { ok: false }>).failure;
  };
  await good('covering/save', { covering: boardFloor });
  await good('vehicle/save', { vehicle: cart });
  await good('venue/save', { venue: smallVenue });
  await good('fixture/save', { fixture: homeDate });
  await good('booking/save', { booking: concert });
  return {
    folder,
    file,
    application,
    good,
    refused,
    close: async () => {
      await application.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
};

export const spot = (zone: string, readings: Partial<SpotReading>): SpotReading => ({
  zone,
  point: null,
  cover: null,
  colour: null,
  greenIndex: null,
  moisture: null,
  hardness: null,
  traction: null,
  penetration: null,
  infiltration: null,
  rut: null,
  canopyTemperature: null,
  soilTemperature: null,
  ...readings,
});

export const inspectionOf = (changes: object = {}) => ({
  venueId: smallVenue.id,
  bookingId: concert.id,
  kind: 'handback',
  at: '2027-07-18T15:00',
  inspector: 'Inspector of the tests',
  weather: 'dry',
  note: '',
  readings: [spot('A', { cover: 0.4 })],
  defects: [],
  spills: [],
  witnesses: [],
  photographs: [],
  corrects: null,
  ...changes,
});
