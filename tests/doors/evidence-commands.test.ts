import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openApplication, type Application } from '#application/application.ts';
import { runCommand } from '#cli/run-command.ts';
import { fixedClock } from '#platform/clock/clock.ts';
import { pngOf } from '#platform/photographs/codecs.ts';
import type { Assimilation, Proposal } from '#shared/vocabulary/learning.ts';
import { boardFloor, cart, concert, homeDate, smallVenue } from '#tests/contract/small-venue.ts';
import { leaf, painted, straw } from '#tests/platform/photographs/synthetic-pictures.ts';
import { inspectionOf, spot } from '#tests/services/evidence/small-workspace.ts';

describe('evidence from the command line', () => {
  const folder = mkdtempSync(join(tmpdir(), 'fieldback evidence '));
  const file = join(folder, 'workspace.fieldback');
  const open = (): Promise<Application> =>
    openApplication({ file, clock: fixedClock('2027-07-25T12:00:00Z'), log: () => undefined });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  beforeAll(async () => {
    const application = await open();
    await application.ask('covering/save', { covering: boardFloor });
    await application.ask('vehicle/save', { vehicle: cart });
    await application.ask('venue/save', { venue: smallVenue });
    await application.ask('fixture/save', { fixture: homeDate });
    await application.ask('booking/save', { booking: concert });
    await application.close();
  });

  const run = async (...words: readonly string[]) => {
    let [out, beside] = ['', ''];
    const code = await runCommand(words, {
      open,
      out: (text) => void (out += text),
      beside: (text) => void (beside += text),
      screen: false,
    });
    return { code, out, beside };
  };

  it('measures a photograph, says its limits, and writes what was counted', async () => {
    const path = join(folder, 'quadrat.png');
    writeFileSync(path, await pngOf(painted(400, 300, (x) => (x < 300 ? leaf : straw))));
    const { code, out } = await run('measure', path, '--preview', join(folder, 'counted.png'));
    expect(code).toBe(0);
    expect(out).toContain('Green cover 75.0 % of 120000 pixels (400 × 300).');
    expect(out).toMatch(/25 % of it has the colour of straw or sand/);
    expect(readFileSync(join(folder, 'counted.png')).subarray(1, 4).toString()).toBe('PNG');
    const framed = await run('measure', path, '--frame', '0,0 0.5,0 0.5,1 0,1', '--json');
    expect(JSON.parse(framed.out)).toMatchObject({ cover: 1, counted: 60_000 });
    expect(await run('measure', path, '--frame', '0,0 1,1')).toMatchObject({ code: 2 });
    expect(await run('measure', join(folder, 'not-there.png'))).toMatchObject({ code: 2 });
  });

  it('keeps inspections from files, lists them, weighs a forecast by them, and proposes numbers', async () => {
    expect((await run('inspect')).out).toContain('No inspection is kept yet.');
    const path = join(folder, 'handback.json');
    writeFileSync(path, JSON.stringify(inspectionOf({ readings: [spot('A', { cover: 0.3 }), spot('A', { cover: 0.36 })] })));
    expect((await run('inspect', path)).out).toMatch(/^Kept as inspection-/);
    writeFileSync(path, JSON.stringify(inspectionOf({ readings: [], corrects: 'nothing' })));
    expect(await run('inspect', path)).toMatchObject({ code: 2 });
    const list = await run('inspect', '--booking', concert.id);
    expect(list.out).toMatch(/handback .* 33 .* stands/);

    const made = await run('forecast', '--booking', concert.id, '--home-date', homeDate.id, '--members', '200', '--json');
    const { id } = JSON.parse(made.out) as { id: string };
    const told = await run('learn', 'from', '--forecast', id);
    expect(told).toMatchObject({ code: 0 });
    expect(told.out).toMatch(/of 200 members count/);
    expect(told.beside).toMatch(/Kept as run run-/);
    const replay = await run('learn', 'from', '--forecast', id, '--known-at', '2027-07-17T12:00', '--json');
    expect((JSON.parse(replay.out) as { assimilation: Assimilation }).assimilation.seen[0]).toMatchObject({ used: false });

    const proposal = JSON.parse((await run('learn', 'propose', '--json')).out) as Proposal;
    expect(proposal.readings).toBe(1);
    const refused = await run(
      'learn',
      'refuse',
      '--proposal',
      proposal.id,
      '--by',
      'Head of the tests',
      '--reason',
      'one is too few',
    );
    expect(refused.out).toContain('refused by Head of the tests');
    expect(await run('learn', 'accept', '--proposal', proposal.id, '--by', 'Somebody else')).toMatchObject({ code: 4 });
    expect((await run('learn', 'history')).out).toMatch(/run run-.*\n.*proposal-/s);
    expect(await run('learn', 'everything')).toMatchObject({ code: 2 });
  }, 120_000);
});
