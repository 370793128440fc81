import { join } from 'node:path';
import { ESLint } from 'eslint';
import { beforeAll, describe, expect, it } from 'vitest';
import { projectRoot } from '#tests/checks/project-root.ts';

const pure = ['shared/units/any.ts', 'src/engine/any.ts', 'src/planner/any.ts', 'src/reports/any.ts'];

const clockAndChance = [
  ['Date.now', 'export const now = Date.now();'],
  ['empty new Date', 'export const now = new Date();'],
  ['Date()', 'export const now = Date();'],
  ['Math.random', 'export const chance = Math.random();'],
  ['performance.now', 'export const now = performance.now();'],
  ['Temporal.Now', 'export const now = Temporal.Now.instant();'],
  ['crypto', 'export const chance = crypto.randomUUID();'],
] as const;

describe('lint', () => {
  let eslint: ESLint;
  beforeAll(() => {
    eslint = new ESLint({ cwd: projectRoot, overrideConfigFile: join(projectRoot, '.eslint.config.js') });
  });
  const rulesBrokenBy = async (file: string, text: string) => {
    const [result] = await eslint.lintText(text, { filePath: join(projectRoot, file) });
    return result!.messages.map((message) => message.ruleId ?? message.message);
  };

  describe.each(pure)('%s', (file) => {
    it.each(clockAndChance)('forbids %s', async (_name, text) => {
      expect(await rulesBrokenBy(file, text)).toContain('no-restricted-syntax');
    });
    it('allows a given time', async () => {
      expect(await rulesBrokenBy(file, "export const day = new Date('2027-07-17T00:00:00Z');")).toEqual([]);
    });
    it('forbids printing', async () => {
      expect(await rulesBrokenBy(file, "console.log('here');")).toContain('no-console');
    });
  });

  it('forbids a default export', async () => {
    expect(await rulesBrokenBy('src/engine/any.ts', 'const any = 1;\nexport default any;')).toContain('no-restricted-syntax');
    expect(await rulesBrokenBy('tests/engine/any.ts', 'const any = 1;\nexport { any as default };')).toContain(
      'no-restricted-syntax',
    );
  });

  it('forbids a promise that nobody waits for', async () => {
    const text = 'const work = async () => {};\nexport const start = () => {\n  work();\n};\n';
    expect(await rulesBrokenBy('src/cli/main.ts', text)).toContain('@typescript-eslint/no-floating-promises');
  });

  it('asks that types are imported as types', async () => {
    const text = "import { Venue } from '#shared/vocabulary/venue.ts';\nexport const name = (venue: Venue) => venue.name;\n";
    expect(await rulesBrokenBy('src/engine/any.ts', text)).toContain('@typescript-eslint/consistent-type-imports');
  });
});
