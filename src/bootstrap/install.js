// Brings the libraries of the lock file into node_modules when they are not there yet. Runs on plain Node 20.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** The first Node that runs TypeScript by itself and everything the product needs. */
const oldestNode = [22, 18];

/**
 * Whether a version such as `v24.21.0` runs the product.
 * @param {string} version
 */
export const runsTheProduct = (version) => {
  const [major = 0, minor = 0] = version.replace('v', '').split('.').map(Number);
  return major > oldestNode[0] || (major === oldestNode[0] && minor >= oldestNode[1]);
};

/**
 * The Node binary the lock file pins for this machine, or this very one where none is published for it and it is new enough.
 * @param {string} root the project's folder
 * @returns {string | null}
 */
export const pinnedNode = (root) => {
  const windows = process.platform === 'win32';
  const folder = `node-${windows ? 'win' : process.platform}-${process.arch}`;
  const binary = join(root, 'node_modules', folder, 'bin', windows ? 'node.exe' : 'node');
  if (existsSync(binary)) return binary;
  return runsTheProduct(process.version) ? process.execPath : null;
};

/**
 * One name for what the lock file asks for on this kind of machine.
 * @param {string} root
 */
export const lockHash = (root) =>
  createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .update(`${process.platform} ${process.arch}`)
    .digest('hex');

/** @param {string} root */
const stampFile = (root) => join(root, 'node_modules', '.fieldback-installed');

/**
 * Whether node_modules holds what the lock file asks for.
 * @param {string} root
 */
export const isInstalled = (root) =>
  existsSync(stampFile(root)) && readFileSync(stampFile(root), 'utf8').trim() === lockHash(root) && pinnedNode(root) !== null;

/**
 * Notes that node_modules holds what the lock file asks for.
 * @param {string} root
 */
export const noteInstalled = (root) => writeFileSync(stampFile(root), `${lockHash(root)}\n`);

/**
 * One sentence that says what went wrong in npm's own words, and what helps.
 * @param {string} output everything npm printed
 */
export const explain = (output) => {
  const reasons = /** @type {const} */ ([
    [
      /ENOTFOUND|EAI_AGAIN|ECONNREFUSED|ETIMEDOUT|network/i,
      'the package registry cannot be reached; look at the network and try again',
    ],
    [/ENOSPC/, 'the disk is full'],
    [/EACCES|EPERM|EROFS/, 'this folder cannot be written to; move the project to a folder of your own'],
    [/EINTEGRITY/, 'a downloaded package is not the one the lock file names; run "npm cache clean --force" and try again'],
    [
      /EUSAGE|can only install packages when/,
      'package.json and package-lock.json do not agree; restore both from the repository',
    ],
    [/E40[13]/, 'the package registry refused; look at the registry settings of npm'],
    [/E404/, 'the package registry does not have a package that the lock file names'],
  ]);
  const found = reasons.find(([sign]) => sign.test(output));
  if (found) return found[1];
  const lines = output.split('\n').filter((line) => /npm (error|ERR!)/.test(line) && !/A complete log/.test(line));
  return lines[0]?.replace(/npm (error|ERR!)\s*/, '') ?? 'npm ended with an error';
};

/**
 * Installs what the lock file asks for. No package's own script runs: nothing is compiled or fetched from elsewhere.
 * @param {string} root
 * @param {(line: string) => void} say
 * @returns {string | null} why it failed, or null
 */
export const install = (root, say) => {
  say('Installing the libraries (once, about half a minute) …');
  const windows = process.platform === 'win32';
  // npm tells its scripts where it lives; running it with Node needs no shell and no PATH.
  const own = process.env.npm_execpath;
  const [command, before] = own && /\.c?js$/.test(own) ? [process.execPath, [own]] : [windows ? 'npm.cmd' : 'npm', []];
  const result = spawnSync(
    command,
    [...before, 'ci', '--ignore-scripts', '--include=dev', '--include=optional', '--no-audit', '--no-fund'],
    {
      cwd: root,
      encoding: 'utf8',
      // A .cmd file runs only through a shell; its arguments here are fixed words.
      shell: before.length === 0 && windows,
      env: { ...process.env, npm_config_global: 'false' },
      maxBuffer: 64 * 1024 * 1024,
    },
  );
  if (result.error) return `npm cannot be started (${result.error.message})`;
  if (result.status !== 0) return explain(`${result.stdout}\n${result.stderr}`);
  if (pinnedNode(root) === null)
    return `no Node is published for ${process.platform} on ${process.arch} in the registry; install Node 24 or later and try again`;
  noteInstalled(root);
  return null;
};
