import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { projectRoot, textOf } from '#tests/checks/project-root.ts';
import { shippedLibraries } from '#tests/checks/shipped-libraries.ts';
import packageFile from '../../package.json' with { type: 'json' };

interface Locked {
  readonly version: string;
  readonly license?: string;
  readonly integrity?: string;
  readonly dev?: boolean;
  readonly devOptional?: boolean;
  readonly hasInstallScript?: boolean;
  readonly link?: boolean;
}

const { packages } = JSON.parse(textOf('package-lock.json')) as { packages: Readonly<Record<string, Locked>> };
const shipped = Object.entries(packages)
  .filter(([place, { dev, devOptional }]) => place !== '' && ((!dev && !devOptional) || place === 'node_modules/electron'))
  .map(([place, locked]) => ({ name: place.replace(/^node_modules\//, ''), place, locked }));

/**
 * What can be shown of the libraries without a network. Whether an advisory stands against one of them is not: that is known to
 * `npm audit` alone, where a registry answers it.
 */
describe('the libraries that ship', () => {
  // Fails when a version moves, or a library comes or goes, without somebody having looked at it.
  it('are those that were looked at, in the versions that were looked at', () => {
    const found = Object.fromEntries(shipped.map(({ name, locked }) => [name, locked.version]));
    expect(found).toEqual(Object.fromEntries(Object.entries(shippedLibraries).map(([name, [version]]) => [name, version])));
  });

  it('come under the licences that were looked at', () => {
    for (const { name, locked } of shipped)
      expect([name, shippedLibraries[name]![1]]).toEqual([name, locked.license ?? 'MIT, by its file alone']);
  });

  it('are each held to the bytes of their archive, and none runs anything when it is installed', () => {
    for (const { name, locked } of shipped) {
      expect([name, locked.integrity]).toEqual([name, expect.stringMatching(/^sha512-[\w+/]{86}==$/)]);
      expect([name, locked.hasInstallScript ?? false, locked.link ?? false]).toEqual([name, false, false]);
    }
  });

  it('are asked for by their exact version', () => {
    for (const [name, version] of Object.entries({ ...packageFile.dependencies, ...packageFile.devDependencies }))
      expect([name, version]).toEqual([name, expect.stringMatching(/^\d+\.\d+\.\d+$/)]);
  });

  it('lie here in the versions of the lock file', () => {
    for (const { name, place, locked } of shipped) {
      const file = join(projectRoot, place, 'package.json');
      if (!existsSync(file)) {
        // A system has its own Node alone.
        expect(name).toMatch(/^node-(linux|win|darwin)-/);
        continue;
      }
      expect([name, (JSON.parse(readFileSync(file, 'utf8')) as Locked).version]).toEqual([name, locked.version]);
    }
  });

  it('that read what others made are few, and each meets spoilt input in tests/faults', () => {
    const reads = Object.entries(shippedLibraries).filter(([, [, , given]]) => given === 'files' || given === 'requests');
    expect(reads.map(([name]) => name)).toEqual(['@jsquash/jpeg', '@jsquash/png', 'better-sqlite3', 'csv-parse', 'zod']);
    const database = new Database(':memory:');
    expect(database.prepare('select sqlite_version()').pluck().get()).toBe('3.54.1');
    database.close();
  });
});
