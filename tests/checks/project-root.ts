import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's folder. */
export const projectRoot = fileURLToPath(new URL('../..', import.meta.url)).replace(/[\\/]$/, '');

/** Every file the repository holds or is about to hold (not ignored), with forward slashes, sorted. */
export const projectFiles: readonly string[] = execFileSync(
  'git',
  ['ls-files', '--cached', '--others', '--exclude-standard', '-z'],
  {
    cwd: projectRoot,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  },
)
  .split('\0')
  .filter((file) => file !== '' && existsSync(join(projectRoot, file)))
  .sort();

/** The text of one file of the project. */
export const textOf = (file: string): string => readFileSync(join(projectRoot, file), 'utf8');
