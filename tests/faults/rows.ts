import Database from 'better-sqlite3';

/** Every row of every table, by table: columns by name, bytes as text. */
export type Rows = Readonly<Record<string, readonly Readonly<Record<string, unknown>>[]>>;

const read = (
  file: string,
  columns: (database: Database.Database, table: string) => readonly string[],
  tables?: readonly string[],
): Rows => {
  const database = new Database(file, { readonly: true, fileMustExist: true });
  try {
    const all =
      tables ??
      (database
        .prepare(
          "select name from sqlite_schema where type = 'table' and name not like 'kysely_%' and name not like 'sqlite_%' order by 1",
        )
        .pluck()
        .all() as string[]);
    return Object.fromEntries(
      all.map((table) => [
        table,
        (
          database.prepare(`select ${columns(database, table).join(', ')} from ${table} order by 1, 2`).all() as Record<
            string,
            unknown
          >[]
        ).map((row) =>
          Object.fromEntries(
            Object.entries(row).map(([name, value]) => [name, Buffer.isBuffer(value) ? value.toString('base64') : value]),
          ),
        ),
      ]),
    );
  } finally {
    database.close();
  }
};

const columnsOf = (database: Database.Database, table: string): readonly string[] =>
  (database.pragma(`table_info(${table})`) as { name: string }[]).map(({ name }) => name);

export const rowsOf = (file: string): Rows => read(file, columnsOf);

/** The same tables and columns as in `before`, as they stand in a file now: what a migration must have kept. */
export const oldRowsOf = (file: string, before: Rows): Rows => {
  const columns = (database: Database.Database, table: string): readonly string[] => {
    const [first] = before[table]!;
    return first ? Object.keys(first) : columnsOf(database, table);
  };
  return read(file, columns, Object.keys(before));
};
