import type { Standard } from '../../core/standard/standard.ts';
import { from, type Library } from './library.ts';

/** The standard by which a debrief was made that is here, by its text; null where none was made by it. */
export function keptStandard(library: Library, text: string): Standard | null {
  const kept = library.first(from.selectFrom('debriefs').select('standard').where('standard', '=', text));
  return kept && (JSON.parse(kept.standard) as Standard);
}
