import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { fuzz } from '../../fuzz/mutated.ts';
import { checkLibrary } from '../../../electron/library/check-library.ts';
import { command, libraryOf, manyLogs, newFolder, opened } from '../library/some-library.ts';

it('a broken export is taken in or refused with a sentence, and the library stays whole', async () => {
  const from = await libraryOf(manyLogs(2));
  const good = join(newFolder(), 'export');
  expect(await command(from, 'export', good)).toMatchObject({ status: 0 });
  const seed = readFileSync(join(good, 'library.jsonl'), 'utf8');
  const [bad, into] = [join(newFolder(), 'export'), await libraryOf(manyLogs(1), 'Hazel Wren')];
  cpSync(good, bad, { recursive: true });
  await fuzz('export', [seed], 100, async (text) => {
    writeFileSync(join(bad, 'library.jsonl'), text);
    const { status, messages } = await command(into, 'import', bad);
    expect([0, 2]).toContain(status);
    if (status === 2) expect(messages.join()).toMatch(/\.$/);
  });
  const faults = await opened(into, async (library) => (await checkLibrary(library, async () => {})).faults);
  expect(faults).toEqual([]);
}, 3_600_000);
