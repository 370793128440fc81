import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { appFiles, buildSettings, isUnpacked, platforms } from '#packaging/app-files.ts';
import { notices } from '#packaging/notices.ts';
import { documentOf } from '#tests/faults/documents.ts';
import { startDesktop } from '#tests/faults/victim.ts';
import packageFile from '../../package.json' with { type: 'json' };

const root = fileURLToPath(new URL('../..', import.meta.url)).replace(/[/\\]$/, '');
const { build } = packageFile;

describe('the settings of the packages', () => {
  it('close the ways around the program that Electron leaves open', () => {
    expect(build.electronFuses).toEqual({
      runAsNode: false,
      enableCookieEncryption: true,
      enableNodeOptionsEnvironmentVariable: false,
      enableNodeCliInspectArguments: false,
      enableEmbeddedAsarIntegrityValidation: true,
      onlyLoadAppFromAsar: true,
      grantFileProtocolExtraPrivileges: false,
    });
    expect(build.asar).toBe(true);
    expect(build.mac.hardenedRuntime).toBe(true);
  });

  it('fetch, compile, publish and update nothing', () => {
    expect(build.npmRebuild).toBe(false);
    expect(build.publish).toBeNull();
    expect(Object.keys({ ...packageFile.dependencies, ...packageFile.devDependencies })).not.toContain('electron-updater');
  });

  it('claim exported venues and nothing else', () => {
    expect(build.fileAssociations.map(({ ext }) => ext)).toEqual(['fieldback-venue']);
    expect(build).not.toHaveProperty('protocols');
  });

  it.each(platforms)('take for %s the program, its libraries and native code of that system alone', (platform) => {
    const files = appFiles(root, platform);
    const settings = buildSettings(root);
    const native = files.filter((file) => /[.](node|so|dylib|dll|exe)$/.test(file));
    const system = { linux: /[/]linux(musl)?-/, win: /[/]win32-/, mac: /[/]darwin-/ }[platform];
    expect(native.length).toBeGreaterThan(0);
    for (const file of native) expect([file, system.test(file), isUnpacked(settings, file)]).toEqual([file, true, true]);
    for (const file of ['package.json', 'out/main/main.js', 'out/preload/preload.cjs', 'out/renderer/index.html'])
      expect(files).toContain(file);
    // No test, source, secret or second copy of Node goes out.
    for (const file of files) expect(file).toMatch(/^(out\/|package[.]json$|node_modules\/)/);
    expect(files.filter((file) => /node_modules\/(node-(linux|win|darwin)-|electron\/|vitest|[.])/.test(file))).toEqual([]);
    expect(files.filter((file) => /[.](fieldback|env|pem|key)$/.test(file))).toEqual([]);
  });

  it('have icons of ours for every system', () => {
    const bytes = (name: string): Buffer => readFileSync(join(root, name));
    expect(bytes(build.linux.icon).subarray(1, 4).toString()).toBe('PNG');
    expect(bytes(build.linux.icon).readUInt32BE(16)).toBeGreaterThanOrEqual(512);
    // ICO: reserved 0, type 1, then how many; ICNS: its name and its own length.
    expect([...bytes(build.win.icon).subarray(0, 5)]).toEqual([0, 0, 1, 0, 7]);
    expect(bytes(build.mac.icon).subarray(0, 4).toString()).toBe('icns');
    expect(bytes(build.mac.icon).readUInt32BE(4)).toBe(bytes(build.mac.icon).length);
    expect(readFileSync(join(root, 'resources/icons/icon.svg'), 'utf8')).toMatch(/^<svg/);
  });

  it('have a notice for every library that ships, under terms that let it ship', () => {
    const found = notices(root);
    expect(found.length).toBeGreaterThan(50);
    for (const { name, licence, text } of found)
      expect([name, /MIT|ISC|BSD|BDS-3|Apache-2|OFL|0BSD|Unlicense/.test(`${licence} ${text ?? ''}`)]).toEqual([name, true]);
    for (const { name } of found) expect(name).not.toMatch(/^node-(linux|win|darwin)-/);
    expect(Object.keys(packageFile.dependencies).filter((name) => !found.some((each) => each.name === name))).toEqual([]);
  });
});

describe('the unpacked application', () => {
  let folder: string;
  let app: string;
  beforeAll(() => {
    // Outside the project, so that nothing is found but what the package holds.
    folder = mkdtempSync(join(tmpdir(), 'fieldback-package-'));
    const words = ['--disable-warning=ExperimentalWarning', 'src/packaging/assemble.ts', join(folder, 'unpacked')];
    const { status, stdout, stderr } = spawnSync(process.execPath, words, { cwd: root, encoding: 'utf8' });
    if (status !== 0) throw new Error(`${stdout}\n${stderr}`);
    app = join(folder, 'unpacked', 'resources', 'app');
  }, 120_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  // Fails when a library the program imports is left out of the package (`files` of the settings), or a native binary.
  it('starts by itself, keeps a workspace, forecasts, plans and prints', async () => {
    const desktop = await startDesktop(join(folder, 'workspace.fieldback'), join(app, 'out', 'main', 'main.js'));
    const value = async (name: string, request: unknown): Promise<never> => {
      const answer = await desktop.ask(name, request);
      expect(answer, name).toMatchObject({ ok: true });
      return (answer as { value: unknown }).value as never;
    };
    const job = async (name: string, request: unknown): Promise<never> => {
      let job: { id: string; state: string; value?: unknown; failure?: unknown } = await value(name, request);
      while (job.state === 'running') {
        await new Promise((resolve) => setTimeout(resolve, 100));
        job = await value('job/read', { id: job.id });
      }
      expect(job).toMatchObject({ state: 'done' });
      return job.value as never;
    };
    try {
      const about: { version: string } = await value('workspace/about', {});
      expect(about.version).toBe(packageFile.version);
      expect(await value('venue/list', {})).toHaveLength(1);
      await value('venue/import', { document: documentOf('small') });
      const asked = { venueId: 'small', bookingId: 'small-one', fixtureId: 'small-home', members: 20, seed: 1 };
      const run: { id: string } = await job('forecast/run', asked);
      const plan: { id: string } = await job('plan/make', { forecastId: run.id, now: null, locks: [], done: [], instead: null });
      const paper: { base64: string } = await value('report/write', {
        planId: plan.id,
        kind: 'recovery-report',
        paper: 'a4',
        units: 'si',
      });
      expect(Buffer.from(paper.base64, 'base64').subarray(0, 5).toString()).toBe('%PDF-');
      // The decoders of photographs are WebAssembly files of their own.
      const measured = await desktop.ask('photograph/measure', { of: { base64: 'aaaa' }, frame: null });
      expect(measured).toMatchObject({ ok: false, failure: { kind: 'invalid-request' } });
    } finally {
      desktop.kill();
      await desktop.ended;
    }
  }, 180_000);

  it('carries the notices beside the program and inside it', () => {
    for (const place of ['unpacked/NOTICES.txt', 'unpacked/resources/app/out/notices.txt'])
      expect(readFileSync(join(folder, place), 'utf8')).toContain('better-sqlite3');
    expect(existsSync(join(app, 'src'))).toBe(false);
    expect(existsSync(join(app, 'tests'))).toBe(false);
  });
});
