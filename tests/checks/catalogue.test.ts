import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { catalogue } from '#shared/parameters/catalogue.ts';
import type { Parameter } from '#shared/parameters/parameter.ts';
import { citation, entries, type Source } from '#shared/sources/source.ts';
import { sources } from '#shared/sources/sources.ts';
import { standings } from '#shared/sources/standing.ts';
import { projectFiles, projectRoot, textOf } from '#tests/checks/project-root.ts';

/** The families: every file that exports one table of parameters or sources. */
const familiesOf = async (folder: string, ending: string, beside: readonly string[]) => {
  const files = readdirSync(join(projectRoot, folder)).filter((file) => !beside.includes(file));
  return Promise.all(
    files.map(async (file) => {
      const module = (await import(join(projectRoot, folder, file))) as Record<string, Record<string, unknown>>;
      const name = Object.keys(module).find((key) => key.endsWith(ending));
      return { file, table: name === undefined ? undefined : module[name] };
    }),
  );
};
const parameterFamilies = await familiesOf('shared/parameters', 'Parameters', [
  'parameter.ts',
  'catalogue.ts',
  'coverings.ts',
  'vehicles.ts',
]);
const sourceFamilies = await familiesOf('shared/sources', 'Sources', ['source.ts', 'sources.ts', 'standing.ts']);

const parameters = Object.entries<Parameter>(catalogue);
const works = Object.entries<Source>(sources);

/** Names that stand in two families: one would silently win over the other. */
const twice = (families: readonly { readonly table: Record<string, unknown> | undefined }[]) => {
  const names = families.flatMap(({ table }) => Object.keys(table ?? {}));
  return names.filter((name, index) => names.indexOf(name) !== index);
};

const problemsOf = ([name, parameter]: readonly [string, Parameter]): readonly string[] => {
  const wrong: string[] = [];
  const say = (what: string) => wrong.push(`${name}: ${what}`);
  if (!/^[a-z][A-Za-z0-9]*(\.[a-z0-9][A-Za-z0-9-]*)+$/.test(name)) say('the name does not read family.what.variant');
  if (parameter.meaning.trim().length < 8) say('no meaning');
  if (parameter.unit.trim() === '') say('no unit');
  for (const number of [parameter.value, parameter.low, parameter.high, parameter.doubt])
    if (!Number.isFinite(number)) say('a number is not finite');
  if (!(parameter.low <= parameter.value && parameter.value <= parameter.high)) say('the value is outside its own range');
  if (!(parameter.doubt >= 0 && parameter.doubt <= 2)) say('the doubt is not a share');
  if (!standings.includes(parameter.standing)) say('no standing');
  const cites = parameter.standing === 'published' || parameter.standing === 'derived' || parameter.standing === 'recalled';
  if (cites && !Object.hasOwn(sources, parameter.source ?? '')) say(`the source ${parameter.source} is not listed`);
  const entry = sources[parameter.source as keyof typeof sources]?.entry;
  if (parameter.standing === 'published' && entry === 'from memory') say('claims print for a work that was named from memory');
  if (!cites && parameter.source !== undefined) say('names a source that its standing does not claim');
  return wrong;
};

describe('the catalogue of parameters', () => {
  it('gives every number a meaning, a unit, a range, a doubt, a standing and a source that is listed', () => {
    expect(parameters.flatMap(problemsOf)).toEqual([]);
  });
  it('notices a number that lacks them', () => {
    const good: Parameter = {
      meaning: 'Days until it is so',
      value: 2,
      unit: 'd',
      low: 1,
      high: 3,
      doubt: 0.1,
      standing: 'our assumption',
    };
    expect(problemsOf(['family.what.good', good])).toEqual([]);
    expect(problemsOf(['noFamily', good])).toHaveLength(1);
    expect(problemsOf(['family.what', { ...good, unit: ' ' }])).toHaveLength(1);
    expect(problemsOf(['family.what', { ...good, value: 4 }])).toHaveLength(1);
    expect(problemsOf(['family.what', { ...good, low: Number.NaN }]).length).toBeGreaterThan(0);
    expect(problemsOf(['family.what', { ...good, standing: 'published', source: 'nobody-1900' } as never])).toHaveLength(1);
    expect(problemsOf(['family.what', { ...good, source: works[0]?.[0] ?? 'allen-1998' } as never])).toHaveLength(1);
  });
  it('holds every family, and no name twice', () => {
    expect(parameterFamilies.filter(({ table }) => table === undefined)).toEqual([]);
    expect(twice(parameterFamilies)).toEqual([]);
    expect(new Set(parameterFamilies.flatMap(({ table }) => Object.keys(table!)))).toEqual(new Set(Object.keys(catalogue)));
  });
});

describe('the list of sources', () => {
  it('says of every work who, what and where', () => {
    const wrong = works.filter(
      ([id, work]) =>
        !/^[a-z0-9]+(-[a-z0-9]+)*$/.test(id) ||
        work.authors.trim() === '' ||
        work.title.trim() === '' ||
        work.where.trim() === '' ||
        !entries.includes(work.entry) ||
        (work.year !== null && !(work.year > 1700 && work.year < 2100)),
    );
    expect(wrong).toEqual([]);
  });
  it('says in print what in an entry was not compared with the work', () => {
    const work: Source = { authors: 'Nobody', year: 1900, title: 'On nothing', where: 'Nowhere 1:1', entry: 'as printed' };
    expect(citation(work)).toBe('Nobody 1900. On nothing. Nowhere 1:1.');
    expect(citation({ ...work, year: null, entry: 'title from memory' })).toBe(
      'Nobody. On nothing. Nowhere 1:1 (title from memory).',
    );
  });
  it('holds every family, and no id twice', () => {
    expect(sourceFamilies.filter(({ table }) => table === undefined)).toEqual([]);
    expect(twice(sourceFamilies)).toEqual([]);
    expect(twice([{ table: { one: 1, two: 2 } }, { table: { two: 2 } }])).toEqual(['two']);
    expect(new Set(sourceFamilies.flatMap(({ table }) => Object.keys(table!)))).toEqual(new Set(Object.keys(sources)));
  });
  it('holds every work that an equation cites', () => {
    const wrong = projectFiles
      .filter((file) => /^(src|shared)\/.*\.ts$/.test(file))
      .flatMap((file) => [...textOf(file).matchAll(/@source\s+([a-z0-9-]+)/g)].map(([, id]) => `${file}: ${id}`))
      .filter((line) => !Object.hasOwn(sources, line.split(': ')[1]!));
    expect(wrong).toEqual([]);
  });
});
