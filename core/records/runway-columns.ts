/** The columns of the open airports dataset's runways that are read, as its data dictionary names them. */
const NEEDED = [
  'airport_ident',
  'closed',
  'le_ident',
  'le_latitude_deg',
  'le_longitude_deg',
  'le_displaced_threshold_ft',
  'he_ident',
  'he_latitude_deg',
  'he_longitude_deg',
  'he_displaced_threshold_ft',
] as const;
/** Without these a draft says less. */
const WELCOME = [
  'length_ft',
  'width_ft',
  'surface',
  'le_elevation_ft',
  'le_heading_degT',
  'he_elevation_ft',
  'he_heading_degT',
] as const;

export type RunwayColumn = (typeof NEEDED)[number] | (typeof WELCOME)[number];

export interface RunwayColumns {
  /** Place of each column in a row, counted from 0; −1 where the table has none. */
  readonly at: Readonly<Record<RunwayColumn, number>>;
  /** Cells that a row needs to have. */
  readonly cellsNeeded: number;
}

/** The columns of a header; or the names that it lacks, or has twice. */
export type RecognisedColumns =
  | { readonly columns: RunwayColumns }
  | { readonly missing: readonly string[]; readonly twice: readonly string[] };

/** Finds the columns by their names, whatever their order and whatever else stands among them. */
export function runwayColumns(header: readonly string[]): RecognisedColumns {
  const keys = header.map(keyOf);
  const placeOf = (name: string) => keys.indexOf(keyOf(name));
  const all = [...NEEDED, ...WELCOME];
  const missing = NEEDED.filter((name) => placeOf(name) === -1);
  const twice = all.filter((name) => placeOf(name) !== keys.lastIndexOf(keyOf(name)));
  if (missing.length > 0 || twice.length > 0) return { missing, twice };
  const at = Object.fromEntries(all.map((name) => [name, placeOf(name)])) as RunwayColumns['at'];
  return { columns: { at, cellsNeeded: 1 + Math.max(...NEEDED.map(placeOf)) } };
}

/** How many of the needed columns a header names: tells a table of runways from any other text. */
export function columnsNamed(header: readonly string[]): number {
  const keys = new Set(header.map(keyOf));
  return NEEDED.filter((name) => keys.has(keyOf(name))).length;
}

/** Spaces and capitals are no part of a name: spreadsheets change them. */
function keyOf(name: string): string {
  return name.toLowerCase().replaceAll(/[^a-z0-9]/g, '');
}
