// `npm run check`: types, lint, layers and format, two at a time, each on one line; what fails is printed below its line.
import { join } from 'node:path';
import { cacheFolder, runNode } from './project.js';

const cache = cacheFolder('check');

/** @param {string} project @param {string} name */
const types = (project, name) => [
  'node_modules/typescript/bin/tsc',
  '-p',
  project,
  '--pretty',
  'false',
  '--incremental',
  '--tsBuildInfoFile',
  join(cache, `${name}.tsbuildinfo`),
];

/** @type {Record<string, readonly string[]>} */
const parts = {
  lint: ['node_modules/eslint/bin/eslint.js', '--config', '.eslint.config.js', '--max-warnings', '0', '.'],
  'types of everything with Node': types('tsconfig.json', 'root'),
  'types of engine and planner': types('src/engine/tsconfig.json', 'engine'),
  'types of the pages': types('src/renderer/tsconfig.json', 'renderer'),
  'types of the bootstrap': types('src/bootstrap/tsconfig.json', 'bootstrap'),
  layers: [
    'node_modules/dependency-cruiser/bin/dependency-cruiser.mjs',
    '--config',
    '.dependency-cruiser.cjs',
    'shared',
    'src',
    'migrations',
    'tests',
  ],
  format: [
    'node_modules/prettier/bin/prettier.cjs',
    '--check',
    '--log-level',
    'warn',
    '--cache',
    '--cache-location',
    join(cache, 'prettier'),
    '.',
  ],
};

/**
 * Runs every part; true when all hold.
 * @param {(line: string) => void} say
 */
export const check = async (say) => {
  const waiting = Object.entries(parts);
  let holds = true;
  const worker = async () => {
    for (let next = waiting.shift(); next; next = waiting.shift()) {
      const [name, words] = next;
      const start = performance.now();
      const { code, output } = await runNode(words, { silent: true });
      const seconds = ((performance.now() - start) / 1000).toFixed(1);
      say(code === 0 ? `ok      ${name} (${seconds} s)` : `FAILED  ${name} (${seconds} s)\n${output.trim()}`);
      if (code !== 0) holds = false;
    }
  };
  await Promise.all([worker(), worker()]);
  return holds;
};

if (import.meta.main) process.exit((await check(console.log)) ? 0 : 1);
