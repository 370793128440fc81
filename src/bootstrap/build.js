// Builds main, preload and pages into out/ with electron-vite, unless they were built from these very sources.
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root, runNode } from './project.js';

const sources = ['shared', 'src', 'migrations', 'resources', 'electron.vite.config.ts', 'package.json', 'package-lock.json'];
const stamp = join(root, 'out', '.built-from');

/** One name for everything the build reads. */
const sourcesHash = () => {
  const hash = createHash('sha256');
  /** @param {string} path */
  const take = (path) => {
    const full = join(root, path);
    if (!existsSync(full)) return;
    if (statSync(full).isFile()) return void hash.update(path).update(readFileSync(full));
    for (const name of readdirSync(full).sort()) take(`${path}/${name}`);
  };
  for (const source of sources) take(source);
  return hash.digest('hex');
};

/**
 * Builds what is out of date. False when the build failed; its output is then printed.
 * @param {(line: string) => void} say
 * @param {boolean} [always] even when nothing has changed
 */
export const build = async (say, always = false) => {
  const hash = sourcesHash();
  if (!always && existsSync(stamp) && readFileSync(stamp, 'utf8') === hash) return true;
  say('Building the pages …');
  const { code, output } = await runNode(['node_modules/electron-vite/bin/electron-vite.js', 'build', '--logLevel', 'warn'], {
    silent: true,
  });
  if (code !== 0) {
    say(output.trim());
    return false;
  }
  writeFileSync(stamp, hash);
  return true;
};

if (import.meta.main) process.exit((await build(console.log, process.argv.includes('--always'))) ? 0 : 1);
