import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { generateSQLiteDrizzleJson, generateSQLiteMigration } from 'drizzle-kit/api';
import { getTableColumns } from 'drizzle-orm';
import { getTableConfig, SQLiteTable } from 'drizzle-orm/sqlite-core';
import { describe, expect, it } from 'vitest';
import { migrationsFolder, readJournal } from '../../src/store/migrations.ts';
import * as schema from '../../src/store/schema.ts';

const meta = (file: string) => JSON.parse(readFileSync(join(migrationsFolder(), 'meta', file), 'utf8'));
const tables = Object.values(schema).filter((table) => table instanceof SQLiteTable);

describe('the migrations', () => {
  it('end at the schema: generating would write nothing', async () => {
    const { entries } = meta('_journal.json');
    const last = meta(`${String(entries.length - 1).padStart(4, '0')}_snapshot.json`);
    const now = await generateSQLiteDrizzleJson(schema, last.id);
    expect(await generateSQLiteMigration(last, now)).toEqual([]);
  });

  it('have times that rise', () => {
    expect(readJournal(migrationsFolder()).length).toBeGreaterThan(0);
    const whens: number[] = meta('_journal.json').entries.map(({ when }: { when: number }) => when);
    expect(whens).toEqual([...new Set(whens)].toSorted((a, b) => a - b));
  });
});

describe('the schema', () => {
  it('puts the club first in every key and index', () => {
    for (const table of tables) {
      const { name, primaryKeys, indexes } = getTableConfig(table);
      // The clubs themselves, and what is about the whole file.
      if (name === 'club' || name === 'upkeep') continue;
      expect(Object.keys(getTableColumns(table))[0], name).toBe('club');
      const firsts = [
        ...primaryKeys.map((key) => key.columns[0]),
        ...indexes.map((index) => index.config.columns[0]),
      ];
      expect(firsts.length, name).toBeGreaterThan(0);
      for (const first of firsts) expect(first && 'name' in first && first.name, name).toBe('club_id');
    }
  });
});
