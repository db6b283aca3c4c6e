import { PLACE_CAUTIONS } from '../report/place-cautions.ts';
import { indentedLines, pageLines, textCells } from '../report/text-rows.ts';
import type { Briefing } from './briefing.ts';
import { briefingFacts, type BriefingFact } from './briefing-facts.ts';
import { descentTable, needleTable, pathTable, type BriefingTable } from './briefing-tables.ts';
import { windSentences } from './wind-sentences.ts';
import { briefingMark, facilityWords, missedApproachHead } from './words.ts';

/** The sheet as a page to read, at most 100 columns. Ends with a line end. */
export function briefingText(briefing: Briefing): string {
  const title = pageLines(facilityWords(briefing));
  const blocks = [
    [...title, '='.repeat(title[0]!.length)],
    pageLines(briefingMark(briefing)),
    briefingFacts(briefing).flatMap(factLines),
    [
      ...tableLines(pathTable(briefing), 7),
      ...(briefing.temperatureC === null ? [] : indentedLines('  ', PLACE_CAUTIONS.temperature)),
    ],
    tableLines(descentTable(briefing), 6),
    windSentences(briefing).flatMap(pageLines),
    tableLines(needleTable(briefing), 18),
    [missedApproachHead(briefing), ...briefing.missedApproach.steps.flatMap(stepLines)],
    briefing.objective === null ? [] : indentedLines('Objective: ', briefing.objective),
    listLines('Goals from last time', briefing.goals),
    listLines(
      'To be checked',
      briefing.toCheck.map(({ severity, message, tip }) => `${severity}: ${message}${tip ? ` ${tip}` : ''}`),
    ),
  ];
  const filled = blocks.filter((lines) => lines.length > 0);
  return `${filled.map((lines) => lines.join('\n')).join('\n\n')}\n`;
}

const LABEL_WIDTH = 25;
const VALUE_WIDTH = 22;

function factLines({ label, value, remark }: BriefingFact): string[] {
  return indentedLines(`${label.padEnd(LABEL_WIDTH)}${value.padEnd(VALUE_WIDTH)} `, remark);
}

function tableLines({ title, corner, columns, asked, rows }: BriefingTable, width: number): string[] {
  const head = columns.map((column, i) => (i === asked ? `[${column}]` : column));
  return [
    title,
    textCells(corner, head, width),
    ...rows.map(({ label, cells }) => textCells(label, cells, width)),
  ];
}

function stepLines(step: string, i: number): string[] {
  return indentedLines(`  ${i + 1}. `, step);
}

function listLines(title: string, entries: readonly string[]): string[] {
  return entries.length === 0 ? [] : [title, ...entries.flatMap((entry) => indentedLines('  - ', entry))];
}
