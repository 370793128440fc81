import { describe, expect, it } from 'vitest';
import { projectFiles, textOf } from '#tests/checks/project-root.ts';

const texts = projectFiles.filter((file) => /\.(ts|tsx|js|cjs|md|html|css|json)$/.test(file) && file !== 'package-lock.json');

/** Words that would tie the project to one machine, one office or one moment. Written in pieces: this file is read too. */
const bound = [
  ['a path of one machine', new RegExp(`${'/'}work/(main|shared|brief)|${'/'}root/`)],
  ['the address of a package registry', new RegExp(`registry${'[.]'}(npmjs|yarnpkg)|deb[.]debian`)],
  ['work that is put off', new RegExp(`\\b(${['TO', 'DO'].join('')}|FIX${'ME'}|HA${'CK'})\\b`)],
  ['a number of an issue list', new RegExp(`\\b[Ii]${'ssue'} #?\\d`)],
  ['who wrote a line', new RegExp(`\\b(A${'I'}-generated|language ${'model'}|chat${'bot'})\\b`, 'i')],
] as const;

/** What a person may read: strings in everything that prints, draws or says something. Titles of works keep their words. */
const printed = texts.filter((file) => /^(shared|src)\/.*\.(ts|tsx)$/.test(file) && !file.startsWith('shared/sources/'));

/** Quoted text and text between tags. */
const wordsSaid = (text: string): readonly string[] =>
  [
    ...text
      .replace(/\/\*[\s\S]*?\*\//g, '')
      .replace(/^\s*\/\/.*$/gm, '')
      .matchAll(/'(?:[^'\\\n]|\\.)*'|"(?:[^"\\\n]|\\.)*"|`(?:[^`\\]|\\.)*`|>[^<>{}]+</g),
  ].map(([match]) => match);

describe('words', () => {
  it.each(bound)('%s stands nowhere', (_what, pattern) => {
    const found = texts.filter((file) => pattern.test(textOf(file)));
    expect(found).toEqual([]);
  });

  it('no verdict promises that anything is safe', () => {
    const verdict = new RegExp(`\\b(un)?saf${'e'}(ly|ty)?\\b`, 'i');
    const found = printed.flatMap((file) =>
      wordsSaid(textOf(file))
        .filter((said) => verdict.test(said))
        .map((said) => `${file}: ${said}`),
    );
    expect(found).toEqual([]);
  });

  it('finds a verdict where one is', () => {
    expect(wordsSaid("const text = 'this is fine';\n// 'not this'\nreturn <p>nor that</p>;")).toEqual([
      "'this is fine'",
      '>nor that<',
    ]);
  });

  it('in the order of the lock file, no package names where it was fetched', () => {
    expect(textOf('package-lock.json')).not.toMatch(/"resolved": "http/);
  });
});
