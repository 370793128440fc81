import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { copyFile, open, rm } from 'node:fs/promises';
import { basename, dirname, extname, join } from 'node:path';
import Database from 'better-sqlite3';
import { workspaceId } from '#store/file-facts.ts';
import { removeSeal, seal, sealIsBroken } from '#store/seal.ts';
import type { CopyLine } from '#store/store.ts';

/** Why a copy was made: by the clock, before a migration, because somebody asked, or a file put aside when a copy took its place. */
export type CopyReason = 'scheduled' | 'before-migration' | 'asked' | 'put-aside';

export interface Copy {
  readonly path: string;
  /** Epoch ms. */
  readonly madeAt: number;
  readonly reason: CopyReason;
}

const stemOf = (file: string): string => basename(file, extname(file));

/** The folder beside a workspace file that holds its copies. */
export const copiesFolder = (file: string): string => join(dirname(file), `${stemOf(file)}-copies`);

const stamp = (epochMs: number): string => new Date(epochMs).toISOString().replaceAll(':', '-');
const namePattern = /^(\d{4}-\d\d-\d\dT\d\d-\d\d-\d\d\.\d{3}Z)\.(scheduled|before-migration|asked|put-aside)\.fieldback$/;

const readName = (folder: string, name: string): Copy | null => {
  const [, made, reason] = namePattern.exec(name) ?? [];
  if (!made || !reason) return null;
  const madeAt = Date.parse(`${made.slice(0, 10)}T${made.slice(11).replaceAll('-', ':')}`);
  return { path: join(folder, name), madeAt, reason: reason as CopyReason };
};

/** The copies of a workspace, newest first. Files put aside are not copies to go back to and are left out. */
export const listCopies = (file: string): readonly Copy[] => {
  const folder = copiesFolder(file);
  if (!statSync(folder, { throwIfNoEntry: false })?.isDirectory()) return [];
  return readdirSync(folder)
    .map((name) => readName(folder, name))
    .filter((copy) => copy !== null && copy.reason !== 'put-aside')
    .toSorted((one, other) => other!.madeAt - one!.madeAt) as Copy[];
};

/** The same as they are told outside. */
export const copyLines = (file: string): readonly CopyLine[] =>
  listCopies(file).map(({ path, madeAt, reason }) => ({
    path,
    madeAt: new Date(madeAt).toISOString(),
    reason: reason as CopyLine['reason'],
    bytes: statSync(path, { throwIfNoEntry: false })?.size ?? 0,
  }));

/** Whether a file is a whole workspace database of a version this program knows, and as it was when it was copied. */
export const isGoodCopy = async (path: string, newestVersion: number): Promise<boolean> =>
  isWhole(path, newestVersion) && !(await sealIsBroken(path));

const isWhole = (path: string, newestVersion: number): boolean => {
  let database: Database.Database | undefined;
  try {
    database = new Database(path, { readonly: true, fileMustExist: true });
    const version = database.pragma('user_version', { simple: true }) as number;
    return (
      database.pragma('application_id', { simple: true }) === workspaceId &&
      version >= 1 &&
      version <= newestVersion &&
      database.pragma('integrity_check(1)', { simple: true }) === 'ok'
    );
  } catch {
    return false;
  } finally {
    database?.close();
  }
};

/** The newest copy that proves good. */
export const newestGoodCopy = async (file: string, newestVersion: number): Promise<string | null> => {
  for (const { path } of listCopies(file)) if (await isGoodCopy(path, newestVersion)) return path;
  return null;
};

const flush = async (path: string, flags = 'r+'): Promise<void> => {
  const handle = await open(path, flags);
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
};

/**
 * A clock that was ahead has left copies from the future. They were made before now all the same: they are named so, in their order, or
 * the newest copy would for ever be one of them.
 */
const putBeforeNow = (file: string, now: number): void => {
  const early = listCopies(file).filter(({ madeAt }) => madeAt > now);
  for (const [index, { path, reason }] of early.entries()) {
    const named = join(copiesFolder(file), `${stamp(now - 1 - index)}.${reason}.fieldback`);
    if (existsSync(named)) continue;
    renameSync(path, named);
    if (existsSync(`${path}-seal`)) renameSync(`${path}-seal`, `${named}-seal`);
  }
};

const remove = (path: string): void => {
  rmSync(path, { force: true });
  removeSeal(path);
};

/** Makes a rename in a folder last through a power cut; Windows has no such call and does it by itself. */
const flushFolder = async (folder: string): Promise<void> => {
  if (process.platform !== 'win32') await flush(folder, 'r');
};

/**
 * Copies an open or closed workspace while others may write to it. The copy takes its name only when it is whole and checked: a file
 * in the folder is never half a copy. Answers the path.
 */
export const makeCopy = async (file: string, now: number, reason: CopyReason): Promise<string> => {
  const folder = copiesFolder(file);
  mkdirSync(folder, { recursive: true });
  putBeforeNow(file, now);
  const path = join(folder, `${stamp(now)}.${reason}.fieldback`);
  const unfinished = `${path}.part`;
  const source = new Database(file, { fileMustExist: true, timeout: 2000 });
  try {
    await source.backup(unfinished);
  } catch (error) {
    await rm(unfinished, { force: true });
    throw error;
  } finally {
    source.close();
  }
  settleCopy(unfinished);
  await flush(unfinished);
  renameSync(unfinished, path);
  await flushFolder(folder);
  await seal(path);
  return path;
};

/** Makes a copy one plain file without companions and proves it whole. */
const settleCopy = (path: string): void => {
  const copy = new Database(path);
  try {
    copy.pragma('journal_mode = delete');
    const verdict = copy.pragma('integrity_check(1)', { simple: true });
    if (verdict !== 'ok') throw new Error(`the copy did not prove whole: ${String(verdict)}`);
  } catch (error) {
    copy.close();
    rmSync(path, { force: true });
    throw error;
  }
  copy.close();
};

/** ms after which a copy that never took its name was given up: its program was ended while it copied. */
const givenUpAfter = 3_600_000;

/** Removes all but the newest `keep` copies of each reason, and what programs that were ended while they copied have left. */
export const pruneCopies = (file: string, keep: number): void => {
  const folder = copiesFolder(file);
  for (const name of readdirSync(folder).filter((each) => /[.]fieldback[.]part(-journal|-wal|-shm)?$/.test(each))) {
    const path = join(folder, name);
    if (Math.abs(Date.now() - (statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0)) > givenUpAfter)
      rmSync(path, { force: true });
  }
  const copies = listCopies(file);
  for (const reason of ['scheduled', 'before-migration', 'asked'] satisfies CopyReason[]) {
    for (const old of copies.filter((copy) => copy.reason === reason).slice(keep)) remove(old.path);
  }
};

/** Whether the last scheduled copy is older than `everyMs`; one from the future (the clock was set back) counts as old. */
export const copyIsDue = (file: string, now: number, everyMs: number): boolean => {
  const last = listCopies(file).find((copy) => copy.reason === 'scheduled');
  return !last || Math.abs(now - last.madeAt) >= everyMs;
};

/**
 * Puts a copy in the place of a workspace file that is closed. What stood there is moved into the folder of copies, never deleted; its
 * path is the answer, null where nothing stood there. Throws when the copy does not prove good. A program that is ended in the middle
 * leaves either the old file or none, with every copy still there.
 */
export const restoreCopy = async (file: string, copy: string, now: number, newestVersion: number): Promise<string | null> => {
  if (!(await isGoodCopy(copy, newestVersion))) throw new Error(`${copy} is not a whole workspace`);
  const arriving = `${file}.arriving`;
  await copyFile(copy, arriving);
  await flush(arriving);
  const folder = copiesFolder(file);
  mkdirSync(folder, { recursive: true });
  const aside = join(folder, `${stamp(now)}.put-aside.fieldback`);
  const stood = existsSync(file);
  for (const companion of ['', '-wal', '-shm']) {
    if (existsSync(file + companion)) renameSync(file + companion, aside + companion);
  }
  removeSeal(file);
  renameSync(arriving, file);
  await flushFolder(dirname(file));
  return stood ? aside : null;
};
