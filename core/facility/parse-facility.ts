import type { Outcome } from '../issue/issue.ts';
import type { FileFormat } from '../json/file-format.ts';
import { jsonFileProblems, parseJsonFile } from '../json/parse-json-file.ts';
import type { JsonProblem } from '../json/problem.ts';
import { FACILITY_FORMAT, facilitySchema, type Facility } from './facility-schema.ts';
import { impossibleValues } from './impossible-values.ts';

const FACILITY_FILE: FileFormat<Facility> = {
  noun: 'facility',
  format: FACILITY_FORMAT,
  schema: facilitySchema,
  impossible: impossibleValues,
  codeOfMissing: (path) => (path.join('.') === 'glidepath' ? 'facility-localizer-only' : null),
};

/**
 * Reads a facility file (`halfdot-facility/1`, JSON). Everything that is wrong with it is told, the first as the
 * refusal and all in `issues`, each with its full key and the line of the file.
 */
export function parseFacility(text: string, fileName: string): Outcome<Facility> {
  return parseJsonFile(text, fileName, FACILITY_FILE);
}

/** Why `parseFacility` refuses a text, each reason with its key, for who shows them beside fields; empty for no JSON. */
export function facilityProblems(text: string): readonly JsonProblem[] {
  return jsonFileProblems(text, FACILITY_FILE);
}
