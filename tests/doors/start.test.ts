import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { openBrowser } from '#tests/pages/browser.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const browser = await openBrowser();

describe('npm start without a display', () => {
  const folder = mkdtempSync(join(tmpdir(), 'start-'));
  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const start = (words: readonly string[]) => {
    const { DISPLAY: _display, WAYLAND_DISPLAY: _wayland, ...env } = process.env;
    const child = spawn(process.execPath, ['src/bootstrap/start.js', '--workspace', join(folder, 'own.fieldback'), ...words], {
      cwd: root,
      env: { ...env, CI: 'true' },
    });
    let said = '';
    for (const stream of [child.stdout, child.stderr]) stream.on('data', (part: Buffer) => (said += part.toString()));
    const ended = new Promise<number | null>((resolve) => child.on('close', resolve));
    const address = new Promise<string>((resolve, reject) => {
      child.stdout.on('data', () => {
        const found = /Fieldback is at (\S+)/.exec(said)?.[1];
        if (found) resolve(found);
      });
      child.on('close', () => reject(new Error(`it ended: ${said}`)));
    });
    return { child, ended, address, said: () => said };
  };

  it('serves the application on the loopback address, says where, and closes on a signal', async () => {
    const run = start([]);
    const address = await run.address;
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/\?token=[\w-]{32}$/);
    if (process.platform === 'linux') expect(run.said()).toContain('There is no display');

    const entered = await fetch(address, { redirect: 'manual' });
    expect(entered.status).toBe(303);
    const cookie = entered.headers.get('set-cookie')!.split(';')[0]!;
    const page = await fetch(new URL('/', address), { headers: { cookie } });
    expect(page.headers.get('content-type')).toContain('text/html');
    expect(await page.text()).toContain('<title>Fieldback');

    if (browser !== null) {
      // The built pages keep their own content policy: a browser has nothing to complain of.
      const tab = await browser.newPage();
      const complaints: string[] = [];
      tab.on('console', (message) => void (message.type() === 'error' && complaints.push(message.text())));
      tab.on('pageerror', (error) => complaints.push(error.message));
      await tab.goto(address, { waitUntil: 'load' });
      expect(tab.url()).not.toContain('token');
      // The sheet shows a name of the sample venue's: the page has asked the application and been answered.
      await expect.poll(() => tab.locator('body').innerText(), { timeout: 30_000 }).toContain('last layer off');
      await tab.close();
      expect(complaints.filter((text) => !text.includes('favicon'))).toEqual([]);
    }
    run.child.kill('SIGTERM');
    expect(await run.ended).toBe(0);
  });

  it('says so when the port is not one', async () => {
    const run = start(['--port', '70000']);
    run.address.catch(() => undefined);
    expect(await run.ended).toBe(2);
    expect(run.said()).toContain('--port: must be a whole number from 0 to 65535, not "70000"');
  });
});
