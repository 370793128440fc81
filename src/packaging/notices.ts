import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { shippedPackages } from '#packaging/app-files.ts';

/** One library and the terms it comes under. */
export interface Notice {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  /** The licence in its own words; null where the library carries no such file and its licence is known by name alone. */
  readonly text: string | null;
}

const licenceFile = /^(licen[cs]e|copying|notice|ofl)([-.].*)?$/i;

interface PackageFacts {
  readonly name: string;
  readonly version: string;
  readonly license?: string | { readonly type: string };
  readonly licenses?: readonly { readonly type: string }[];
}

const licenceOf = ({ license, licenses }: PackageFacts): string =>
  (typeof license === 'string' ? license : (license?.type ?? licenses?.map(({ type }) => type).join(' OR '))) || 'not stated';

/** The libraries that ship with the program, each with its licence. */
export const notices = (root: string): readonly Notice[] =>
  shippedPackages(root).map((folder) => {
    const place = join(root, folder);
    const facts = JSON.parse(readFileSync(join(place, 'package.json'), 'utf8')) as PackageFacts;
    const files = readdirSync(place)
      .filter((name) => licenceFile.test(name) && existsSync(join(place, name)))
      .toSorted();
    return {
      name: facts.name,
      version: facts.version,
      licence: licenceOf(facts),
      text: files.length === 0 ? null : files.map((name) => readFileSync(join(place, name), 'utf8').trim()).join('\n\n'),
    };
  });

/** The notices as the text that lies beside the program. */
export const noticesText = (root: string): string => {
  const own = readFileSync(join(root, 'resources', 'licence.txt'), 'utf8').trim();
  const parts = notices(root).map(({ name, version, licence, text }) =>
    [`${name} ${version} — ${licence}`, text ?? 'The library carries its licence by name only.'].join('\n\n'),
  );
  const rule = `\n\n${'='.repeat(80)}\n\n`;
  return `${['Fieldback', own].join('\n\n')}${rule}It is built with these libraries. Electron and Chromium have notices of their own beside this file.${rule}${parts.join(rule)}\n`;
};
