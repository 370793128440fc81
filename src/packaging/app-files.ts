import { globSync, readFileSync } from 'node:fs';
import { join, matchesGlob, sep } from 'node:path';

/** How a package is built: the `build` part of package.json, as electron-builder reads it. */
export interface BuildSettings {
  readonly files: readonly string[];
  readonly asarUnpack: readonly string[];
  readonly linux: { readonly files: readonly string[] };
  readonly win: { readonly files: readonly string[] };
  readonly mac: { readonly files: readonly string[] };
}

export const platforms = ['linux', 'win', 'mac'] as const;
export type PackagePlatform = (typeof platforms)[number];

const jsonOf = (root: string, name: string): unknown => JSON.parse(readFileSync(join(root, name), 'utf8'));

export const buildSettings = (root: string): BuildSettings =>
  (jsonOf(root, 'package.json') as { readonly build: BuildSettings }).build;

interface LockedPackage {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
  readonly optional?: boolean;
}

/** Folders of the libraries that the program needs where it runs, as the lock file has them: neither tools nor what fits one machine only. */
export const shippedPackages = (root: string): readonly string[] => {
  const { packages } = jsonOf(root, 'package-lock.json') as { readonly packages: Readonly<Record<string, LockedPackage>> };
  return Object.entries(packages)
    .filter(([path, each]) => path.startsWith('node_modules/') && !each.dev && !each.devOptional && !each.optional)
    .map(([path]) => path)
    .toSorted();
};

const filesUnder = (root: string, pattern: string): readonly string[] =>
  globSync(pattern, { cwd: root, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name).slice(root.length + 1))
    .map((path) => path.split(sep).join('/'));

/**
 * Every file of a package for one kind of machine, by its path in the project, in the way electron-builder takes them: what the patterns
 * name and the shipped libraries, less what a pattern with `!` takes away.
 */
export const appFiles = (root: string, platform: PackagePlatform): readonly string[] => {
  const settings = buildSettings(root);
  const patterns = [...settings.files, ...settings[platform].files];
  const away = patterns.filter((pattern) => pattern.startsWith('!')).map((pattern) => pattern.slice(1));
  const named = patterns.filter((pattern) => !pattern.startsWith('!')).flatMap((pattern) => filesUnder(root, pattern));
  const libraries = shippedPackages(root).flatMap((folder) =>
    // A library inside another one stands in the list by itself.
    filesUnder(root, `${folder}/**/*`).filter((path) => !path.slice(folder.length).includes('/node_modules/')),
  );
  return [...new Set([...named, ...libraries])].filter((path) => !away.some((pattern) => matchesGlob(path, pattern))).toSorted();
};

/** Whether a file lies beside the archive instead of in it: a system opens native code only from a file of its own. */
export const isUnpacked = (settings: BuildSettings, path: string): boolean =>
  settings.asarUnpack.some((pattern) => matchesGlob(path, pattern));
