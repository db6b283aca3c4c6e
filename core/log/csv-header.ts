import { commonTerms } from './common-terms.ts';
import { isUnitCell } from './header-tokens.ts';
import type { ColumnRole } from './log.ts';
import { ownText } from './own-text.ts';
import { recogniseColumn } from './recognise-column.ts';

export interface HeadRow {
  readonly cells: readonly string[];
  readonly line: number;
}

/** The rows that say what the columns are. */
export interface CsvHeader {
  /** Names as the file writes them, padding and comment sign removed. */
  readonly names: readonly string[];
  /** Other names of the same columns, in a row beside; empty when there is none. */
  readonly otherNames: readonly string[];
  /** Units by column; empty when there is no row of units. */
  readonly units: readonly string[];
  readonly line: number;
  readonly unitsLine: number | null;
  /** The first line after all of them. */
  readonly dataLine: number;
  /** How well the names are known; position and time count most. */
  readonly score: number;
  /** Whether both axes of a position are among the names. */
  readonly namesPosition: boolean;
}

/** A name row holds at most this share of cells that begin like a number. */
const DATA_SHARE_MAX = 0.2;
const AXIS_WEIGHT = 20;
const POSITION_SCORE = 2 * AXIS_WEIGHT;
const WEIGHTS: Readonly<Partial<Record<string, number>>> = {
  latDeg: AXIS_WEIGHT,
  lonDeg: AXIS_WEIGHT,
  time: 8,
  epoch: 8,
  elapsed: 8,
};

/** Padding, NULs and a leading comment sign off a cell of a header. */
export function cleanName(cell: string, first: boolean): string {
  const bare = cell.replaceAll('\0', '').trim();
  return first ? bare.replace(/^(?:#|\/\/|%|!)+\s*/, '') : bare;
}

/** Finds the header among the first rows: the row whose names are known best, with its neighbours. */
export function findHeader(
  rows: readonly HeadRow[],
  roles: Readonly<Record<string, ColumnRole | null>>,
): CsvHeader | null {
  let best = -1;
  let bestScore = 0;
  for (const [i, row] of rows.entries()) {
    const score = isNameRow(row.cells) ? scoreOf(row.cells, roles) : 0;
    if (score <= bestScore) continue;
    best = i;
    bestScore = score;
  }
  return best === -1 ? null : headerAt(rows, best, bestScore);
}

/** Whether a row is a header of fixes itself. */
export function namesPosition(row: HeadRow): boolean {
  return isNameRow(row.cells) && scoreOf(row.cells, {}) >= POSITION_SCORE;
}

function headerAt(rows: readonly HeadRow[], at: number, score: number): CsvHeader {
  const { cells, line } = rows[at]!;
  const beside = [at - 1, at + 1].flatMap((i) => {
    const row = rows[i];
    const adjacent =
      row !== undefined &&
      isNameRow(row.cells) &&
      Math.abs(row.cells.length - cells.length) <= cells.length * 0.2;
    return adjacent ? [row] : [];
  });
  const units = beside.find((row) => isUnitRow(row.cells));
  const other = beside.find((row) => row !== units && !isUnitRow(row.cells));
  const names = cleanRow(cells);
  return {
    names,
    otherNames: other === undefined ? [] : cleanRow(other.cells),
    units: units === undefined ? [] : cleanRow(units.cells),
    line,
    unitsLine: units?.line ?? null,
    dataLine: Math.max(line, units?.line ?? 0, other?.line ?? 0) + 1,
    score,
    namesPosition: score >= POSITION_SCORE,
  };
}

function cleanRow(cells: readonly string[]): string[] {
  return cells.map((cell, i) => ownText(cleanName(cell, i === 0)));
}

function isNameRow(cells: readonly string[]): boolean {
  let filled = 0;
  let likeData = 0;
  for (const cell of cells) {
    const text = cell.trimStart();
    if (text === '') continue;
    filled++;
    if (/^[+-]?[.,]?\d/.test(text)) likeData++;
    if (likeData > cells.length * DATA_SHARE_MAX) return false;
  }
  return filled >= 2 && likeData <= filled * DATA_SHARE_MAX;
}

/** At least half of its cells are units. */
function isUnitRow(cells: readonly string[]): boolean {
  const filled = cells.map((cell, i) => cleanName(cell, i === 0)).filter((cell) => cell !== '');
  return filled.filter((cell) => isUnitCell(cell)).length * 2 >= filled.length;
}

function scoreOf(cells: readonly string[], roles: Readonly<Record<string, ColumnRole | null>>): number {
  const names = cells.map((cell, i) => cleanName(cell, i === 0)).filter((name) => name !== '');
  const common = commonTerms(names);
  const meanings = new Set<string>();
  for (const name of names) {
    const role = Object.hasOwn(roles, name) ? roles[name] : recogniseColumn(name, '', common).meaning;
    if (role !== null && role !== undefined) meanings.add(role);
  }
  let score = 0;
  for (const meaning of meanings) score += WEIGHTS[meaning] ?? (meaning.startsWith('altitude') ? 4 : 1);
  return score;
}
