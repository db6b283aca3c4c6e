import { refused, usable, type Outcome } from '../../core/issue/issue.ts';
import { parseStandard } from '../../core/standard/parse-standard.ts';
import type { Standard } from '../../core/standard/standard.ts';
import { standardById } from '../../core/standard/standards.ts';
import type { StandardAsked, StandardReading, StandardText } from './protocol.ts';

/** How the sentences name a file that the app keeps under no name. */
const NAME = 'The standard';

/** The standard that a debrief is asked by, or the sentence why there is none. */
export function standardOf(asked: StandardAsked): Outcome<Standard> {
  if (asked.kind === 'own') return parseStandard(asked.text, NAME);
  // Written by this program, from a standard that it had checked.
  if (asked.kind === 'kept') return usable(JSON.parse(asked.text) as Standard);
  const standard = standardById(asked.id);
  return standard ? usable(standard) : refused('standard-unknown', `There is no standard "${asked.id}".`);
}

/** What the text of a user's own standard says, with everything that is wrong with it. */
export function standardReading({ id, text }: StandardText): StandardReading {
  const parsed = parseStandard(text, NAME);
  if (parsed.ok) return { id, standard: parsed.value, problems: [] };
  return { id, standard: null, problems: parsed.issues.length > 0 ? parsed.issues : [parsed.refusal] };
}
