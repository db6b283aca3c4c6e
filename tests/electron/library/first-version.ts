import { copyFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { migrate } from '../../../electron/library/migrate.ts';
import { LIBRARY_FILE } from '../../../electron/library/open-library.ts';
import { rawFile } from './some-library.ts';

const TABLES = ['people', 'lessons', 'facilities', 'logs', 'debriefs', 'documents', 'approaches'];

/** Takes a library back to version 1, with its rows. */
export async function toFirstVersion(folder: string): Promise<void> {
  const path = join(folder, LIBRARY_FILE);
  const present = join(folder, 'present.sqlite');
  copyFileSync(path, present);
  rmSync(path);
  await rawFile(path, (sqlite) => {
    migrate(sqlite, 1);
    sqlite.prepare('ATTACH ? AS present').run(present);
    for (const table of TABLES) {
      const columns = sqlite.prepare(`SELECT name FROM pragma_table_info('${table}', 'main')`).all() as {
        name: string;
      }[];
      const names = columns.map(({ name }) => name).join(', ');
      sqlite.exec(`INSERT INTO main.${table} (${names}) SELECT ${names} FROM present.${table}`);
    }
  });
  rmSync(present);
}
