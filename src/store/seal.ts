import { createReadStream, existsSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { setTimeout as pause } from 'node:timers/promises';
import { crc32 } from 'node:zlib';

/**
 * A database tells a torn page, not a flipped bit inside a text or a number. When nobody has a workspace open any more its bytes are
 * summed (CRC-32 finds every change of up to 32 neighbouring bits) and the sum is kept beside it with the size and the moment of the last
 * write. A file of that size and moment whose bytes sum to something else was changed by its disk and by no program. A file that was
 * written since, or put there by hand, has another moment: nothing is known of it, and nothing is held against it.
 */
interface Seal {
  readonly size: string;
  /** ns since 1970 of the last write. */
  readonly written: string;
  readonly sum: number;
}

/** ms, longer than a tick of any file system in use; two seconds on FAT, where two quick writers are not to be expected. */
const tick = 40;

const sealOf = (file: string): string => `${file}-seal`;

const stateOf = (file: string): Omit<Seal, 'sum'> | null => {
  const state = statSync(file, { bigint: true, throwIfNoEntry: false });
  return state?.isFile() === true ? { size: String(state.size), written: String(state.mtimeNs) } : null;
};

const sumOf = async (file: string): Promise<number> => {
  let sum = 0;
  for await (const part of createReadStream(file, { highWaterMark: 1 << 20 }) as AsyncIterable<Buffer>) sum = crc32(part, sum);
  return sum;
};

/** Seals a file that no program has open. One that is written meanwhile stays without a seal. */
export const seal = async (file: string): Promise<void> => {
  if (existsSync(`${file}-wal`)) return;
  // File systems keep the moment in ticks of some milliseconds: a write after the seal must not fall into the tick of the last one.
  const fresh = Date.now() - (statSync(file, { throwIfNoEntry: false })?.mtimeMs ?? 0);
  if (Math.abs(fresh) < tick) await pause(tick);
  const before = stateOf(file);
  if (before === null) return;
  const sum = await sumOf(file);
  const after = stateOf(file);
  if (after === null || after.written !== before.written || after.size !== before.size) return;
  const arriving = `${sealOf(file)}.${process.pid}`;
  writeFileSync(arriving, JSON.stringify({ ...before, sum } satisfies Seal));
  renameSync(arriving, sealOf(file));
};

export const removeSeal = (file: string): void => rmSync(sealOf(file), { force: true });

/** Whether the disk has changed a file that no program has written. */
export const sealIsBroken = async (file: string): Promise<boolean> => {
  let kept: Partial<Seal>;
  try {
    kept = JSON.parse(readFileSync(sealOf(file), 'utf8')) as Partial<Seal>;
  } catch {
    return false;
  }
  const now = stateOf(file);
  if (now === null || existsSync(`${file}-wal`) || kept.size !== now.size || kept.written !== now.written) return false;
  return kept.sum !== (await sumOf(file));
};
