import type { ParseArgsOptionsConfig } from 'node:util';
import type { OperationName, ReplyOf, RequestOf, ValueOf } from '#shared/contract/contract.ts';
import type { Bridge } from '#shared/contract/bridge.ts';
import type { Job } from '#shared/contract/job.ts';
import type { Failure } from '#shared/contract/failure.ts';

/** A failure on its way out of a command; the command line prints it and ends with its exit code. */
export class CommandFailure extends Error {
  readonly failure: Failure;
  constructor(failure: Failure) {
    super(failure.message);
    this.failure = failure;
  }
}

/** A command line that cannot be read. */
export const misused = (field: string, reason: string): CommandFailure =>
  new CommandFailure({ kind: 'invalid-request', message: `${field}: ${reason}.`, problems: [{ field, reason }] });

/** What a command works with. Results go to standard output, everything else to standard error. */
export interface Desk {
  /** Options by name as typed, `--home-date X` under `home-date`. */
  readonly options: Readonly<Record<string, string | boolean | undefined>>;
  /** Words that are not options. */
  readonly words: readonly string[];
  /** Whether the result is wanted as JSON. */
  readonly json: boolean;
  readonly application: Bridge;
  /** Asks an operation; a failure ends the command. Long work answers with its job. */
  ask<Name extends OperationName>(name: Name, request: RequestOf<Name>): Promise<ValueOf<Name>>;
  /** Asks long work, shows how far it is, and waits for its result. Ctrl-C cancels it. */
  work<Name extends OperationName>(name: Name, request: RequestOf<Name>): Promise<ReplyOf<Name>>;
  /** The same, and answers with the ended job. */
  workJob<Name extends OperationName>(name: Name, request: RequestOf<Name>): Promise<Job>;
  /** The option as text; absent or empty ends the command with a message. */
  need(option: string): string;
  /** A whole number from low to high, or `otherwise` when the option is absent. */
  whole(option: string, low: number, high: number, otherwise: number): number;
  /** One line of the result. */
  print(line: string): void;
  /** The whole result as JSON. */
  printJson(value: unknown): void;
  /** One line beside the result. */
  note(line: string): void;
}

/** One command: `npm run cli -- <name> [words] [options]`. Listed in `commands.ts`. */
export interface Command {
  /** One line for the list. */
  readonly summary: string;
  /** Words and options after the name. */
  readonly usage: string;
  readonly options: ParseArgsOptionsConfig;
  run(desk: Desk): Promise<void>;
}
