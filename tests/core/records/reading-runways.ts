import type { Outcome } from '../../../core/issue/issue.ts';
import { runwaysIn } from '../../../core/records/runways-in.ts';
import type { RunwayTable } from '../../../core/records/runway-table.ts';
import { chunksOf, idle } from '../log/reading.ts';

/** Reads a table in chunks of a size, as a host would hand it over. */
export function readTable(
  text: string,
  airport: string | null,
  chunkSize = 1 << 20,
): Promise<Outcome<RunwayTable>> {
  const source = {
    name: 'runways.csv',
    sha256: () => '',
    size: text.length,
    chunks: chunksOf(text, chunkSize),
  };
  return runwaysIn(source, airport, idle);
}

/** A table that must be usable. */
export async function tableOf(text: string, airport: string | null, chunkSize?: number) {
  const outcome = await readTable(text, airport, chunkSize);
  if (!outcome.ok) throw new Error(`refused: ${outcome.refusal.message}`);
  return { ...outcome.value, issues: outcome.issues };
}
