import { accessSync, constants, existsSync, mkdirSync, openSync, readSync, closeSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { CompiledQuery, Kysely } from 'kysely';
import { Migrator, type Migration } from 'kysely/migration';
import { migrations } from '#migrations/index.ts';
import { unpacked } from '#store/packed.ts';
import { contentsIn } from '#store/contents.ts';
import { copyIsDue, copyLines, listCopies, makeCopy, newestGoodCopy, pruneCopies } from '#store/copies.ts';
import { workspaceId } from '#store/file-facts.ts';
import { isElsewhere } from '#store/network-share.ts';
import { isBusy, ownWaitMs, SharedFileDialect, whileBusy } from '#store/sqlite-dialect.ts';
import { seal, sealIsBroken } from '#store/seal.ts';
import type { Contents, CopyLine, FileSize, Store } from '#store/store.ts';
import type { Tables } from '#store/tables.ts';
import { OpeningRefused, type Trouble } from '#store/trouble.ts';

export interface OpeningWishes {
  readonly file: string;
  /** Epoch ms. */
  readonly now: () => number;
  /** How long to wait while another program writes. */
  readonly waitMs: number;
  /** Fills a workspace that is new, in the transaction that begins it. */
  readonly fill: (contents: Contents) => Promise<void>;
  /** Scheduled copies: how often, and how many of each reason stay. */
  readonly copies: { readonly everyMs: number; readonly keep: number };
  /** The migrations there are, by name; ours when left out. */
  readonly migrations?: Readonly<Record<string, Migration>>;
  /** Told of what went wrong without stopping work, such as a copy that could not be made. */
  readonly log: (line: string) => void;
}

/** A store and the things only its owner may do. */
export interface OpenStore extends Store {
  /** Makes the scheduled copy when it is due. */
  copyIfDue(): Promise<void>;
  close(): Promise<void>;
}

export type Opening = { readonly ok: true; readonly store: OpenStore } | { readonly ok: false; readonly trouble: Trouble };

/**
 * Opens a workspace: refuses a newer file, checks it, copies it when it must be migrated, migrates, checks again. A file that is not
 * there is begun anew only when nothing tells of an older one. On trouble the file is as it was.
 */
export const openStore = async (wishes: OpeningWishes): Promise<Opening> => {
  try {
    return { ok: true, store: await whileBusy(wishes.waitMs, () => open(wishes)) };
  } catch (error) {
    const refused = error instanceof OpeningRefused ? error : refusalOf(error, wishes.file);
    if (!refused) throw error;
    const lost = refused.kind === 'damaged' || refused.kind === 'missing' || refused.kind === 'not-a-workspace';
    const newestCopy = lost ? await newestGoodCopy(wishes.file, namesOf(wishes).length) : null;
    const wayBack = newestCopy ? ` The newest good copy is ${newestCopy}; it can be put in its place.` : '';
    return { ok: false, trouble: { kind: refused.kind, message: refused.message + wayBack, newestCopy } };
  }
};

/** Names of the migrations in order; their number is the version of a file that has them all. */
const namesOf = (wishes: OpeningWishes): readonly string[] => Object.keys(wishes.migrations ?? migrations).toSorted();

const open = async (wishes: OpeningWishes): Promise<OpenStore> => {
  const { file } = wishes;
  const names = namesOf(wishes);
  const newest = names.length;
  readyFolder(file);
  const version = isNew(file) ? 0 : await examine(file, names);
  if (version > 0 && version < newest) await makeCopy(file, wishes.now(), 'before-migration');

  const database = new Database(file, { timeout: ownWaitMs });
  try {
    setUp(database);
    const kysely = new Kysely<Tables>({ dialect: new SharedFileDialect(database, wishes.waitMs) });
    if (version < newest) {
      await migrate(kysely, file, wishes.migrations ?? migrations);
      checkWhole(database, file);
    }
    const store = storeOn(kysely, wishes);
    await begin(kysely, wishes);
    await store.copyIfDue();
    if (isElsewhere(file))
      wishes.log(
        `${file} lies on another machine: open it from one machine at a time, or keep it on a disk of this one and copy it there.`,
      );
    return store;
  } catch (error) {
    database.close();
    throw error;
  }
};

const readyFolder = (file: string): void => {
  const folder = dirname(file);
  try {
    mkdirSync(folder, { recursive: true });
    accessSync(folder, constants.W_OK | constants.R_OK);
    if (existsSync(file)) accessSync(file, constants.W_OK | constants.R_OK);
  } catch {
    throw new OpeningRefused(
      'read-only',
      `The workspace ${file} cannot be written: its folder or the file is read-only. Choose another place or change the permission.`,
    );
  }
};

/** Whether a workspace may be begun here. A file that is gone or empty although copies or a write-ahead log tell of it is lost, not new. */
const isNew = (file: string): boolean => {
  const size = existsSync(file) ? statSync(file).size : 0;
  if (size > 0) return false;
  const traces = listCopies(file).length > 0 || (existsSync(`${file}-wal`) && statSync(`${file}-wal`).size > 0);
  if (!traces) return true;
  throw new OpeningRefused(
    'missing',
    `The workspace ${file} is gone or empty, but it has been here before. No new one was begun.`,
  );
};

/** The version of an existing file, after everything that can be wrong with it has been looked at. Changes nothing. */
const examine = async (file: string, names: readonly string[]): Promise<number> => {
  if (!statSync(file).isFile() || firstBytes(file) !== 'SQLite format 3\0') {
    throw new OpeningRefused('not-a-workspace', `${file} is not a Fieldback workspace. Choose another file.`);
  }
  if (await sealIsBroken(file)) {
    throw new OpeningRefused(
      'damaged',
      `The workspace ${file} has changed on its disk without any program writing to it, and was not opened. The disk may be failing.`,
    );
  }
  const database = new Database(file, { fileMustExist: true, timeout: ownWaitMs });
  try {
    const version = database.pragma('user_version', { simple: true }) as number;
    const id = database.pragma('application_id', { simple: true }) as number;
    const tables = database.prepare('select name from sqlite_schema where type = ?').pluck().all('table') as string[];
    // A program that ended while it began a workspace leaves a file without our tables: it is begun again.
    if (id === 0 && tables.every((name) => name.startsWith('kysely_'))) return 0;
    if (id !== workspaceId) {
      throw new OpeningRefused('not-a-workspace', `${file} is a database of another program. Choose another file.`);
    }
    refuseNewer(database, file, version, names);
    checkWhole(database, file);
    return version;
  } finally {
    database.close();
  }
};

const firstBytes = (file: string): string => {
  const bytes = Buffer.alloc(16);
  const handle = openSync(file, 'r');
  try {
    readSync(handle, bytes, 0, 16, 0);
  } finally {
    closeSync(handle);
  }
  return bytes.toString('latin1');
};

const refuseNewer = (database: Database.Database, file: string, version: number, names: readonly string[]): void => {
  const has = database.prepare('select name from kysely_migration').pluck().all() as string[];
  const unknown = has.filter((name) => !names.includes(name));
  if (version <= names.length && unknown.length === 0) return;
  throw new OpeningRefused(
    'newer',
    `${file} was written by a newer Fieldback (version ${version} of the file; this program knows ${names.length}). ` +
      'Update Fieldback to open it. Nothing was changed.',
  );
};

const checkWhole = (database: Database.Database, file: string): void => {
  const damage = (database.pragma('integrity_check(3)') as { integrity_check: string }[]).map((row) => row.integrity_check);
  const orphans = database.pragma('foreign_key_check') as unknown[];
  if (damage.length === 1 && damage[0] === 'ok' && orphans.length === 0) return;
  throw new OpeningRefused('damaged', damagedWords(file));
};

const damagedWords = (file: string): string => `The workspace ${file} is damaged and was not opened. Nothing was changed.`;

/**
 * WAL lets others read while one writes. `synchronous = full` because a change that was answered is evidence: it must be there after a
 * power cut, and with some writes a minute the extra flush costs nothing that a person notices.
 */
const setUp = (database: Database.Database): void => {
  database.pragma('journal_mode = wal');
  database.pragma('synchronous = full');
  database.pragma('foreign_keys = on');
  database.pragma('trusted_schema = off');
  database.pragma('cell_size_check = on');
  // What migrations know frozen runs by, since they import nothing; `direct_only` keeps it out of the file's own schema.
  database.function('unpacked', { deterministic: true, directOnly: true }, (bytes) => unpacked(bytes as Uint8Array));
};

const migrate = async (kysely: Kysely<Tables>, file: string, all: Readonly<Record<string, Migration>>): Promise<void> => {
  const migrator = new Migrator({ db: kysely, provider: { getMigrations: () => Promise.resolve({ ...all }) } });
  const { error } = await migrator.migrateToLatest();
  if (!error) return;
  if (isBusy(error) || refusalOf(error, file)) throw error;
  throw new OpeningRefused(
    'migration-failed',
    `${file} could not be brought to this version of Fieldback (${error instanceof Error ? error.message : String(error)}). It was left as it was.`,
  );
};

/** Marks a workspace as begun and fills it, both or neither; a second program that begins it at the same time finds it done. */
const begin = async (kysely: Kysely<Tables>, wishes: OpeningWishes): Promise<void> => {
  const begun = await kysely.selectFrom('workspace').select('started_at').executeTakeFirst();
  if (begun) return;
  await kysely.transaction().execute(async (work) => {
    if (await work.selectFrom('workspace').select('started_at').executeTakeFirst()) return;
    await work
      .insertInto('workspace')
      .values({ only_row: 1, started_at: new Date(wishes.now()).toISOString() })
      .execute();
    await wishes.fill(contentsIn(work));
  });
};

/** Thrown to roll back a transaction whose work answered with a refusal. */
class Refused extends Error {
  readonly answer: unknown;

  constructor(answer: unknown) {
    super('rolled back');
    this.answer = answer;
  }
}

const isRefusal = (result: unknown): boolean => (result as { ok?: unknown } | null)?.ok === false;

const storeOn = (kysely: Kysely<Tables>, wishes: OpeningWishes): OpenStore => {
  const { file, now, copies } = wishes;
  const copyNow = async (reason: 'asked' | 'scheduled'): Promise<CopyLine> => {
    const path = await makeCopy(file, now(), reason);
    pruneCopies(file, copies.keep);
    return copyLines(file).find((copy) => copy.path === path)!;
  };
  const pragma = async (name: string): Promise<number> => {
    const { rows } = await kysely.executeQuery<Record<string, number>>(CompiledQuery.raw(`pragma ${name}`));
    return Object.values(rows[0]!)[0]!;
  };
  const size = async (): Promise<FileSize> => {
    const page = await pragma('page_size');
    return { bytes: page * (await pragma('page_count')), spare: page * (await pragma('freelist_count')) };
  };
  /**
   * Moves what was confirmed from the write-ahead log into the file itself, so that the file alone holds it: people copy and mail one
   * file, and tools that tidy up take the log for rubbish. A reader elsewhere may hold it up; then the next write does it.
   */
  const settle = async (mode: 'passive' | 'truncate'): Promise<void> => {
    try {
      await kysely.executeQuery(CompiledQuery.raw(`pragma wal_checkpoint(${mode})`));
    } catch (error) {
      if (!isBusy(error)) wishes.log(`the write-ahead log of ${file} was not moved into it: ${String(error)}`);
    }
  };
  return {
    file,
    schemaVersion: namesOf(wishes).at(-1)!,
    read: (work) =>
      kysely
        .transaction()
        .setAccessMode('read only')
        .execute((transaction) => work(contentsIn(transaction))),
    write: async <Result>(work: (contents: Contents) => Promise<Result>): Promise<Result> => {
      try {
        const result = await kysely.transaction().execute(async (transaction) => {
          const result = await work(contentsIn(transaction));
          if (isRefusal(result)) throw new Refused(result);
          return result;
        });
        await settle('passive');
        return result;
      } catch (error) {
        if (error instanceof Refused) return error.answer as Result;
        throw error;
      }
    },
    size,
    copies: () => copyLines(file),
    copyNow,
    compact: async () => {
      const before = await size();
      await whileBusy(wishes.waitMs, () => kysely.executeQuery(CompiledQuery.raw('vacuum')));
      await settle('truncate');
      return { before, after: await size() };
    },
    copyIfDue: async () => {
      try {
        if (copyIsDue(file, now(), copies.everyMs)) await copyNow('scheduled');
      } catch (error) {
        wishes.log(`the scheduled copy of ${file} was not made: ${String(error)}`);
      }
    },
    close: async () => {
      await kysely.destroy();
      // The file is closed and whole: a seal that cannot be written costs nothing but its warning.
      await seal(file).catch((error: unknown) => wishes.log(`${file} was not sealed: ${String(error)}`));
    },
  };
};

/** What an error of the database or the disk means for somebody who opens a file; null when it means nothing we know. */
const refusalOf = (error: unknown, file: string): OpeningRefused | null => {
  const code = String((error as { code?: unknown } | null)?.code ?? '');
  if (isBusy(error)) {
    return new OpeningRefused(
      'locked',
      `Another program holds the workspace ${file}. Close it there or wait, then open it again.`,
    );
  }
  // A short read is a file that ends before it says it does: it was cut.
  if (/^SQLITE_(CORRUPT|NOTADB|IOERR_SHORT_READ)/.test(code)) return new OpeningRefused('damaged', damagedWords(file));
  if (/^SQLITE_(FULL)|ENOSPC|EDQUOT/.test(code)) {
    return new OpeningRefused(
      'disk-full',
      `The disk is full: the workspace ${file} cannot be opened for work. Free some space first.`,
    );
  }
  if (/^SQLITE_READONLY|EROFS|EACCES|EPERM/.test(code)) {
    return new OpeningRefused(
      'read-only',
      `The workspace ${file} cannot be written. Choose another place or change the permission.`,
    );
  }
  if (/^SQLITE_(IOERR|CANTOPEN)|EIO|EISDIR|ENOTDIR/.test(code)) {
    return new OpeningRefused('unreadable', `The workspace ${file} cannot be read from its disk. Check the path and the disk.`);
  }
  return null;
};
