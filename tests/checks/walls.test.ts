import { join } from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { projectRoot } from '#tests/checks/project-root.ts';

/** What the compiler says about one file that is not there, under the settings of a project of ours. */
const errorsOf = (project: string, file: string, text: string): readonly string[] => {
  const configuration = join(projectRoot, project);
  const { config } = ts.readConfigFile(configuration, ts.sys.readFile);
  const { options } = ts.parseJsonConfigFileContent(config, ts.sys, join(configuration, '..'));
  const path = join(projectRoot, file);
  const host = ts.createCompilerHost(options);
  const { readFile, fileExists } = host;
  host.fileExists = (name) => name === path || fileExists(name);
  host.readFile = (name) => (name === path ? text : readFile(name));
  const program = ts.createProgram([path], options, host);
  return ts
    .getPreEmitDiagnostics(program)
    .filter((found) => found.file?.fileName === path)
    .map((found) => ts.flattenDiagnosticMessageText(found.messageText, ' '));
};

describe('walls between the runtimes', () => {
  it.each([
    ['src/engine/tsconfig.json', 'src/engine/any.ts', 'process'],
    ['src/engine/tsconfig.json', 'src/engine/any.ts', 'window'],
    ['src/engine/tsconfig.json', 'src/engine/any.ts', 'console'],
    ['src/engine/tsconfig.json', 'src/engine/any.ts', 'setTimeout'],
    ['src/renderer/tsconfig.json', 'src/renderer/any.ts', 'process'],
    ['src/renderer/tsconfig.json', 'src/renderer/any.ts', 'Buffer'],
    ['tsconfig.json', 'src/services/any.ts', 'window'],
    ['tsconfig.json', 'src/preload/any.ts', 'document'],
  ])('under %s, %s does not see %s', (project, file, name) => {
    expect(errorsOf(project, file, `export const it = ${name};\n`).join(' ')).toContain(`Cannot find name '${name}'`);
  });

  it('lets each runtime see what is its own', () => {
    expect(errorsOf('src/renderer/tsconfig.json', 'src/renderer/any.ts', 'export const it = window.document;\n')).toEqual([]);
    expect(errorsOf('tsconfig.json', 'src/services/any.ts', 'export const it = process.version;\n')).toEqual([]);
    expect(errorsOf('src/engine/tsconfig.json', 'src/engine/any.ts', 'export const it = Math.exp(1);\n')).toEqual([]);
  });

  it('refuses what Node cannot run by erasing types', () => {
    expect(errorsOf('src/engine/tsconfig.json', 'src/engine/any.ts', 'export enum Any {\n  One,\n}\n').join(' ')).toContain(
      'erasableSyntaxOnly',
    );
  });
});
