import { standardById } from '../../../core/standard/standards.ts';
import type { AppState } from '../../state/app-state.ts';

/** What a standard is called where there is little room; one of the user's own that is not here by its id. */
export function standardWords({ standards }: Pick<AppState, 'standards'>, id: string): string {
  const shipped = standardById(id);
  // What stands behind the comma is the kind of approach, the same for all.
  if (shipped) return shipped.title.split(',')[0]!;
  return standards.find(({ reading }) => reading?.standard?.id === id)?.reading?.standard?.title ?? id;
}
