import { parseArgs } from 'node:util';
import type { Bridge } from '#shared/contract/bridge.ts';
import type { Failure } from '#shared/contract/failure.ts';
import { CommandFailure, misused } from '#cli/command.ts';
import type { Command } from '#cli/command.ts';
import { commands } from '#cli/commands.ts';
import { desk } from '#cli/desk.ts';
import type { DeskParts } from '#cli/desk.ts';
import { exitCodeOf } from '#cli/exit-code.ts';
import { textTable } from '#cli/text-table.ts';

/** Every command understands these. */
const everywhere = {
  json: { type: 'boolean' },
  workspace: { type: 'string' },
  help: { type: 'boolean', short: 'h' },
} as const;

export interface CommandLine extends Pick<DeskParts, 'out' | 'beside' | 'screen'> {
  /** Writes every failure as JSON; otherwise only where `--json` stands on the command line. */
  readonly failuresAsJson?: boolean;
  /** Opens the workspace named on the command line, or the user's own. Not called for help. */
  open(workspace: string | undefined): Promise<Bridge & { close(): Promise<void> }>;
}

const help = (): readonly string[] => [
  'npm run cli -- <command> [options]',
  '',
  ...textTable(
    ['command', 'what it does'],
    Object.entries(commands).map(([name, { summary }]) => [name, summary]),
  ),
  '',
  'Every command: --workspace PATH (otherwise FIELDBACK_FILE, or the one in your data folder), --json, --help.',
  'Results go to standard output, progress to standard error.',
  `Exit codes: 0 done, ${Object.entries(exitCodeOf)
    .map(([kind, code]) => `${code} ${kind}`)
    .join(', ')}.`,
];

const linesOf = (failure: Failure): readonly string[] => {
  if (failure.kind === 'invalid-request' || failure.kind === 'out-of-range')
    return [
      failure.message,
      ...failure.problems
        .map(({ field, reason }) => `  ${field}: ${reason}`)
        .filter((line) => !failure.message.includes(line.trim())),
    ];
  if (failure.kind === 'no-plan')
    return [
      failure.message,
      ...failure.because.reasons.map((reason) => `  ${reason}`),
      ...failure.because.mends.map((mend) => `  would help: ${mend.words}`),
    ];
  return [failure.message];
};

const parse = (command: Command, rest: readonly string[]) => {
  try {
    return parseArgs({ args: [...rest], options: { ...everywhere, ...command.options }, allowPositionals: true, strict: true });
  } catch (error) {
    throw misused('options', (error as Error).message.split('\n')[0]!);
  }
};

/** Runs one command line; answers the exit code. Never throws. */
export const runCommand = async (args: readonly string[], line: CommandLine): Promise<number> => {
  const fail = (failure: Failure): number => {
    if (line.failuresAsJson === true || args.includes('--json')) line.beside(`${JSON.stringify({ ok: false, failure })}\n`);
    else for (const text of linesOf(failure)) line.beside(`${text}\n`);
    return exitCodeOf[failure.kind];
  };
  const [name, ...rest] = args;
  if (name === undefined || name === 'help' || name === '--help' || name === '-h') {
    for (const text of help()) line.out(`${text}\n`);
    return name === undefined ? exitCodeOf['invalid-request'] : 0;
  }
  const command = Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (command === undefined) return fail(misused('command', `there is no command "${name}"; "help" shows them all`).failure);

  let application: Awaited<ReturnType<CommandLine['open']>> | null = null;
  try {
    const { values, positionals } = parse(command, rest);
    const options = values as Readonly<Record<string, string | boolean | undefined>>;
    if (options['help'] === true) {
      line.out(`${command.summary}\nnpm run cli -- ${name} ${command.usage} [--workspace PATH] [--json]\n`);
      return 0;
    }
    const workspace = options['workspace'];
    application = await line.open(typeof workspace === 'string' ? workspace : undefined);
    await command.run(desk({ ...line, application, options, words: positionals }));
    return 0;
  } catch (error) {
    if (error instanceof CommandFailure) return fail(error.failure);
    return fail({ kind: 'unexpected', message: error instanceof Error ? error.message : String(error) });
  } finally {
    await application?.close();
  }
};
