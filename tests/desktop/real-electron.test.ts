import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { _electron } from 'playwright-core';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = join(root, 'node_modules', 'electron');
const pathFile = join(folder, 'path.txt');
const program = existsSync(pathFile) ? join(folder, 'dist', readFileSync(pathFile, 'utf8').trim()) : null;

/** Why it cannot run here; null where it can. */
const whyNot = (): string | null => {
  if (program === null || !existsSync(program)) return 'the Electron runtime is not installed';
  if (process.platform === 'linux' && !process.env['DISPLAY'] && !process.env['WAYLAND_DISPLAY']) return 'there is no display';
  if (process.platform === 'linux' && process.getuid?.() === 0) return 'the sandbox does not start for root';
  return null;
};
const reason = whyNot();

/** What the stand-in cannot show: that the real runtime starts the bundles, sandboxed, and that they speak with each other. */
describe.skipIf(reason !== null)(`real Electron${reason === null ? '' : ` (skipped: ${reason})`}`, () => {
  it('opens a sandboxed window whose page is answered', async () => {
    const own = mkdtempSync(join(tmpdir(), 'electron-'));
    const app = await _electron.launch({
      executablePath: program!,
      args: [root, `--user-data-dir=${join(own, 'profile')}`],
      env: { ...(process.env as Record<string, string>), FIELDBACK_FILE: join(own, 'workspace.fieldback') },
    });
    try {
      const page = await app.firstWindow();
      await page.waitForLoadState();
      const seen = await page.evaluate(async () => {
        const here = globalThis as unknown as {
          fieldback: { answer(name: string, request: unknown): Promise<unknown> };
          process?: unknown;
          require?: unknown;
        };
        return {
          about: await here.fieldback.answer('workspace/about', {}),
          process: typeof here.process,
          require: typeof here.require,
        };
      });
      expect(seen).toMatchObject({ about: { ok: true }, process: 'undefined', require: 'undefined' });
    } finally {
      await app.close();
      rmSync(own, { recursive: true, force: true });
    }
  });
});
