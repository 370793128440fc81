import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { openBrowser } from '#tests/pages/browser.ts';
import type { StandInPlace } from '#tests/desktop/electron-stand-in.ts';
import { openDesktop } from '#tests/desktop/open-desktop.ts';

const browser = await openBrowser();
const name =
  browser === null ? 'the place of the window (skipped: no browser starts on this machine)' : 'the place of the window';

describe.skipIf(browser === null)(name, () => {
  const folder = mkdtempSync(join(tmpdir(), 'desktop-place-'));
  const kept = join(folder, 'window.json');
  afterAll(async () => {
    await browser!.close();
    rmSync(folder, { recursive: true, force: true });
  });
  const [big, small] = [
    { x: 0, y: 0, width: 1920, height: 1080 },
    { x: 1920, y: 0, width: 1600, height: 1000 },
  ];

  /** Starts the program, lets a person do something to its window, quits. */
  const session = async (
    screens: readonly StandInPlace[],
    act: (window: { bounds: StandInPlace; maximised: boolean }) => void = () => undefined,
  ) => {
    const desktop = await openDesktop(browser!, join(folder, 'workspace.fieldback'), true, screens);
    await desktop.page();
    const [window] = desktop.record.windows;
    const { width, height, x, y } = window!.options as unknown as Partial<StandInPlace>;
    const opened = { place: { x, y, width, height }, maximised: window!.maximised };
    act(window!);
    await desktop.quit();
    return opened;
  };
  const usual = { place: { x: undefined, y: undefined, width: 1440, height: 900 }, maximised: false };
  const moved = { x: 2000, y: 40, width: 1100, height: 700 };

  it('is the usual one at the first start', async () => expect(await session([big, small])).toEqual(usual));

  it('is where the person left it at the next', async () => {
    await session([big, small], (window) => (window.bounds = moved));
    expect(await session([big, small])).toEqual({ place: moved, maximised: false });
  });

  it('is maximised again, and comes back to its own size', async () => {
    await session([big, small], (window) => (window.maximised = true));
    expect(await session([big, small])).toEqual({ place: moved, maximised: true });
  });

  it('is the usual one where the screen it stood on is gone', async () =>
    expect((await session([big])).place).toEqual(usual.place));

  it.each([
    '',
    '{',
    '{"place":{"x":0}}',
    '{"place":{"x":0,"y":0,"width":20,"height":10}}',
    '{"place":{"x":0,"y":0,"width":1e999,"height":700}}',
  ])('is the usual one where what was kept says nothing: %s', async (text) => {
    writeFileSync(kept, text);
    expect(await session([big, small])).toEqual(usual);
    expect(existsSync(`${kept}.new`)).toBe(false);
    expect(JSON.parse(readFileSync(kept, 'utf8'))).toHaveProperty('place');
  });
});
