/** Every column of a table at once, for statements that are prepared once. */
import { getTableColumns, type Placeholder, type SQL, sql } from 'drizzle-orm';
import type { SQLiteTable } from 'drizzle-orm/sqlite-core';

type Placeholders<T extends SQLiteTable> = { [Column in keyof T['_']['columns']]: Placeholder };

/** Each column's placeholder has the column's name in the schema. */
export function placeholders<T extends SQLiteTable>(table: T): Placeholders<T> {
  const names = Object.keys(getTableColumns(table));
  return Object.fromEntries(names.map((name) => [name, sql.placeholder(name)])) as Placeholders<T>;
}

type Settings<T extends SQLiteTable> = { [Column in keyof T['_']['columns']]: SQL };

/** The same for the `set` of an update, which does not take bare placeholders. */
export function settings<T extends SQLiteTable>(table: T): Settings<T> {
  const columns = Object.entries(getTableColumns(table));
  const set = columns.map(([name, column]) => [name, sql`${sql.param(sql.placeholder(name), column)}`]);
  return Object.fromEntries(set) as Settings<T>;
}

/** The same for the `set` of an insert that finds its key taken: everything as it was to be inserted. */
export function inserted<T extends SQLiteTable>(table: T): Settings<T> {
  const columns = Object.entries(getTableColumns(table));
  const set = columns.map(([name, column]) => [name, sql.raw(`excluded.${column.name}`)]);
  return Object.fromEntries(set) as Settings<T>;
}
