/**
 * Takes each guard away, one at a time, in a copy of the project, and runs the test that must then fail: `npm run node --
 * tests/faults/remove-guards.ts`, or with words of some of them. The test must pass while the guard stands, or its failing shows nothing. A
 * test that still passes without it guards nothing. Either ends the run with 1.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

interface Guard {
  readonly what: string;
  readonly file: string;
  readonly from: string;
  readonly to: string;
  readonly test: string;
  /** Only tests of this name. */
  readonly name?: string;
  /** The test looks at the built bundles. */
  readonly built?: true;
  /** Where chance decides what is hit: how often it is tried. */
  readonly attempts?: number;
  /** The guard shows in the full form alone. */
  readonly full?: true;
  /** `test` is a program that clones the project. */
  readonly clones?: true;
}

const guards: readonly Guard[] = [
  {
    what: 'two at once: a stale save is refused',
    file: 'src/store/revisions.ts',
    from: 'if (named === (standing ?? 0)) return null;',
    to: 'if (named >= 0) return null;',
    test: 'tests/faults/two-at-once.test.ts',
    built: true,
  },
  {
    what: 'migrations: newer refused',
    file: 'src/store/open-store.ts',
    from: 'refuseNewer(database, file, version, names);',
    to: '',
    test: 'tests/faults/migrations.test.ts',
    name: 'knows no more',
  },
  {
    what: 'migrations: one transaction',
    file: 'src/store/sqlite-dialect.ts',
    from: 'get supportsTransactionalDdl(): boolean {\n    return true;',
    to: 'get supportsTransactionalDdl(): boolean {\n    return false;',
    test: 'tests/faults/migrations.test.ts',
    name: 'keeps every row and its version',
  },
  {
    what: 'files: the seal is looked at',
    file: 'src/store/open-store.ts',
    from: 'if (await sealIsBroken(file)) {',
    to: 'if (((await sealIsBroken(file)), false)) {',
    test: 'tests/faults/files.test.ts',
    name: 'opens as it was',
  },
  {
    what: 'files: a lost file is no new one',
    file: 'src/store/open-store.ts',
    from: 'if (!traces) return true;',
    to: 'if (!traces || traces) return true;',
    test: 'tests/faults/files.test.ts',
    name: 'gone',
  },
  {
    what: 'files: what is confirmed lies in the file itself',
    file: 'src/store/open-store.ts',
    from: "await settle('passive');",
    to: '',
    test: 'tests/faults/files.test.ts',
    name: 'thrown away',
  },
  {
    what: 'disk: a full disk is named',
    file: 'src/application/failures.ts',
    from: '/^SQLITE_FULL|ENOSPC|EDQUOT/',
    to: '/^NOTHING/',
    test: 'tests/faults/disk.test.ts',
    name: 'full',
  },
  {
    what: 'crash: a write is one transaction',
    file: 'src/store/open-store.ts',
    from: [
      'const result = await kysely.transaction().execute(async (transaction) => {',
      '          const result = await work(contentsIn(transaction));',
      '          if (isRefusal(result)) throw new Refused(result);',
      '          return result;',
      '        });',
    ].join('\n'),
    to: 'const result = await work(contentsIn(kysely as never));',
    test: 'tests/faults/killed-web-host.test.ts',
    attempts: 6,
  },
  {
    what: 'input: a refusal is rolled back',
    file: 'src/store/open-store.ts',
    from: 'if (isRefusal(result)) throw new Refused(result);',
    to: '',
    test: 'tests/store/transactions.test.ts',
  },
  {
    what: 'input: depth and keys of a prototype',
    file: 'src/application/request-size.ts',
    from: "if (key === '__proto__') return",
    to: "if (key === '__proto__' && false) return",
    test: 'tests/faults/bad-input.test.ts',
    name: 'prototype',
  },
  {
    what: 'input: formulas are marked',
    file: 'src/reports/tables.ts',
    from: 'formula.test(cell)',
    to: '!formula',
    test: 'tests/faults/bad-input.test.ts',
    name: 'formulas',
  },
  {
    what: 'doors: the host a request names',
    file: 'src/web-host/web-host.ts',
    from: 'gate.refuseHost(request) ?? gate',
    to: 'gate',
    test: 'tests/doors/web-host.test.ts',
    name: 'refuses other sites',
  },
  {
    what: 'doors: one host alone',
    file: 'src/web-host/admission.ts',
    from: 'named === undefined || more.length > 0',
    to: 'named === undefined',
    test: 'tests/faults/doors.test.ts',
    name: 'none of them asks',
  },
  {
    what: 'doors: after a refusal nothing more is heard',
    file: 'src/web-host/web-host.ts',
    from: 'if (shut.has(request.socket)) return;',
    to: '',
    test: 'tests/faults/doors.test.ts',
    name: 'none of them asks',
  },
  {
    what: 'doors: the time a request may take',
    file: 'src/web-host/web-host.ts',
    from: '    requestTimeout: patience,\n',
    to: '    requestTimeout: 0,\n',
    test: 'tests/faults/doors.test.ts',
    name: 'others are served',
  },
  {
    what: 'doors: the time of a greeting at the tablet’s door',
    file: 'src/web-host/tablet/tablet-door.ts',
    from: '    handshakeTimeout: patience,\n',
    to: '',
    test: 'tests/faults/doors.test.ts',
    name: 'before and after the greeting',
  },
  {
    what: 'doors: no secret in the log',
    file: 'src/web-host/web-host.ts',
    from: 'const answer = await application.answer(name, body.value);',
    to: 'const answer = await application.answer(name, body.value);\n    process.stderr.write(`${name} ${JSON.stringify(request.headers)}\\n`);',
    test: 'tests/faults/doors.test.ts',
    name: 'no other line',
  },
  {
    what: 'doors: the token',
    file: 'src/web-host/web-host.ts',
    from: 'if (stranger) return sendRefusal',
    to: 'if (stranger && false) return sendRefusal',
    test: 'tests/doors/web-host.test.ts',
    name: 'refuses a stranger',
  },
  {
    what: 'doors: the sender in the window',
    file: 'src/main/answer-window.ts',
    from: 'isTrusted(event) ?',
    to: 'isTrusted(event) || true ?',
    test: 'tests/desktop/desktop.test.ts',
    name: 'top frame',
    built: true,
  },
  {
    what: 'doors: a venue from outside is asked for',
    file: 'src/main/offer-venue.ts',
    from: 'if (response !== 0) return;',
    to: '',
    test: 'tests/desktop/desktop.test.ts',
    name: 'offers a venue',
    built: true,
  },
  {
    what: 'long runs: a lost thread ends its task',
    file: 'src/platform/workers/pool.ts',
    from: 'settle(seat, (pending) => pending.reject(new WorkerLost(pending.message.task, reason)));',
    to: 'void reason;',
    test: 'tests/faults/long-runs.test.ts',
    name: 'die',
  },
  {
    what: 'age: free room is given back',
    file: 'src/store/open-store.ts',
    from: "CompiledQuery.raw('vacuum')",
    to: "CompiledQuery.raw('select 1')",
    test: 'tests/faults/age.test.ts',
    name: 'lies free',
  },
  {
    what: 'age: free room is offered where there is much',
    file: 'shared/wording/file-room.ts',
    from: 'spare >= worthwhile && spare * 4 >= bytes',
    to: 'spare <= bytes',
    test: 'tests/pages/file-room.test.ts',
    built: true,
  },
  {
    what: 'age: the plans of one year alone are read',
    file: 'src/store/plans.ts',
    from: '`${year}-01-01`',
    to: "'0000'",
    test: 'tests/faults/age.test.ts',
    name: 'stated ratios',
    full: true,
  },
  {
    what: 'packages: libraries of the main bundle are in them',
    file: 'package.json',
    from: '"!out/.built-from",',
    to: '"!out/.built-from", "!**/node_modules/highs/**",',
    test: 'tests/desktop/packaging.test.ts',
    name: 'starts by itself',
    built: true,
  },
  {
    what: 'drafts: kept before they are stored',
    file: 'src/renderer/desk/editing.ts',
    from: '  keepSoon();\n',
    to: '',
    test: 'tests/faults/drafts.test.ts',
    built: true,
  },
  {
    what: 'newcomer: a command that README names',
    file: 'README.md',
    from: 'npm run demo\n',
    to: 'npm run demonstration\n',
    test: 'tests/newcomer/newcomer.ts',
    clones: true,
  },
];

const root = fileURLToPath(new URL('../..', import.meta.url));
const wanted = process.argv.slice(2);
const chosen = guards.filter(({ what }) => wanted.length === 0 || wanted.some((word) => what.includes(word)));
const place = mkdtempSync(join(tmpdir(), 'guards-'));
const copy = join(place, 'fieldback');
const left = ['node_modules', 'dist', '.git', 'demo-output'];
cpSync(root, copy, { recursive: true, filter: (path) => !left.includes(path.slice(root.length).split(/[/\\]/)[0]!) });
symlinkSync(join(root, 'node_modules'), join(copy, 'node_modules'), 'junction');

const started = (command: string, words: readonly string[], full?: true): boolean =>
  spawnSync(command, words, {
    cwd: copy,
    stdio: 'ignore',
    env: { ...process.env, FIELDBACK_FAULTS: full ? 'full' : 'short' },
  }).status === 0;
const node = (words: readonly string[], full?: true): boolean =>
  started(process.execPath, ['--disable-warning=ExperimentalWarning', ...words], full);

/** Whether the test of a guard passes on the copy as it stands; `attempts` times where chance decides. */
const passes = ({ test, name, built, full, clones, attempts = 1 }: Guard): boolean => {
  if (built) node(['src/bootstrap/build.js', '--always']);
  if (clones) {
    rmSync(join(copy, '.git'), { recursive: true, force: true });
    for (const words of [
      ['init', '-q'],
      ['add', '-A'],
      ['-c', 'user.name=x', '-c', 'user.email=x@x.invalid', 'commit', '-qm', 'x'],
    ])
      started('git', words);
    return node([test, '--without', 'npm test']);
  }
  const words = ['node_modules/vitest/vitest.mjs', 'run', '--config', 'tests/vitest.config.ts', test];
  return Array.from({ length: attempts }).every(() => node([...words, ...(name === undefined ? [] : ['-t', name])], full));
};

let standing = 0;
const say = (good: boolean, what: string, words: string): void => {
  if (!good) standing += 1;
  process.stdout.write(`${good ? 'ok    ' : 'FAILED'}  ${what}: ${words}\n`);
};
for (const guard of chosen) {
  const { what, file, from, to, test } = guard;
  const path = join(copy, file);
  const text = readFileSync(path, 'utf8');
  if (!text.includes(from)) {
    say(false, what, `${file} no longer holds the guard in these words`);
    continue;
  }
  if (!passes({ ...guard, attempts: 1 })) {
    say(false, what, `${test} fails although the guard stands`);
    continue;
  }
  writeFileSync(
    path,
    text.replace(from, () => to),
  );
  const still = passes(guard);
  writeFileSync(path, text);
  say(!still, what, still ? `${test} passes without it` : `without it ${test} fails`);
}
rmSync(place, { recursive: true, force: true });
process.stdout.write(`${chosen.length - standing} passed, ${standing} failed\n`);
process.exitCode = standing === 0 ? 0 : 1;
