import { usable, type Outcome } from '../issue/issue.ts';
import type { FileFormat } from '../json/file-format.ts';
import { parseJsonFile } from '../json/parse-json-file.ts';
import { completeStandard } from './complete-standard.ts';
import { impossibleStandard } from './impossible-standard.ts';
import { STANDARD_FORMAT, standardSchema, type StandardFile } from './standard-schema.ts';
import type { Standard } from './standard.ts';

const STANDARD_FILE: FileFormat<StandardFile> = {
  noun: 'standard',
  format: STANDARD_FORMAT,
  schema: standardSchema,
  impossible: impossibleStandard,
};

/**
 * Reads a user's own standard (`halfdot-standard/1`, JSON). Everything that is wrong with the file is told, the first
 * as the refusal and all in `issues`, each with its full key and the line of the file.
 */
export function parseStandard(text: string, fileName: string): Outcome<Standard> {
  const parsed = parseJsonFile(text, fileName, STANDARD_FILE);
  return parsed.ok ? usable(completeStandard(parsed.value)) : parsed;
}
