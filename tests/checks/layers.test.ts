import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { cruise } from 'dependency-cruiser';
import type { ICruiseOptions, ICruiseResult } from 'dependency-cruiser';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { projectRoot } from '#tests/checks/project-root.ts';

const configuration = createRequire(import.meta.url)(join(projectRoot, '.dependency-cruiser.cjs')) as {
  forbidden: readonly { readonly name: string }[];
  options: ICruiseOptions;
};

/** Every wrong import: the rule, the file that breaks it, and what it imports. */
const wrongs: readonly (readonly [rule: string, file: string, imports: string])[] = [
  ['shared-looks-down', 'shared/wrong.ts', '#engine/good.ts'],
  ['shared-without-node', 'shared/wrong-node.ts', 'node:fs'],
  ['shared-libraries', 'shared/wrong-library.ts', 'highs'],
  ['engine-looks-down', 'src/engine/wrong.ts', '#store/store.ts'],
  ['engine-looks-down', 'src/engine/wrong-sideways.ts', '#planner/good.ts'],
  ['engine-without-node', 'src/engine/wrong-node.ts', 'node:crypto'],
  ['engine-libraries', 'src/engine/wrong-library.ts', 'highs'],
  ['planner-looks-down', 'src/planner/wrong.ts', '#services/needs.ts'],
  ['planner-without-node', 'src/planner/wrong-node.ts', 'node:worker_threads'],
  ['planner-libraries', 'src/planner/wrong-library.ts', 'highs'],
  ['reports-looks-down', 'src/reports/wrong.ts', '#engine/good.ts'],
  ['reports-libraries', 'src/reports/wrong-library.ts', 'zod'],
  ['migrations-looks-down', 'migrations/wrong.ts', '#shared/good.ts'],
  ['migrations-without-node', 'migrations/wrong-node.ts', 'node:fs'],
  ['migrations-libraries', 'migrations/wrong-library.ts', 'zod'],
  ['services-looks-down', 'src/services/wrong.ts', '#platform/good.ts'],
  ['services-looks-down', 'src/services/wrong-sideways.ts', '#store/inside.ts'],
  ['store-looks-down', 'src/store/wrong.ts', '#services/inside.ts'],
  ['platform-looks-down', 'src/platform/wrong.ts', '#store/inside.ts'],
  ['application-looks-down', 'src/application/wrong.ts', '../web-host/good.ts'],
  ['main-looks-down', 'src/main/wrong.ts', '#store/store.ts'],
  ['main-libraries', 'src/main/wrong-library.ts', 'zod'],
  ['web-host-looks-down', 'src/web-host/wrong.ts', '../cli/good.ts'],
  ['web-host-libraries', 'src/web-host/wrong-library.ts', 'zod'],
  ['cli-looks-down', 'src/cli/wrong.ts', '#engine/good.ts'],
  ['cli-libraries', 'src/cli/wrong-library.ts', 'highs'],
  ['preload-looks-down', 'src/preload/wrong.ts', '#shared/good.ts'],
  ['preload-without-node', 'src/preload/wrong-node.ts', 'node:fs'],
  ['preload-libraries', 'src/preload/wrong-library.ts', 'zod'],
  ['renderer-looks-down', 'src/renderer/wrong.ts', '#engine/good.ts'],
  ['renderer-without-node', 'src/renderer/wrong-node.ts', 'node:fs'],
  ['bootstrap-looks-down', 'src/bootstrap/wrong.js', '../../shared/good.ts'],
  ['packaging-looks-down', 'src/packaging/wrong.js', '../../shared/good.ts'],
  ['bootstrap-libraries', 'src/bootstrap/wrong-library.js', 'zod'],
  ['packaging-libraries', 'src/packaging/wrong-library.js', 'zod'],
  ['no-missing-file', 'src/engine/wrong-missing.ts', '#engine/nowhere.ts'],
  ['no-libraries-for-work-only', 'src/services/wrong-library.ts', 'fast-check'],
  ['database-in-the-store-only', 'src/application/wrong-database.ts', 'kysely'],
  ['pages-in-the-renderer-only', 'src/application/wrong-page.ts', 'react'],
];

/** What is allowed, so that a rule that forbids everything does not pass for a good one. */
const goods: readonly (readonly [file: string, imports: string])[] = [
  ['shared/good.ts', 'zod'],
  ['shared/contract/good.ts', '#shared/good.ts'],
  ['src/engine/good.ts', '#shared/good.ts'],
  ['src/planner/good.ts', '#shared/good.ts'],
  ['migrations/good.ts', 'kysely'],
  ['src/services/needs.ts', '#shared/good.ts'],
  ['src/services/inside.ts', '#engine/good.ts'],
  ['src/services/good.ts', '#store/store.ts'],
  ['src/store/store.ts', '#shared/good.ts'],
  ['src/store/inside.ts', 'better-sqlite3'],
  ['src/store/good.ts', '#migrations/good.ts'],
  ['src/platform/good.ts', '#services/needs.ts'],
  ['src/application/good.ts', '#store/inside.ts'],
  ['src/main/good.ts', 'electron'],
  ['src/web-host/good.ts', '#application/good.ts'],
  ['src/cli/good.ts', '#application/good.ts'],
  ['src/preload/good.ts', '#shared/contract/good.ts'],
  ['src/renderer/good.ts', 'react'],
  ['src/bootstrap/good.js', 'node:fs'],
];

describe('the layers', () => {
  const folder = mkdtempSync(join(tmpdir(), 'layers-'));
  let violations: readonly { readonly rule: string; readonly from: string }[] = [];

  const write = (file: string, text: string) => {
    mkdirSync(dirname(join(folder, file)), { recursive: true });
    writeFileSync(join(folder, file), text);
  };

  beforeAll(async () => {
    writeFileSync(join(folder, 'package.json'), readFileSync(join(projectRoot, 'package.json')));
    symlinkSync(join(projectRoot, 'node_modules'), join(folder, 'node_modules'), 'junction');
    for (const [file, imports] of goods) write(file, `import * as it from '${imports}';\nexport const good = it;\n`);
    // Even an import of a type alone is forbidden.
    for (const [, file, imports] of wrongs)
      write(
        file,
        file.endsWith('.js')
          ? `import * as it from '${imports}';\nexport const wrong = it;\n`
          : `import type * as it from '${imports}';\nexport type wrong = typeof it;\n`,
      );
    // Value imports, because the rule about libraries for work only lets their types through.
    write('src/services/wrong-library.ts', "import * as it from 'fast-check';\nexport const wrong = it;\n");
    write('src/engine/round.ts', "import { back } from '#engine/back.ts';\nexport const round = () => back;\n");
    write('src/engine/back.ts', "import { round } from '#engine/round.ts';\nexport const back = () => round;\n");

    const result = await cruise(['shared', 'src', 'migrations'], {
      ...configuration.options,
      ruleSet: { forbidden: configuration.forbidden } as never,
      validate: true,
      baseDir: folder,
      // The link leads out of the temporary folder; libraries keep the path a program sees.
      preserveSymlinks: true,
    });
    violations = (result.output as ICruiseResult).summary.violations.map((found) => ({
      rule: found.rule.name,
      from: found.from,
    }));
  }, 60_000);

  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it.each(wrongs)('%s: %s must not import %s', (rule, file) => {
    expect(violations).toContainEqual({ rule, from: file });
  });

  it('no-cycles: two files must not import each other', () => {
    expect(violations.filter((found) => found.rule === 'no-cycles').map((found) => found.from)).toHaveLength(1);
  });

  it.each(goods)('%s may import %s', (file) => {
    expect(violations.filter((found) => found.from === file)).toEqual([]);
  });

  it('every rule is broken by a file above', () => {
    const proven = new Set([...wrongs.map(([rule]) => rule), 'no-cycles']);
    expect(configuration.forbidden.map((rule) => rule.name).filter((name) => !proven.has(name))).toEqual([]);
  });
});
