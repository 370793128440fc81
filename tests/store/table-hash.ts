import { createHash } from 'node:crypto';
import Database from 'better-sqlite3';

/** A hash of every row of every table of a workspace, whoever has it open: equal hashes, nothing changed. */
export const tableHash = (file: string): string => {
  const database = new Database(file, { readonly: true, fileMustExist: true });
  try {
    const hash = createHash('sha256');
    const tables = database.prepare("select name, sql from sqlite_schema where type = 'table' order by name").all() as {
      name: string;
      sql: string;
    }[];
    for (const { name, sql } of tables) {
      hash.update(`${name}\n${sql}\n`);
      for (const row of database.prepare(`select * from "${name}" order by 1, 2`).raw().iterate()) {
        for (const value of row as unknown[]) hash.update(Buffer.isBuffer(value) ? value : `${typeof value} ${String(value)}\n`);
      }
    }
    return hash.digest('hex');
  } finally {
    database.close();
  }
};
