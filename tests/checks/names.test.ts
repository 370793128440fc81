import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { projectFiles, projectRoot, textOf } from '#tests/checks/project-root.ts';

/** All that may stand at the top, besides names that begin with a dot. */
const topLevel = [
  'DEVELOPERS.md',
  'README.md',
  'electron.vite.config.ts',
  'migrations',
  'package-lock.json',
  'package.json',
  'resources',
  'shared',
  'src',
  'tests',
  'tsconfig.json',
];

/** Made by commands and ignored by the repository. */
const made = ['node_modules', 'out', 'dist', 'demo-output'];

/** Names that say nothing about what is inside. */
const empty = [
  'util',
  'utils',
  'helper',
  'helpers',
  'core',
  'common',
  'manager',
  'managers',
  'handler',
  'handlers',
  'misc',
  'lib',
];

const ours = projectFiles.filter((file) => /^(src|shared|tests|migrations|resources)\//.test(file));
const code = ours.filter((file) => /\.(ts|tsx|js|cjs|css|html)$/.test(file));
const isKebab = (name: string) => /^[a-z0-9]+(-[a-z0-9]+)*$/.test(name);

describe('the top level', () => {
  it('holds nothing but what is agreed', () => {
    const found = readdirSync(projectRoot).filter((name) => !name.startsWith('.') && !made.includes(name));
    expect(found.filter((name) => !topLevel.includes(name))).toEqual([]);
  });
  it('is what the repository holds', () => {
    const found = new Set(projectFiles.map((file) => file.split('/')[0]!).filter((name) => !name.startsWith('.')));
    expect([...found].filter((name) => !topLevel.includes(name))).toEqual([]);
  });
});

describe('names of files and folders', () => {
  it('are kebab-case', () => {
    const wrong = code.filter((file) =>
      file
        .replace(/(\.(test|slow|config|d))?\.\w+$/, '')
        .split('/')
        .some((part) => !isKebab(part)),
    );
    expect(wrong).toEqual([]);
  });
  it('say what is inside', () => {
    const wrong = ours.filter((file) => file.split('/').some((part) => part.split(/[.-]/).some((word) => empty.includes(word))));
    expect(wrong).toEqual([]);
  });
});

describe('files', () => {
  it('export by name', () => {
    const exceptions = ['tests/vitest.config.ts'];
    const wrong = code.filter(
      (file) => /\.(ts|tsx|js)$/.test(file) && !exceptions.includes(file) && /^export default/m.test(textOf(file)),
    );
    expect(wrong).toEqual([]);
  });
  it('name the ending of what they import', () => {
    const wrong = code
      .filter((file) => /\.(ts|tsx)$/.test(file))
      .filter((file) => /from '(\.{1,2}\/|#)[^']*'/.test(textOf(file)))
      .filter((file) =>
        [...textOf(file).matchAll(/^(?:import|export)[^']*from '((?:\.{1,2}\/|#)[^']*)'/gm)].some(
          ([, path]) => !/\.(ts|tsx|js|cjs|json|css)(\?\w+)?$/.test(path!),
        ),
      );
    expect(wrong).toEqual([]);
  });
  it('are of a size a person can read', () => {
    // Data (sources, parameters, the sample) may be long; what decides something may not.
    const wrong = code
      .filter((file) => /^src\//.test(file) && /\.(ts|tsx|js)$/.test(file))
      .map((file) => [file, textOf(file).split('\n').length] as const)
      .filter(([, lines]) => lines > 600);
    expect(wrong).toEqual([]);
  });
});
