import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { analyze, defineFacility, type DefinedFacility } from '../../core/analyze.ts';
import type { Material } from '../../core/debrief/compose-debrief.ts';
import { usable, type Issue, type Outcome } from '../../core/issue/issue.ts';
import type { LogSettings } from '../../core/log/log.ts';
import { TextDecoding } from '../files/decode-text.ts';
import { cannotRead } from '../files/file-problems.ts';
import { openLog } from '../files/open-log.ts';
import { EXIT, type ExitStatus, type Output } from './command.ts';
import { issueLine } from './issue-lines.ts';

/** Reads and checks a facility file. */
export function readFacility(path: string): Outcome<DefinedFacility> {
  const text = readText(path);
  return text.ok ? defineFacility(text.value, basename(path)) : text;
}

/** The whole text of a small file, without its mark. */
export function readText(path: string): Outcome<string> {
  let bytes: Uint8Array;
  try {
    bytes = readFileSync(path);
  } catch (error) {
    return cannotRead(path, error);
  }
  const decoding = new TextDecoding();
  const text = decoding.decode(bytes) + decoding.end();
  return usable(text.replace(/^\uFEFF/, ''));
}

/** Reads a log and projects it on a facility. */
export async function readMaterial(
  path: string,
  facility: DefinedFacility,
  settings: LogSettings,
  output: Output,
): Promise<Outcome<Material>> {
  const source = openLog(path);
  if (!source.ok) return source;
  return analyze(source.value, facility, settings, output.job(`Reading ${source.value.name}`));
}

/** Says why an input cannot be used: the one sentence, and the status that goes with it. */
export function refuse({ message, tip }: Issue, output: Output): ExitStatus {
  output.message(`halfdot: ${message}${tip ? ` ${tip}` : ''}`);
  return EXIT.unusable;
}

/** Says what is worth knowing about an input that can be used. */
export function tell(issues: readonly Issue[], output: Output): void {
  for (const issue of issues) output.message(issueLine(issue));
}
