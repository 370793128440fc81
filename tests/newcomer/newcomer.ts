/**
 * What a newcomer does: clones the project into an empty folder, in an empty home, with the Node and npm of this machine, and types
 * the commands of README.md word for word. `npm run test:newcomer` runs all of them; `-- --without "npm test"` leaves one out. Only npm's
 * store of downloads is this machine's.
 */
import { spawn, spawnSync } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, isAbsolute, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));
const left = process.argv.flatMap((word, at) => (process.argv[at - 1] === '--without' ? [word] : []));

const place = mkdtempSync(join(tmpdir(), 'newcomer-'));
const [home, clone] = [join(place, 'home'), join(place, 'fieldback')];
mkdirSync(home);

/** The environment of somebody who has just logged in: no settings of this machine's, no Node of this project's. */
const environment: NodeJS.ProcessEnv = {
  HOME: home,
  USERPROFILE: home,
  LANG: 'C.UTF-8',
  CI: 'true',
  PATH: (process.env['PATH'] ?? '')
    .split(delimiter)
    .filter((folder) => !folder.includes('node_modules'))
    .join(delimiter),
  ...Object.fromEntries(
    Object.entries(process.env).filter(([name]) =>
      /^(SystemRoot|COMSPEC|PATHEXT|TEMP|TMP|.*_proxy|npm_config_registry|npm_config_cafile|npm_config_cache|NODE_EXTRA_CA_CERTS)$/i.test(
        name,
      ),
    ),
  ),
};

const fail = (message: string): never => {
  process.stdout.write(`FAILED  ${message}\n`);
  rmSync(place, { recursive: true, force: true });
  process.exit(1);
};

/** Ends a command with everything it started. */
const end = (child: ChildProcess, signal: NodeJS.Signals): void => {
  if (child.pid === undefined) return;
  if (process.platform === 'win32') child.kill(signal);
  else process.kill(-child.pid, signal);
};

interface Ended {
  readonly code: number | null;
  readonly said: string;
}

/** Types one line. `until` ends it with Ctrl-C once it has said so and `then` has been done. */
const type = (line: string, until?: RegExp, then?: (found: RegExpExecArray) => Promise<void>): Promise<Ended> =>
  new Promise((resolve) => {
    const child = spawn(line, { cwd: clone, env: environment, shell: true, detached: process.platform !== 'win32' });
    let said = '';
    let found = false;
    const hear = (part: Buffer): void => {
      said += part.toString();
      const match = until?.exec(said);
      if (!match || found) return;
      found = true;
      void (then?.(match) ?? Promise.resolve())
        .catch((error: unknown) => fail(`${line}: ${String(error)}`))
        .then(() => end(child, 'SIGINT'));
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.on('close', (code) => resolve({ code: until ? (found ? 0 : 1) : code, said }));
  });

/** The page is there for whoever opens the printed address. */
const lookAtPage = async ([, address]: RegExpExecArray): Promise<void> => {
  const entered = await fetch(address!, { redirect: 'manual' });
  const cookie = entered.headers.get('set-cookie')?.split(';')[0] ?? '';
  const page = await fetch(new URL('/', address), { headers: { cookie } });
  if (page.status !== 200 || !(await page.text()).includes('<title>Fieldback'))
    throw new Error(`the page is not there (${page.status})`);
};

/** What each command must have done; one that is not here must end well. */
const expectations: Readonly<
  Record<string, { readonly until?: RegExp; readonly then?: typeof lookAtPage; readonly holds?: (said: string) => string | null }>
> = {
  'npm start': { until: /Fieldback is at (http:\/\/127\.0\.0\.1:\d+\/\?token=\S+)\n/, then: lookAtPage },
  'npm test': {
    holds: (said) =>
      /\n[1-9]\d* passed, 0 failed, \d+ skipped\s*$/.test(said) ? null : 'the last line does not say that all passed',
  },
  'npm run demo': {
    holds: (said) => {
      for (const ending of ['pdf', 'ics', 'csv']) {
        const file = new RegExp(`(\\S+[.]${ending})\\b`).exec(said)?.[1];
        if (file === undefined) return `names no ${ending.toUpperCase()} file`;
        if (!existsSync(isAbsolute(file) ? file : join(clone, file))) return `${file} is not there`;
      }
      return null;
    },
  },
};

/** Lines of README.md's shell blocks that are npm commands, as they stand. */
const commandsOf = (text: string): readonly string[] =>
  [...text.matchAll(/^```(?:sh|bash|console|shell)\n([\s\S]*?)^```/gm)]
    .flatMap(([, block]) => block!.split('\n'))
    .map((line) =>
      line
        .replace(/^\$ /, '')
        .replace(/\s+#.*$/, '')
        .trim(),
    )
    .filter((line) => /^npm (start|test|run|ci|install)\b/.test(line) && !line.includes('test:newcomer'));

const cloned = spawnSync('git', ['clone', '--quiet', root, clone], { env: environment, encoding: 'utf8' });
if (cloned.status !== 0) fail(`git clone: ${cloned.stderr.trim()}`);
if (!existsSync(join(clone, 'README.md'))) fail('there is no README.md to follow');
const commands = [...new Set(commandsOf(readFileSync(join(clone, 'README.md'), 'utf8')))].filter(
  (command) => !left.includes(command),
);
if (commands.length === 0) fail('README.md names no command');

process.stdout.write(
  `Node ${spawnSync('node', ['--version'], { env: environment, encoding: 'utf8' }).stdout.trim()}, a fresh clone, an empty home\n`,
);
for (const command of commands) {
  const { until, then, holds } = expectations[command] ?? {};
  const start = performance.now();
  const { code, said } = await type(command, until, then);
  const wrong = code === 0 ? (holds?.(said) ?? null) : `ended with ${code}`;
  if (wrong !== null) {
    process.stdout.write(`${said.trimEnd().split('\n').slice(-40).join('\n')}\n`);
    fail(`${command}: ${wrong}`);
  }
  process.stdout.write(`ok      ${command} (${((performance.now() - start) / 1000).toFixed(0)} s)\n`);
}
const strays = spawnSync('git', ['status', '--porcelain'], { cwd: clone, env: environment, encoding: 'utf8' }).stdout.trim();
if (strays !== '') fail(`the commands left something the repository does not ignore:\n${strays}`);
rmSync(place, { recursive: true, force: true });
process.stdout.write(`${commands.length} passed, 0 failed\n`);
