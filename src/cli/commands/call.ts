import { readFileSync, statSync } from 'node:fs';
import { contract } from '#shared/contract/contract.ts';
import type { OperationName } from '#shared/contract/contract.ts';
import { calledFrom } from '#platform/folders/called-from.ts';
import { requestLimit } from '#application/request-size.ts';
import { CommandFailure, misused } from '#cli/command.ts';
import type { Command, Desk } from '#cli/command.ts';

const textOfFile = (path: string): string => {
  if (path === '-') return readFileSync(0, 'utf8');
  const file = calledFrom(path);
  try {
    if (statSync(file).size > requestLimit) throw misused('request', `must be at most ${requestLimit / 2 ** 20} MB`);
    return readFileSync(file, 'utf8');
  } catch (error) {
    if (error instanceof CommandFailure) throw error;
    throw misused('--file', `cannot be read (${(error as Error).message})`);
  }
};

const requestOf = (desk: Desk): unknown => {
  const { json, file } = desk.options;
  if (json !== undefined && file !== undefined) throw misused('--file', 'stands beside --json; give one of them');
  const option = file === undefined ? '--json' : '--file';
  const text = typeof file === 'string' ? textOfFile(file) : typeof json === 'string' ? json : '{}';
  if (Buffer.byteLength(text) > requestLimit) throw misused('request', `must be at most ${requestLimit / 2 ** 20} MB`);
  try {
    return JSON.parse(text) as unknown;
  } catch (error) {
    throw misused(option, `is not JSON (${(error as Error).message})`);
  }
};

/** The whole contract by name. Prints the value of the answer as JSON: what was asked for, or for long work its ended job. */
export const call: Command = {
  summary: 'Calls one operation by name and prints what it answers as JSON; waits for long work',
  usage: "<operation> [--json '{…}' | --file PATH (- is standard input)]",
  options: { json: { type: 'string' }, file: { type: 'string' } },
  run: async (desk) => {
    const [name, ...more] = desk.words;
    if (name === undefined) throw misused('operation', 'is missing; "list" shows them all');
    if (more.length > 0) throw misused(more[0]!, 'is one word too many');
    // Names and requests that do not exist are the application's to refuse, in the words of every door.
    const [operation, given] = [name as OperationName, requestOf(desk) as never];
    const long = Object.hasOwn(contract, name) && contract[operation].long;
    desk.printJson(long ? await desk.workJob(operation, given) : await desk.ask(operation, given));
  },
};
