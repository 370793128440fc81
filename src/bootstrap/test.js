// `npm test`: everything that is checked, then every test. The last line is `N passed, N failed, N skipped`.
// `--only unit` (or doors, pages, desktop) runs one part; other arguments go to vitest, a path for instance.
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build } from './build.js';
import { check } from './check.js';
import { cacheFolder, runNode } from './project.js';

const words = process.argv.slice(2);
const at = words.indexOf('--only');
const only = at < 0 ? null : (words.splice(at, 2)[1] ?? null);
const everything = only === null && words.length === 0;

/** Doors, pages and desktop look at the built pages and bundles. */
const needsBuild = everything || only !== 'unit';

const checks = everything ? await check(console.log) : true;
const built = needsBuild ? await build(console.log) : true;

const report = join(cacheFolder('test'), 'report.json');
rmSync(report, { force: true });
const { code } = await runNode([
  'node_modules/vitest/vitest.mjs',
  'run',
  '--config',
  'tests/vitest.config.ts',
  '--reporter=default',
  '--reporter=json',
  `--outputFile.json=${report}`,
  ...(only === null ? [] : [`--project=${only}`]),
  ...words,
]);

/** @returns {{ passed: number, failed: number, skipped: number }} */
const counts = () => {
  if (!existsSync(report)) return { passed: 0, failed: 1, skipped: 0 };
  const { numPassedTests, numFailedTests, numPendingTests, numTodoTests, testResults } = JSON.parse(readFileSync(report, 'utf8'));
  // A file that cannot even be loaded holds no test that could fail; it counts as one.
  const broken = testResults.filter(
    (/** @type {{ status: string, assertionResults: unknown[] }} */ file) =>
      file.status === 'failed' && file.assertionResults.length === 0,
  );
  return { passed: numPassedTests, failed: numFailedTests + broken.length, skipped: numPendingTests + numTodoTests };
};

const { passed, failed, skipped } = counts();
if (!checks) console.log('Types, lint, layers or format do not hold: see the FAILED lines at the top.');
if (!built) console.log('The build failed: see above.');
if (code !== 0 && failed === 0) console.log('Every test passed but the run itself ended with an error: see above.');
// What fails outside a test counts as one failure, so that the last line never reads better than the run was.
const beside = (checks ? 0 : 1) + (built ? 0 : 1) + (code !== 0 && failed === 0 ? 1 : 0);
console.log(`${passed} passed, ${failed + beside} failed, ${skipped} skipped`);
process.exitCode = code !== 0 || failed + beside > 0 ? 1 : 0;
