import type { ApproachDebrief } from '../debrief/debrief.ts';

/** The safety limits that were crossed, a sentence each: told right below the first sentence, not in the working alone. */
export function safetySentences({ safety }: Pick<ApproachDebrief, 'safety'>): string[] {
  return safety.map((clause) => `A safety limit was crossed: ${clause}.`);
}
