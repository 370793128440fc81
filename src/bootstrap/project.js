// Where things are, and running the project's tools with the Node this file runs on.
import { spawn } from 'node:child_process';
import { mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The project's folder. */
export const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/**
 * A folder for what can be made again at any time.
 * @param {string} name
 */
export const cacheFolder = (name) => {
  const folder = join(root, 'node_modules', '.cache', 'fieldback', name);
  mkdirSync(folder, { recursive: true });
  return folder;
};

/**
 * Runs a file with this Node and waits for it. `silent` keeps what it prints and hands it back.
 * @param {readonly string[]} words the file and its arguments
 * @param {{ silent?: boolean, environment?: Record<string, string> }} [how]
 * @returns {Promise<{ code: number, output: string }>}
 */
export const runNode = (words, how = {}) =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, words, {
      cwd: root,
      stdio: how.silent ? ['ignore', 'pipe', 'pipe'] : 'inherit',
      env: { ...process.env, ...how.environment },
    });
    let output = '';
    for (const stream of [child.stdout, child.stderr])
      stream?.on('data', (/** @type {Buffer} */ part) => void (output += part.toString()));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code: code ?? 1, output }));
  });
