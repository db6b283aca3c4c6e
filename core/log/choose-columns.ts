import { commonTerms } from './common-terms.ts';
import type { CsvLayout } from './csv-layout.ts';
import type { ColumnRole, LogColumn, LogSettings } from './log.ts';
import { isQuantity, recogniseColumn } from './recognise-column.ts';
import type { Recognised } from './recognise-column.ts';
import { timeRole } from './time-role.ts';
import type { Unit } from './unit-words.ts';

/** A column of a CSV with what is needed to read it. */
export interface CsvColumn extends LogColumn {
  readonly unit: Unit | null;
  /** Terms of its header, see `column-words.ts`. */
  readonly terms: readonly string[];
}

/** Recognises every column of a CSV by header, units and first values; columns that compete are still all there. */
export function candidateColumns(layout: CsvLayout, settings: LogSettings): CsvColumn[] {
  const common = commonTerms(layout.header.names);
  return layout.header.names.map((_, index) => candidateColumn(layout, index, common, settings));
}

function candidateColumn(
  layout: CsvLayout,
  index: number,
  common: ReadonlySet<string>,
  settings: LogSettings,
): CsvColumn {
  const { names, otherNames, units } = layout.header;
  const header = names[index]!;
  const saidUnit = ownValue(settings.units, header);
  const unitCell = saidUnit ?? units[index] ?? '';
  const words = better(recogniseColumn(header, unitCell, common), otherNames[index], unitCell, common);
  const { unit, unitText, terms } = words;
  const said = ownValue(settings.columns, header);
  const isSaid = said !== undefined;
  const role = isSaid ? said : roleOf(words, index, layout);
  const why =
    role === null && words.meaning !== null ? `${words.why}, but its values are no such thing` : words.why;
  const confidence = role === null ? 0 : words.confidence;
  return {
    index,
    header,
    unit,
    unitText: unitText ?? saidUnit ?? null,
    terms,
    role,
    confidence: isSaid ? 1 : confidence,
    why: isSaid ? 'the user said so' : why,
  };
}

/** What a record says under a header; headers come from strangers and may be called "constructor". */
function ownValue<T>(record: Readonly<Record<string, T>> | undefined, header: string): T | undefined {
  return record !== undefined && Object.hasOwn(record, header) ? record[header] : undefined;
}

function better(
  first: Recognised,
  otherName: string | undefined,
  unitCell: string,
  common: ReadonlySet<string>,
): Recognised {
  if (otherName === undefined || otherName === '') return first;
  const second = recogniseColumn(otherName, unitCell, common);
  return second.confidence > first.confidence ? second : first;
}

function roleOf(words: Recognised, index: number, layout: CsvLayout): ColumnRole | null {
  const { meaning } = words;
  if (meaning === null) return null;
  if (isQuantity(meaning)) return meaning;
  const samples = layout.samples.map((cells) => cells[index] ?? '').filter((cell) => cell.trim() !== '');
  return timeRole(words, samples, layout.mark);
}
