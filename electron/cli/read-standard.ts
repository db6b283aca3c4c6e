import { basename } from 'node:path';
import { refused, usable, type Outcome } from '../../core/issue/issue.ts';
import { parseStandard } from '../../core/standard/parse-standard.ts';
import type { Standard } from '../../core/standard/standard.ts';
import { DEFAULT_STANDARD, SHIPPED, standardById } from '../../core/standard/standards.ts';
import { readText } from './read-input.ts';

/** The standard of that id, or of a user's own file; the default when nothing is named. */
export function readStandard(named: string | undefined): Outcome<Standard> {
  if (named === undefined) return usable(DEFAULT_STANDARD);
  const shipped = standardById(named);
  if (shipped) return usable(shipped);
  if (!/[./\\]/.test(named))
    return refused('arguments', `There is no standard "${named}".`, {
      tip: `Use ${SHIPPED.map(({ id }) => id).join(', ')}, or name a file of your own.`,
    });
  const text = readText(named);
  return text.ok ? parseStandard(text.value, basename(named)) : text;
}
