import type { Project, ProjectLag, ProjectTask } from '#planner/shortest-schedule.ts';

const numbersOf = (text: string): number[] => (text.match(/-?\d+/g) ?? []).map(Number);
const endToStart = (from: number, to: number): ProjectLag => ({ from, to, after: 'end', minimum: 0 });

/** Reads the single-mode and multi-mode project format of Kolisch & Sprecher (1997). */
export const readKolischSprecher = (text: string): Project => {
  const lines = text.split(/\r?\n/);
  const after = (title: string): number => lines.findIndex((line) => line.startsWith(title));
  const count = (kind: string): number => numbersOf(lines.find((line) => line.includes(`- ${kind}`))!)[0]!;
  const renewable = count('renewable');
  const budgets = count('nonrenewable');
  const jobs = numbersOf(lines.find((line) => line.startsWith('jobs (incl'))!)[0]!;
  const lags: ProjectLag[] = [];
  for (let job = 0; job < jobs; job += 1) {
    const [, , , ...successors] = numbersOf(lines[after('PRECEDENCE RELATIONS') + 2 + job]!);
    for (const successor of successors) lags.push(endToStart(job, successor - 1));
  }
  const tasks: { name: string; modes: { length: number; uses: number[]; draws: number[] }[] }[] = [];
  for (const line of lines.slice(after('REQUESTS/DURATIONS') + 3)) {
    const row = numbersOf(line);
    if (line.startsWith('*') || row.length === 0) break;
    const width = 2 + renewable + budgets;
    const isFirst = row.length === width + 1;
    if (isFirst) tasks.push({ name: `task ${row[0]}`, modes: [] });
    const [, length, ...amounts] = isFirst ? row.slice(1) : row;
    tasks.at(-1)!.modes.push({ length: length!, uses: amounts.slice(0, renewable), draws: amounts.slice(renewable) });
  }
  const available = numbersOf(lines[after('RESOURCEAVAILABILITIES') + 2]!);
  return { tasks, lags, capacity: available.slice(0, renewable), budgets: available.slice(renewable) };
};

/** Reads the format of Patterson (1984): numbers alone, whatever the line breaks. */
export const readPatterson = (text: string): Project => {
  const numbers = numbersOf(text);
  let position = 0;
  const next = (): number => numbers[position++]!;
  const jobs = next();
  const resources = next();
  const capacity = Array.from({ length: resources }, next);
  const lags: ProjectLag[] = [];
  const tasks: ProjectTask[] = Array.from({ length: jobs }, (_, job) => {
    const length = next();
    const uses = Array.from({ length: resources }, next);
    const successors = Array.from({ length: next() }, next);
    for (const successor of successors) lags.push(endToStart(job, successor - 1));
    return { name: `task ${job + 1}`, modes: [{ length, uses, draws: [] }] };
  });
  return { tasks, lags, capacity, budgets: [] };
};

/** Reads the format of Schwindt's generator: start-to-start lags in square brackets; a negative one is a maximum lag. */
export const readSchwindt = (text: string): Project => {
  const lines = text
    .split(/\r?\n/)
    .map(numbersOf)
    .filter((row) => row.length > 0);
  const [inner, resources] = lines[0]! as [number, number];
  const jobs = inner + 2;
  const lags: ProjectLag[] = [];
  for (let job = 0; job < jobs; job += 1) {
    const [from, , count, ...rest] = lines[1 + job]!;
    for (let successor = 0; successor < count!; successor += 1) {
      lags.push({ from: from!, to: rest[successor]!, after: 'start', minimum: rest[count! + successor]! });
    }
  }
  const tasks = Array.from({ length: jobs }, (_, job): ProjectTask => {
    const [, , length, ...uses] = lines[1 + jobs + job]!;
    return { name: `task ${job}`, modes: [{ length: length!, uses: uses.slice(0, resources), draws: [] }] };
  });
  return { tasks, lags, capacity: lines[1 + 2 * jobs]!.slice(0, resources), budgets: [] };
};
