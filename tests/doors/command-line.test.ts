import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { contract, type VenueDocument } from '#shared/contract/contract.ts';
import { ForecastAnswers, optionKinds } from '#shared/vocabulary/answers.ts';
import { openOwnWorkspace } from '#application/own-workspace.ts';
import { commands } from '#cli/commands.ts';
import { runCommand } from '#cli/run-command.ts';
import { textTable } from '#cli/text-table.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

describe('the command line', () => {
  const folder = mkdtempSync(join(tmpdir(), 'a folder with späces-'));
  const workspace = join(folder, 'own workspace.fieldback');
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  const run = (words: readonly string[], input?: string): Promise<{ code: number | null; out: string; beside: string }> =>
    new Promise((resolve, reject) => {
      const child = spawn(process.execPath, ['src/cli/main.ts', ...words], {
        cwd: root,
        env: { ...process.env, FIELDBACK_FILE: workspace, INIT_CWD: folder },
      });
      let [out, beside] = ['', ''];
      child.stdout.on('data', (part: Buffer) => (out += part.toString()));
      child.stderr.on('data', (part: Buffer) => (beside += part.toString()));
      child.on('error', reject);
      child.on('close', (code) => resolve({ code, out, beside }));
      child.stdin.end(input);
    });

  /** The same command line in this process, for what must end before it has done anything. */
  const runHere = async (words: readonly string[]) => {
    let [out, beside] = ['', ''];
    const code = await runCommand(words, {
      open: () => openOwnWorkspace(workspace),
      out: (text) => void (out += text),
      beside: (text) => void (beside += text),
      screen: false,
    });
    return { code, out, beside };
  };

  it('shows every command and every exit code, and opens no workspace for it', async () => {
    const { code, out } = await run(['help']);
    expect(code).toBe(0);
    for (const name of Object.keys(commands)) expect(out).toContain(name);
    expect(out).toContain('3 not-found');
  });

  it('says what it is, in words and as JSON', async () => {
    const words = await run(['about']);
    expect(words).toMatchObject({ code: 0, beside: '' });
    expect(words.out).toContain(workspace);
    expect(words.out).toMatch(/\d+ kB, of which \d+ kB lie free\.\n$/);
    const { out } = await run(['about', '--json']);
    expect(contract['workspace/about'].reply.parse(JSON.parse(out))).toMatchObject({ file: workspace, venues: 1 });
  });

  it('lists the sample venue with its bookings and home dates', async () => {
    const venues = await run(['venues']);
    expect(venues.out.split('\n')[0]).toMatch(/^id +name$/);
    const { code, out } = await run(['bookings']);
    expect(code).toBe(0);
    expect(out).toContain('home-date');
    expect(out.split('\n').length).toBeGreaterThan(5);
  });

  it('calls any operation, with the request on the line, in a file of the folder it was typed in, or from another program', async () => {
    writeFileSync(join(folder, 'nothing.json'), '{}');
    for (const { code, out } of [
      await run(['call', 'venue/list', '--json', '{}']),
      await run(['call', 'venue/list', '--file', 'nothing.json']),
      await run(['call', 'venue/list', '--file', '-'], '{}'),
    ]) {
      expect(code).toBe(0);
      expect(JSON.parse(out)).toHaveLength(1);
    }
  });

  it('answers everything about a booking file that is not stored, and refuses one that contradicts itself', async () => {
    const { bookings } = JSON.parse(readFileSync(join(root, 'resources/sample/sample-venue.json'), 'utf8')) as VenueDocument;
    const booking = bookings.find(({ id }) => id === 'july-concert')!;
    writeFileSync(join(folder, 'tried.json'), JSON.stringify({ ...booking, id: 'july-concert', name: 'Only tried' }));
    const words = ['forecast', '--file', 'tried.json', '--home-date', 'home-2027-07-31', '--members', '3', '--json'];
    const { code, out } = await run(words);
    expect(code).toBe(0);
    const answers = ForecastAnswers.parse(JSON.parse(out));
    expect(answers.forecast.members).toBe(3);
    expect(new Set(answers.options.map(({ kind }) => kind))).toEqual(new Set(optionKinds));
    expect(answers.zones.map(({ letter }) => letter)).toContain('A');
    const late = { ...booking.crowds[0]!, from: '2027-07-22T10:00', until: '2027-07-22T12:00' };
    writeFileSync(join(folder, 'bad.json'), JSON.stringify({ ...booking, crowds: [late] }));
    const refused = await run(['forecast', '--file', 'bad.json', '--home-date', 'home-2027-07-31']);
    expect(refused.code).toBe(2);
    expect(refused.beside).toContain('when nothing lies there');
    const next = await run(['forecast', 'tried.json', '--members', '1', '--json']);
    expect((JSON.parse(next.out) as ForecastAnswers).forecast.homeDate.start).toBe('2027-07-31T15:00');
  });

  it.each([
    ['null', 'holds no booking'],
    ['[1]', 'holds no booking'],
    ['{', 'is not JSON'],
    ['{"venueId":"sample-bowl"}', '--home-date: is missing'],
    ['{"layers":[null,7],"crowds":"x"}', '--home-date: is missing'],
  ])('refuses the booking file %s by name', async (text, reason) => {
    writeFileSync(join(folder, 'hostile.json'), text);
    const refused = await run(['forecast', 'hostile.json']);
    expect(refused.code).toBe(2);
    expect(refused.beside).toContain(reason);
  });

  it.each([
    ['no command', [], 2, ''],
    ['an unknown command', ['dance'], 2, 'there is no command "dance"'],
    ['an unknown option', ['venues', '--colour', 'green'], 2, '--colour'],
    ['a missing option', ['forecast'], 2, '--booking: is missing.'],
    [
      'a number that is none',
      ['forecast', '--booking', 'a', '--home-date', 'b', '--members', 'many'],
      2,
      '--members: must be a whole number from 1 to 1000, not "many".',
    ],
    ['a request that is not JSON', ['call', 'venue/list', '--json', '{"id":'], 2, 'is not JSON'],
    ['a file that is not there', ['call', 'venue/list', '--file', 'nowhere.json'], 2, '--file: cannot be read'],
    ['an operation that does not exist', ['call', 'constructor', '--json', '{}'], 2, 'constructor'],
    ['a venue that does not exist', ['bookings', '--venue', 'nowhere'], 3, 'nowhere'],
  ])('ends with its exit code for %s, and the result stays empty', async (_what, words, code, message) => {
    const ended = await runHere(words);
    expect(ended.code).toBe(code);
    expect(ended.beside).toContain(message);
    if (words.length > 0) expect(ended.out).toBe('');
  });

  it('writes a failure as JSON when JSON is wanted', async () => {
    const { code, beside } = await run(['bookings', '--venue', 'nowhere', '--json']);
    expect(code).toBe(3);
    expect(JSON.parse(beside)).toMatchObject({ ok: false, failure: { kind: 'not-found', id: 'nowhere' } });
  });
});

describe('a table of text', () => {
  it('sets numbers to the right and words to the left', () => {
    expect(
      textTable(
        ['zone', 'm²'],
        [
          ['A', '1200'],
          ['Pit', '85'],
        ],
      ),
    ).toEqual(['zone    m²', '────  ────', 'A     1200', 'Pit     85']);
  });
});
