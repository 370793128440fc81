import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlanRun } from '#shared/contract/contract.ts';
import { openApplication, type Application } from '#application/application.ts';
import { runCommand } from '#cli/run-command.ts';
import { fixedClock } from '#platform/clock/clock.ts';
import { boardFloor, cart, concert, homeDate, smallVenue } from '#tests/contract/small-venue.ts';

describe('planning from the command line', { timeout: 180_000 }, () => {
  const folder = mkdtempSync(join(tmpdir(), 'fieldback plans '));
  const open = (): Promise<Application> =>
    openApplication({
      file: join(folder, 'workspace.fieldback'),
      clock: fixedClock('2027-07-10T12:00:00Z'),
      log: () => undefined,
    });
  const strict = { ...smallVenue, rules: { ...smallVenue.rules, coverNeeded: 0.95 } };
  const later = { ...homeDate, id: 'later', name: 'Later', start: '2027-08-28T19:00', end: '2027-08-28T21:00' };
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
  const forecast = async (date: string): Promise<string> => {
    const { out } = await run('forecast', '--booking', concert.id, '--home-date', date, '--members', '20', '--json');
    return (JSON.parse(out) as { id: string }).id;
  };
  let first: string;
  let made: PlanRun;
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  beforeAll(async () => {
    const application = await open();
    await application.ask('covering/save', { covering: boardFloor });
    await application.ask('vehicle/save', { vehicle: cart });
    await application.ask('venue/save', { venue: strict });
    await application.ask('fixture/save', { fixture: homeDate });
    await application.ask('fixture/save', { fixture: later });
    await application.ask('booking/save', { booking: concert });
    await application.close();
    first = await forecast(homeDate.id);
    const { out } = await run('plan', '--forecast', first, '--now', '2027-07-10T08:00', '--json');
    made = JSON.parse(out) as PlanRun;
  }, 180_000);

  it('plans for the home date and a further one', async () => {
    const next = await forecast(later.id);
    const { code, out } = await run('plan', '--forecast', first, '--further', next, '--now', '2027-07-10T08:00', '--json');
    expect(code).toBe(0);
    const windows = new Set((JSON.parse(out) as PlanRun).plan.zones.map(({ window }) => window));
    expect([...windows]).toEqual(['to-home-date', 'later']);
    const turned = await run('plan', '--forecast', next, '--further', first, '--now', '2027-07-10T08:00');
    expect(turned.code).toBe(2);
    expect(turned.beside).toMatch(/not after the one before it/);
  });

  it('takes sod that was released, and replans from there', async () => {
    const [order] = made.plan.orders;
    expect(order).toBeDefined();
    const at = '2027-07-10T07:00';
    const released = JSON.stringify([{ window: order!.window, farm: order!.farm, at }]);
    const words = ['plan', '--forecast', first, '--instead', made.id, '--now', '2027-07-17T08:00', '--json'];
    const { code, out } = await run(...words, '--released', released);
    expect(code).toBe(0);
    // Notice runs from the release, not from now: the same order is not moved.
    expect((JSON.parse(out) as PlanRun).plan.orders[0]!.trucks[0]!.cut).toBe(order!.trucks[0]!.cut);
    const wrong = await run(...words, '--released', '{"window":1}');
    expect(wrong).toMatchObject({ code: 2 });
    expect(wrong.beside).toContain('--released');
  });

  it('says why there is no plan, and plans with a mend that is agreed on', async () => {
    const application = await open();
    const stored = await application.ask('venue/read', { id: strict.id });
    if (!stored.ok) throw new Error(stored.failure.message);
    const { revision } = stored.value;
    await application.ask('venue/save', { venue: { ...strict, revision, farms: [{ ...strict.farms[0]!, notice: 900 }] } });
    await application.close();
    const words = ['plan', '--forecast', first, '--now', '2027-07-10T08:00'];
    const none = await run(...words);
    expect(none.code).not.toBe(0);
    expect(none.beside).toContain('Near farm needs 900 h of notice');
    const mended = await run(...words, '--mends', '[{"kind":"shorter-notice","farm":"near-farm","hours":850}]');
    expect(mended.code).toBe(0);
    expect(mended.out).toContain('Sod: release to Near farm by');
    expect((await run(...words, '--mends', '[{"kind":"magic"}]')).code).toBe(2);
    expect((await run(...words, '--mends', 'not json')).code).toBe(2);
  });

  it('lays the sod open as text', async () => {
    const { code, out } = await run('sod', '--plan', made.id);
    expect(code).toBe(0);
    expect(out).toMatch(/^Sod that may be needed, with waste: .* m²|ft²; 8 of 10 between/);
    expect(out).toMatch(/one farm alone\s+cost\s+sod\s+trucks\s+release by/);
    expect(out).toMatch(/Near farm\s+USD [\d,]+/);
    expect(out).toMatch(/without sod\s+no plan: /);
    expect(out).toMatch(/Near farm\s+thin\s/);
    expect(out).toMatch(/Near farm\s+thick\s/);
  });
});
