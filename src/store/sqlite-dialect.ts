import { setTimeout as pause } from 'node:timers/promises';
import type Database from 'better-sqlite3';
import {
  CompiledQuery,
  SqliteAdapter,
  SqliteDialect,
  SqliteDriver,
  type DatabaseConnection,
  type TransactionSettings,
} from 'kysely';

/** Whether an error says that another connection holds the file. */
export const isBusy = (error: unknown): boolean => {
  const code = (error as { code?: unknown } | null)?.code;
  return typeof code === 'string' && (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED'));
};

/** Tries again while another connection holds the file, without holding up the program; the last error goes out. */
export const whileBusy = async <Result>(waitMs: number, attempt: () => Promise<Result> | Result): Promise<Result> => {
  const begun = performance.now();
  for (;;) {
    try {
      return await attempt();
    } catch (error) {
      if (!isBusy(error) || performance.now() - begun >= waitMs) throw error;
      await pause(20);
    }
  }
};

/** ms that SQLite itself waits for a lock; it holds up the whole program, so it is short, and `whileBusy` does the waiting. */
export const ownWaitMs = 50;

/**
 * Takes the write lock when a transaction begins: one that reads first and asks for the lock later is refused at once when another
 * program wrote in between, however long it would have waited. Read-only transactions take no lock.
 */
class LockFirstDriver extends SqliteDriver {
  readonly #database: Database.Database;
  readonly #waitMs: number;

  constructor(database: Database.Database, waitMs: number) {
    super({ database });
    this.#database = database;
    this.#waitMs = waitMs;
  }

  override async beginTransaction(connection: DatabaseConnection, settings?: TransactionSettings): Promise<void> {
    const begin = CompiledQuery.raw(settings?.accessMode === 'read only' ? 'begin' : 'begin immediate');
    await whileBusy(this.#waitMs, () => connection.executeQuery(begin));
  }

  /** A full disk makes SQLite roll back by itself; doing it again would fail and hide the reason. */
  override async rollbackTransaction(connection: DatabaseConnection): Promise<void> {
    if (this.#database.inTransaction) await super.rollbackTransaction(connection);
  }
}

/** SQLite rolls back changes of tables like any other: a migration that fails leaves nothing behind. */
class WholeMigrationAdapter extends SqliteAdapter {
  override get supportsTransactionalDdl(): boolean {
    return true;
  }
}

/** SQLite for Kysely, for files that several programs share. `waitMs`: how long to wait for another program's write. */
export class SharedFileDialect extends SqliteDialect {
  readonly #database: Database.Database;
  readonly #waitMs: number;

  constructor(database: Database.Database, waitMs: number) {
    super({ database });
    this.#database = database;
    this.#waitMs = waitMs;
  }

  override createDriver(): LockFirstDriver {
    return new LockFirstDriver(this.#database, this.#waitMs);
  }

  override createAdapter(): WholeMigrationAdapter {
    return new WholeMigrationAdapter();
  }
}
