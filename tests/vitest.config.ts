import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** Tests that open sockets, browsers or child processes, each with a process of its own; the rest shares its workers. */
const doors = ['tests/doors/**/*.test.ts', 'tests/bootstrap/**/*.test.ts'];
const pages = ['tests/pages/**/*.test.ts'];
const desktop = ['tests/desktop/**/*.test.ts'];
const faults = ['tests/faults/**/*.test.ts'];
const apart = { pool: 'forks', isolate: true, testTimeout: 60_000, hookTimeout: 120_000 } as const;

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    maxWorkers: 2,
    testTimeout: 30_000,
    // What a page shows is looked at until it holds: machines differ in how long that takes, results do not.
    expect: { poll: { timeout: 20_000 } },
    projects: [
      {
        extends: true,
        test: {
          name: 'unit',
          include: ['tests/**/*.test.ts'],
          exclude: [...doors, ...pages, ...desktop, ...faults],
          pool: 'threads',
          isolate: false,
        },
      },
      { extends: true, test: { name: 'doors', include: doors, ...apart } },
      { extends: true, test: { name: 'faults', include: faults, ...apart } },
      { extends: true, test: { name: 'pages', include: pages, ...apart } },
      { extends: true, test: { name: 'desktop', include: desktop, ...apart } },
    ],
  },
});
