import type { Bridge } from '#shared/contract/bridge.ts';
import type { Answer } from '#shared/contract/failure.ts';
import type { Event, Job } from '#shared/contract/job.ts';
import { CommandFailure, misused } from '#cli/command.ts';
import type { Desk } from '#cli/command.ts';

export interface DeskParts {
  readonly application: Bridge;
  readonly options: Desk['options'];
  readonly words: readonly string[];
  /** Where the result and everything else are written. */
  readonly out: (text: string) => void;
  readonly beside: (text: string) => void;
  /** Whether standard error is a screen on which a line may be written over. */
  readonly screen: boolean;
}

const valueOf = (answer: Answer<unknown>): unknown => {
  if (!answer.ok) throw new CommandFailure(answer.failure);
  return answer.value;
};

/** Follows a job to its end. */
const followJob = (application: Bridge, first: Job, show: (job: Job) => void): Promise<Job> =>
  new Promise((resolve) => {
    const cancel = () => void application.answer('job/cancel', { id: first.id });
    const take = (job: Job): void => {
      show(job);
      if (job.state === 'running') return;
      stop();
      process.off('SIGINT', cancel);
      resolve(job);
    };
    const stop = application.listen((event: Event) => {
      if (event.kind === 'job' && event.job.id === first.id) take(event.job);
    });
    process.on('SIGINT', cancel);
    // It may have ended before anybody listened.
    void application.answer('job/read', { id: first.id }).then((answer) => {
      if (answer.ok && (answer.value as Job).state !== 'running') take(answer.value as Job);
    });
  });

/** Lays out what a command works with. */
export const desk = ({ application, options, words, out, beside, screen }: DeskParts): Desk => {
  let told = '';
  const show = ({ progress, state }: Job): void => {
    const line = `${Math.round(progress.share * 100)} % ${progress.note}`;
    if (screen) beside(`\r\u001b[K${state === 'running' ? line : ''}`);
    else if (state === 'running') {
      // On paper or in a log a tenth at a time is enough.
      const step = `${Math.floor(progress.share * 10)} ${progress.note}`;
      if (step !== told) beside(`${line}\n`);
      told = step;
    }
  };
  const workJob: Desk['workJob'] = async (name, request) => {
    const first = valueOf(await application.answer(name, request)) as Job;
    const job = await followJob(application, first, show);
    if (job.state === 'done') return job;
    throw new CommandFailure(job.failure ?? { kind: 'cancelled', message: 'The work was cancelled. Nothing was stored.' });
  };
  return {
    options,
    words,
    json: options['json'] === true,
    application,
    ask: async (name, request) => valueOf(await application.answer(name, request)) as never,
    work: async (name, request) => (await workJob(name, request)).value as never,
    workJob,
    need: (option) => {
      const value = options[option];
      if (typeof value !== 'string' || value === '') throw misused(`--${option}`, 'is missing');
      return value;
    },
    whole: (option, low, high, otherwise) => {
      const value = options[option];
      if (value === undefined) return otherwise;
      const number = Number(value);
      if (!Number.isInteger(number) || number < low || number > high)
        throw misused(`--${option}`, `must be a whole number from ${low} to ${high}, not "${String(value)}"`);
      return number;
    },
    print: (line) => out(`${line}\n`),
    printJson: (value) => out(`${JSON.stringify(value, null, 2)}\n`),
    note: (line) => beside(`${line}\n`),
  };
};
