import { indentedLines, pageLines } from '../../report/text-rows.ts';
import { listed } from '../../units/listed.ts';
import { inSentence } from '../in-sentence.ts';
import { needsSentence, type StudentNeeds } from './needs-by-criterion.ts';
import type { SchoolMeasure } from './school-input.ts';

/** Who needs what, for everybody who needs something, as the beginning of a page. */
export function needsText(needs: readonly StudentNeeds[], measures: readonly SchoolMeasure[]): string {
  const titles = new Map(measures.map(({ id, title }) => [id, inSentence(title)]));
  const lines = needs.flatMap(({ name, criteria }) => {
    const flagged = criteria
      .filter(({ isFlagged }) => isFlagged)
      .map(({ id, verdicts }) => {
        const decided = verdicts.met + verdicts['not-met'];
        return `${titles.get(id)!} (not met in ${verdicts['not-met']} of ${decided})`;
      });
    return flagged.length === 0 ? [] : indentedLines('  ', `${name}: ${listed(flagged)}.`);
  });
  const table = lines.length === 0 ? [] : ['', 'To practise, by the latest three lessons', ...lines];
  return `${[...pageLines(needsSentence(needs, measures)), ...table].join('\n')}\n`;
}
