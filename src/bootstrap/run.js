// Every command of package.json goes through here: `node src/bootstrap/run.js <command> [arguments]`.
// It runs on plain Node 20, brings in what is missing, and hands over to the Node that the lock file pins.
import { spawn } from 'node:child_process';
import { tmpdir } from 'node:os';
import { delimiter, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { install, isInstalled, pinnedNode } from './install.js';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** What each command runs with the pinned Node, as words after `node`. */
const commands = {
  start: ['src/bootstrap/start.js'],
  cli: ['src/cli/main.ts'],
  // The demonstration has a workspace of its own, so that it never meets the user's.
  demo: ['src/cli/main.ts', 'demo', '--workspace', join(tmpdir(), `fieldback-demo-${process.pid}`, 'demo.fieldback')],
  build: ['src/bootstrap/build.js', '--always'],
  package: ['src/packaging/assemble.ts'],
  check: ['src/bootstrap/check.js'],
  format: ['node_modules/prettier/bin/prettier.cjs', '--write', '--log-level', 'warn', '.'],
  test: ['src/bootstrap/test.js'],
  'test:unit': ['src/bootstrap/test.js', '--only', 'unit'],
  'test:doors': ['src/bootstrap/test.js', '--only', 'doors'],
  'test:pages': ['src/bootstrap/test.js', '--only', 'pages'],
  'test:desktop': ['src/bootstrap/test.js', '--only', 'desktop'],
  'test:faults': ['tests/faults/run.ts'],
  'test:newcomer': ['tests/newcomer/newcomer.ts'],
  /** Any file of the project: `npm run node -- tests/bench/strip.ts`. */
  node: [],
};

/** @param {string} line */
const say = (line) => void process.stderr.write(`${line}\n`);

const [name = '', ...rest] = process.argv.slice(2);
if (!Object.hasOwn(commands, name)) {
  say(`There is no command "${name}". There are: ${Object.keys(commands).join(', ')}.`);
  process.exit(2);
}

if (!isInstalled(root)) {
  const failure = install(root, say);
  if (failure !== null) {
    say(`The libraries could not be installed: ${failure}.`);
    process.exit(1);
  }
  say('Libraries installed.');
}

const node = /** @type {string} */ (pinnedNode(root));
// Sources are compiled once and not at every start: a command answers in half the time, and so does every program a test starts.
const compiled = process.env.NODE_COMPILE_CACHE ?? join(root, 'node_modules', '.cache', 'fieldback', 'compiled');
const words = commands[/** @type {keyof typeof commands} */ (name)];
const child = spawn(node, ['--disable-warning=ExperimentalWarning', ...words, ...rest], {
  cwd: root,
  stdio: 'inherit',
  env: { ...process.env, NODE_COMPILE_CACHE: compiled, PATH: `${dirname(node)}${delimiter}${process.env.PATH ?? ''}` },
});
// Ctrl-C reaches the child by itself (one terminal); this process waits until it has closed. Other signals are handed on.
process.on('SIGINT', () => {});
for (const signal of /** @type {const} */ (['SIGTERM', 'SIGHUP'])) process.on(signal, () => child.kill(signal));
child.on('error', (error) => {
  say(`The pinned Node cannot be started: ${error.message}.`);
  process.exit(1);
});
child.on('close', (code, signal) => {
  if (code !== null) process.exit(code);
  process.exit(signal === 'SIGINT' ? 130 : 143);
});
