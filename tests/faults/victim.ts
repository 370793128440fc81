/**
 * A program of ours in a process of its own, so that it can be ended at any moment: the command line, the web host, or the built main
 * bundle of the desktop with a stand-in for Electron. All three open the workspace as a user's does.
 */
import { fork, spawn, type ChildProcess } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { exitCodeOf } from '#cli/exit-code.ts';
import type { Answer, Failure } from '#shared/contract/failure.ts';

export type DoorName = 'command line' | 'web host' | 'desktop';

export interface Victim {
  /** The answer; null when the program was ended before it came. */
  ask(name: string, request: unknown): Promise<Answer<unknown> | null>;
  /** Ends it as a power cut does. */
  kill(): void;
  readonly ended: Promise<void>;
}

const root = fileURLToPath(new URL('../..', import.meta.url));
const quiet = '--disable-warning=ExperimentalWarning';

const whenEnded = (child: ChildProcess): Promise<void> =>
  child.exitCode !== null || child.signalCode !== null
    ? Promise.resolve()
    : new Promise((resolve) => child.once('close', () => resolve()));

/** What the command line says of a failure: its kind by the exit code, its words beside the output. */
const refusalOf = (code: number, said: string): Failure => {
  const kind = Object.entries(exitCodeOf).find(([, each]) => each === code)?.[0] ?? 'unexpected';
  return { kind, message: said.trim() } as Failure;
};

/** Each question is a process of its own. */
const commandLine = (file: string): Promise<Victim> => {
  let killed = false;
  let running: ChildProcess | null = null;
  let ended = Promise.resolve();
  return Promise.resolve({
    ask: async (name, request) => {
      if (killed) return null;
      const asked = `${file}.asked-${process.pid}.json`;
      writeFileSync(asked, JSON.stringify(request));
      const child = spawn(process.execPath, [quiet, 'src/cli/main.ts', 'call', name, '--file', asked, '--workspace', file], {
        cwd: root,
        stdio: ['ignore', 'pipe', 'pipe'],
      });
      running = child;
      ended = whenEnded(child);
      let [out, beside] = ['', ''];
      child.stdout.on('data', (part: Buffer) => (out += part.toString()));
      child.stderr.on('data', (part: Buffer) => (beside += part.toString()));
      await ended;
      if (child.exitCode === 0) return { ok: true, value: JSON.parse(out) as unknown };
      // Confirmed only by what it printed to the end; an exit code other than 0 is a refusal.
      return child.exitCode === null ? null : { ok: false, failure: refusalOf(child.exitCode, beside) };
    },
    kill: () => {
      killed = true;
      running?.kill('SIGKILL');
    },
    get ended() {
      return ended;
    },
  });
};

/** Opens a web host on a file; `words` are further options. */
export const startWebHost = async (file: string, words: readonly string[] = []) => {
  const child = spawn(process.execPath, [quiet, 'src/web-host/main.ts', '--workspace', file, ...words], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const ended = whenEnded(child);
  let said = '';
  child.stderr.on('data', (part: Buffer) => (said += part.toString()));
  const address = await new Promise<URL>((resolve, reject) => {
    child.stdout.on('data', (part: Buffer) => {
      said += part.toString();
      const found = /Fieldback is at (\S+)\n/.exec(said)?.[1];
      if (found) resolve(new URL(found));
    });
    void ended.then(() => reject(new Error(`the web host ended: ${said}`)));
  });
  const token = address.searchParams.get('token')!;
  const ask: Victim['ask'] = async (name, request) => {
    try {
      const reply = await fetch(`${address.origin}/answer/${name}`, {
        method: 'POST',
        headers: { authorization: `Bearer ${token}`, 'content-type': 'application/json' },
        body: JSON.stringify(request),
      });
      return (await reply.json()) as Answer<unknown>;
    } catch {
      return null;
    }
  };
  return { child, ask, kill: () => void child.kill('SIGKILL'), ended, origin: address.origin, token, said: () => said };
};

/** The desktop's main bundle on a file; ours as it is built, or another one. */
export const startDesktop = async (file: string, bundle?: string): Promise<Victim> => {
  const program = fileURLToPath(new URL('./desktop-program.ts', import.meta.url));
  const child = fork(program, bundle === undefined ? [file] : [file, bundle], {
    cwd: root,
    execArgv: [quiet],
    stdio: ['ignore', 'ignore', 'inherit', 'ipc'],
  });
  const ended = whenEnded(child);
  const waiting = new Map<number, (answer: Answer<unknown> | null) => void>();
  let number = 0;
  await new Promise<void>((resolve, reject) => {
    child.on('message', (message: { readonly ready?: true; readonly number: number; readonly answer: Answer<unknown> }) => {
      if (message.ready) return resolve();
      waiting.get(message.number)?.(message.answer);
      waiting.delete(message.number);
    });
    void ended.then(() => {
      reject(new Error('the desktop ended'));
      for (const tell of waiting.values()) tell(null);
      waiting.clear();
    });
  });
  return {
    ask: (name, request) =>
      new Promise((resolve) => {
        if (!child.connected) return resolve(null);
        number += 1;
        waiting.set(number, resolve);
        child.send({ number, name, request }, (error) => {
          if (error) resolve(null);
        });
      }),
    kill: () => void child.kill('SIGKILL'),
    ended,
  };
};

export const startVictim = (door: DoorName, file: string): Promise<Victim> =>
  door === 'web host' ? startWebHost(file) : door === 'desktop' ? startDesktop(file) : commandLine(file);
