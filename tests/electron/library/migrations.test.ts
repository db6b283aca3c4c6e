import { copyFileSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { APPLICATION_ID } from '../../../electron/library/file-header.ts';
import { from } from '../../../electron/library/library.ts';
import { migrate, versionOf } from '../../../electron/library/migrate.ts';
import { MIGRATIONS } from '../../../electron/library/migrations.ts';
import { LIBRARY_FILE } from '../../../electron/library/open-library.ts';
import { BACKED_UP_TABLES } from '../../../electron/library/tables.ts';
import { command, expectWhole, newFolder, opened, rawFile } from './some-library.ts';

/** A person is what every version can hold. */
const PERSON = `INSERT INTO people VALUES ('p1', 'student', 'Rowan Teal', '2026-01-01T00:00:00Z')`;

let schema: unknown;
beforeAll(async () => {
  schema = await schemaOf(await fileOf(MIGRATIONS.length));
});

async function fileOf(version: number): Promise<string> {
  const folder = newFolder();
  await rawFile(join(folder, LIBRARY_FILE), (sqlite) => {
    migrate(sqlite, version);
    sqlite.exec(PERSON);
  });
  return folder;
}

function schemaOf(folder: string): Promise<unknown> {
  return rawFile(join(folder, LIBRARY_FILE), (sqlite) =>
    sqlite.prepare('SELECT type, name, sql FROM sqlite_master ORDER BY name').all(),
  );
}

const EARLIER = MIGRATIONS.map((_, version) => version).filter((version) => version > 0);

describe.each(EARLIER)('a library of version %i', (version) => {
  it('becomes what a new one is, and keeps what it holds', async () => {
    const folder = await fileOf(version);
    expect(await schemaOf(folder)).not.toEqual(schema);
    await opened(folder, (library) => {
      expect(library.version()).toBe(MIGRATIONS.length);
      expect(library.all(from.selectFrom('people').select('name'))).toEqual([{ name: 'Rowan Teal' }]);
    });
    expect(await schemaOf(folder)).toEqual(schema);
    await expectWhole(folder);
  });

  it('is copied first, as it was', async () => {
    const folder = await fileOf(version);
    await opened(folder, () => {});
    const copy = join(folder, `before-version-${MIGRATIONS.length}.sqlite`);
    await rawFile(copy, (sqlite) => {
      expect(versionOf(sqlite)).toBe(version);
      expect(sqlite.prepare('SELECT name FROM people').all()).toEqual([{ name: 'Rowan Teal' }]);
    });
  });

  it('stays as it was where a migration fails', async () => {
    const folder = await fileOf(version);
    // A table of version 4 is in the way, or what is added to one in the last.
    const inTheWay =
      version < 4 ? 'CREATE TABLE measures (x)' : 'ALTER TABLE approach_facts ADD COLUMN by_draft INTEGER';
    await rawFile(join(folder, LIBRARY_FILE), (sqlite) => sqlite.exec(inTheWay));
    const before = await schemaOf(folder);
    await expect(opened(folder, () => {})).rejects.toThrow(/already exists|duplicate column/);
    await rawFile(join(folder, LIBRARY_FILE), (sqlite) => expect(versionOf(sqlite)).toBe(version));
    expect(await schemaOf(folder)).toEqual(before);
  });
});

describe('a file that is no library of this program', () => {
  const untouched = async (folder: string, words: string) => {
    const before = readFileSync(join(folder, LIBRARY_FILE));
    const names = readdirSync(folder);
    const { status, messages } = await command(folder, 'list');
    expect(status).toBe(2);
    expect(messages).toEqual([expect.stringContaining(words)]);
    expect(readFileSync(join(folder, LIBRARY_FILE))).toEqual(before);
    expect(readdirSync(folder)).toEqual(names);
  };

  it('of a newer version is refused with a sentence and not touched', async () => {
    const folder = await fileOf(MIGRATIONS.length);
    const version = MIGRATIONS.length + 1;
    await rawFile(join(folder, LIBRARY_FILE), (sqlite) => sqlite.exec(`PRAGMA user_version = ${version}`));
    await untouched(folder, 'newer version of Halfdot');
  });

  it("of another program's is refused, also without a mark of its own", async () => {
    for (const mark of [APPLICATION_ID + 1, 0]) {
      const folder = newFolder();
      await rawFile(join(folder, LIBRARY_FILE), (sqlite) =>
        sqlite.exec(`CREATE TABLE theirs (x); PRAGMA application_id = ${mark}; PRAGMA user_version = 1`),
      );
      await untouched(folder, 'of another program');
    }
    const folder = newFolder();
    await rawFile(join(folder, LIBRARY_FILE), (sqlite) => sqlite.exec('CREATE TABLE theirs (x)'));
    await expect(opened(folder, () => {})).rejects.toThrow('of another program');
    await rawFile(join(folder, LIBRARY_FILE), (sqlite) =>
      expect(sqlite.prepare('SELECT name FROM sqlite_master').all()).toEqual([{ name: 'theirs' }]),
    );
  });

  it('that is no SQLite file at all is refused', async () => {
    const folder = newFolder();
    writeFileSync(join(folder, LIBRARY_FILE), 'these are no rows\n'.repeat(500));
    await untouched(folder, 'damaged, or no library');
  });

  it('an empty file is a library that was just begun', async () => {
    const folder = newFolder();
    writeFileSync(join(folder, LIBRARY_FILE), '');
    await expectWhole(folder);
  });
});

describe('the tables', () => {
  it('hold those of the record in an order in which each finds what it refers to', async () => {
    const folder = await fileOf(MIGRATIONS.length);
    const copy = join(newFolder(), LIBRARY_FILE);
    copyFileSync(join(folder, LIBRARY_FILE), copy);
    expect(existsSync(copy)).toBe(true);
    await rawFile(copy, (sqlite) => {
      const names = sqlite.prepare("SELECT name FROM sqlite_master WHERE type = 'table'").all() as {
        name: string;
      }[];
      expect(names.map(({ name }) => name).sort()).toEqual([...BACKED_UP_TABLES, 'pending_logs'].sort());
      for (const [i, table] of BACKED_UP_TABLES.entries()) {
        const refers = sqlite.prepare(`PRAGMA foreign_key_list(${table})`).all() as { table: string }[];
        for (const reference of refers) expect(BACKED_UP_TABLES.slice(0, i)).toContain(reference.table);
      }
    });
  });
});
