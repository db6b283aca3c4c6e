import type { Standard } from '../../core/standard/standard.ts';
import { from, type Library } from './library.ts';

export type NamedStandard = Pick<Standard, 'id' | 'title' | 'source'>;

/** The standards by which these approaches were judged, each read once from a debrief that names it. */
export function standardsByKey(
  library: Library,
  rows: readonly { readonly standard_sha256: string; readonly debrief_id: string }[],
): Map<string, NamedStandard> {
  const standards = new Map<string, NamedStandard>();
  for (const { standard_sha256, debrief_id } of rows) {
    if (standards.has(standard_sha256)) continue;
    const { standard } = library.first(
      from.selectFrom('debriefs').select('standard').where('id', '=', debrief_id),
    )!;
    const { id, title, source } = JSON.parse(standard) as Standard;
    standards.set(standard_sha256, { id, title, source });
  }
  return standards;
}
