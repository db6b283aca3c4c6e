import type { CsvColumn } from './choose-columns.ts';
import type { DecimalMark } from './parse-number.ts';
import type { PositionPlace } from './position-reader.ts';

/** Where the position stands in rows whose columns are settled. */
export function positionPlace(
  columns: readonly CsvColumn[],
  samples: readonly (readonly string[])[],
  mark: DecimalMark,
): PositionPlace {
  const lat = columns.find((column) => column.role === 'latDeg')!;
  const lon = columns.find((column) => column.role === 'lonDeg')!;
  return {
    latIndex: lat.index,
    lonIndex: lon.index,
    latFactor: factorOf(lat),
    lonFactor: factorOf(lon),
    latLetterIndex: letterIndex(lat.index, 'NS', samples),
    lonLetterIndex: letterIndex(lon.index, 'EW', samples),
    mark,
  };
}

function factorOf({ unit }: CsvColumn): number {
  return unit?.dimension === 'angle' ? unit.factor : 1;
}

/** The column right of a position's that holds nothing but hemisphere letters; null when it does not. */
function letterIndex(index: number, letters: string, samples: readonly (readonly string[])[]): number | null {
  const cells = samples
    .map((row) => (row[index + 1] ?? '').trim().toUpperCase())
    .filter((cell) => cell !== '');
  return cells.length > 0 && cells.every((cell) => cell.length === 1 && letters.includes(cell))
    ? index + 1
    : null;
}
