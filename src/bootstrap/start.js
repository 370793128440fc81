// `npm start`: builds, then opens the desktop window where Electron's runtime and a display are there, and otherwise serves
// the same application to this machine's browser. `--web` always serves; `--port`, `--workspace` and `--no-open` as they say;
// `--tablet ADDRESS` also lets tablets in on that address of this machine.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { build } from './build.js';
import { root } from './project.js';

const words = process.argv.slice(2);
/** @param {string} word */
const take = (word) => {
  const at = words.indexOf(word);
  if (at >= 0) words.splice(at, 1);
  return at >= 0;
};
/** @param {string} line */
const say = (line) => void process.stdout.write(`${line}\n`);

const { CI, DISPLAY, WAYLAND_DISPLAY } = process.env;
const hasDisplay = !CI && (process.platform !== 'linux' || Boolean(DISPLAY ?? WAYLAND_DISPLAY));

/** The desktop runtime's program, or null where it is not there. */
const electron = () => {
  const folder = join(root, 'node_modules', 'electron');
  const pathFile = join(folder, 'path.txt');
  if (!existsSync(pathFile)) return null;
  const program = join(folder, 'dist', readFileSync(pathFile, 'utf8').trim());
  return existsSync(program) ? program : null;
};

const fetchElectron = () => {
  say('Fetching the desktop runtime (once, about 120 MB) …');
  const { status } = spawnSync(process.execPath, [join(root, 'node_modules', 'electron', 'install.js')], {
    stdio: 'ignore',
    timeout: 300_000,
  });
  if (status !== 0) say('It cannot be fetched from here; the application opens in the browser instead.');
};

/** Whether the window can be opened at all, and if not, why the browser is used instead. */
const runtime = () => {
  if (take('--web') || words.includes('--port') || words.some((word) => word.startsWith('--tablet'))) return null;
  if (!hasDisplay) {
    say('There is no display; the application is served to the browser.');
    return null;
  }
  if (process.platform === 'linux' && process.getuid?.() === 0) {
    say('The desktop window keeps its sandbox, which does not start for root; the application is served to the browser.');
    return null;
  }
  if (electron() === null) fetchElectron();
  return electron();
};

if (!(await build(say))) {
  say('The pages could not be built: see above.');
  process.exit(1);
}

const noOpen = take('--no-open');
const program = runtime();
const at = words.indexOf('--workspace');
const child =
  program === null
    ? spawn(
        process.execPath,
        ['--disable-warning=ExperimentalWarning', 'src/web-host/main.ts', ...(hasDisplay && !noOpen ? ['--open'] : []), ...words],
        {
          cwd: root,
          stdio: 'inherit',
        },
      )
    : spawn(program, [root], {
        cwd: root,
        stdio: 'inherit',
        env: {
          ...process.env,
          ...(at >= 0 && words[at + 1] ? { FIELDBACK_FILE: resolve(process.env.INIT_CWD ?? root, words[at + 1] ?? '') } : {}),
        },
      });
process.on('SIGINT', () => {});
for (const signal of /** @type {const} */ (['SIGTERM', 'SIGHUP'])) process.on(signal, () => child.kill(signal));
child.on('close', (code) => process.exit(code ?? 0));
