import { commonTerms } from './common-terms.ts';
import type { CsvLayout } from './csv-layout.ts';
import type { ColumnRole, LogColumn, LogSettings } from './log.ts';
import { isQuantity } from './quantity-rules.ts';
import { recogniseColumn } from './recognise-column.ts';
import type { Recognised } from './recognise-column.ts';
import { saidOf } from './said-of.ts';
import { unitInWords } from './stated-units.ts';
import { timeRole } from './time-role.ts';
import type { Unit } from './unit-words.ts';

/** A column of a CSV with what is needed to read it. */
export interface CsvColumn extends Omit<LogColumn, 'unitRead'> {
  /** The user's, else the header's. */
  readonly unit: Unit | null;
  readonly headerUnit: Unit | null;
  readonly isUnitStated: boolean;
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
  const header = layout.header.names[index]!;
  const { words, headerUnit, statedUnit } = wordsAndUnit(layout, index, common, settings);
  const said = saidOf(settings.columns, header);
  const role = said === undefined ? roleOf(words, index, layout) : said;
  const confidence = role === null ? 0 : words.confidence;
  return {
    index,
    header,
    unit: statedUnit ?? headerUnit,
    headerUnit,
    isUnitStated: statedUnit !== null,
    unitText: words.unitText,
    terms: words.terms,
    role,
    confidence: said === undefined ? confidence : 1,
    why: whyFor(words, role, said !== undefined, statedUnit),
  };
}

/** What a header says, with the unit that the user states for it where that makes sense of it. */
function wordsAndUnit(
  { header: { names, otherNames, units } }: CsvLayout,
  index: number,
  common: ReadonlySet<string>,
  settings: LogSettings,
) {
  const header = names[index]!;
  const recognise = (stated: Unit | null) => {
    const unitCell = units[index] ?? '';
    const first = recogniseColumn(header, unitCell, common, stated);
    const other = otherNames[index] ?? '';
    return other === '' ? first : surer(first, recogniseColumn(other, unitCell, common, stated));
  };
  const ofHeader = recognise(null);
  const statedUnit = unitInWords(saidOf(settings.units, header) ?? '') ?? null;
  const withStated = statedUnit === null ? ofHeader : recognise(statedUnit);
  // One that makes no sense stays with what the header says, so that it can be refused.
  const words = withStated.meaning === null ? ofHeader : withStated;
  return { words, headerUnit: ofHeader.unit, statedUnit };
}

function surer(first: Recognised, second: Recognised): Recognised {
  return second.confidence > first.confidence ? second : first;
}

function whyFor(
  { why, meaning }: Recognised,
  role: ColumnRole | null,
  isSaid: boolean,
  statedUnit: Unit | null,
): string {
  const unitWords = statedUnit === null ? '' : ` in ${statedUnit.name}`;
  if (isSaid)
    return statedUnit === null ? 'the user said so' : `the user said so, and that it is${unitWords}`;
  if (role === null) return meaning === null ? why : `${why}, but its values are no such thing`;
  return statedUnit === null ? why : `${why}; the user said that it is${unitWords}`;
}

function roleOf(words: Recognised, index: number, layout: CsvLayout): ColumnRole | null {
  const { meaning } = words;
  if (meaning === null) return null;
  if (isQuantity(meaning)) return meaning;
  const samples = layout.samples.map((cells) => cells[index] ?? '').filter((cell) => cell.trim() !== '');
  return timeRole(words, samples, layout.mark);
}
