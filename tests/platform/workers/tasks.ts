import { serveTasks } from '#platform/workers/serve-tasks.ts';

/** Tasks of a worker for the tests of the pool. */
serveTasks({
  double: (number: number) => number * 2,
  count: async (to: number, report) => {
    for (let at = 1; at <= to; at++) report(at / to, `${at} of ${to}`);
    return to;
  },
  spin: () => {
    for (;;);
  },
  refuse: () => {
    throw Object.assign(new RangeError('must be at least 1'), { field: 'members' });
  },
  die: () => process.exit(3),
  swallow: () => {
    const kept: unknown[] = [];
    for (;;) kept.push(new Array(100_000).fill(0).map((_, at) => ({ at })));
  },
});
