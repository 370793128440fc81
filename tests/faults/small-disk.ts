import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

const run = (...words: [string, ...string[]]): boolean => spawnSync(words[0], words.slice(1), { stdio: 'ignore' }).status === 0;

/** A disk in memory that is as small as a test needs it. Only the superuser of a Linux may make one. */
export interface SmallDisk {
  readonly folder: string;
  /** Changes its size in kB, or what may be done with it (`ro`, `rw`). */
  set(option: string): boolean;
  remove(): void;
}

export const smallDisk = (kilobytes: number): SmallDisk | null => {
  if (process.platform !== 'linux' || process.getuid?.() !== 0) return null;
  const folder = mkdtempSync(join(tmpdir(), 'fieldback-disk-'));
  if (!run('mount', '-t', 'tmpfs', '-o', `size=${kilobytes}k`, 'tmpfs', folder)) {
    rmSync(folder, { recursive: true, force: true });
    return null;
  }
  return {
    folder,
    set: (option) => run('mount', '-o', `remount,${option}`, folder),
    remove: () => {
      run('umount', '-l', folder);
      rmSync(folder, { recursive: true, force: true });
    },
  };
};

/** Why there is no small disk here; null where there is one. */
export const whyNoSmallDisk = (): string | null => {
  const disk = smallDisk(64);
  disk?.remove();
  return disk === null ? 'only the superuser of a Linux may mount a small disk' : null;
};
