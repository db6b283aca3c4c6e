import { placeAlong } from '../flight/beam-truth.ts';
import type { FacilityFile } from '../flight/facility-file.ts';
import { reciprocalFacility } from '../scenarios/other-runways.ts';
import { CHOUGHFELL } from './choughfell.ts';
import { PETRELHOLM } from './petrelholm.ts';
import { WHIMBRELNESS } from './whimbrelness.ts';

/** The columns of the open airports dataset's runways (its data dictionary). */
export const RUNWAY_HEADER = [
  'id', 'airport_ref', 'airport_ident', 'length_ft', 'width_ft', 'surface', 'lighted', 'closed',
  'le_ident', 'le_latitude_deg', 'le_longitude_deg', 'le_elevation_ft', 'le_heading_degT',
  'le_displaced_threshold_ft',
  'he_ident', 'he_latitude_deg', 'he_longitude_deg', 'he_elevation_ft', 'he_heading_degT',
  'he_displaced_threshold_ft',
] as const;

type Cells = Partial<Record<(typeof RUNWAY_HEADER)[number], string | number>>;

/** What of the pavement of Choughfell lies before the threshold of 32. */
const CHOUGHFELL_DISPLACED_FT = 600;

/** A table as the dataset writes it: texts quoted, numbers not, a line end behind every row. */
export function runwayTableText(rows: readonly Cells[], header: readonly string[] = RUNWAY_HEADER): string {
  const cell = (value: string | number | undefined) => (typeof value === 'string' ? `"${value}"` : (value ?? ''));
  const lines = rows.map((row) => header.map((name) => cell(row[name as keyof Cells])).join(','));
  return `${[header.map((name) => `"${name}"`).join(','), ...lines].join('\n')}\n`;
}

/** The runways of the three invented aerodromes, one that is closed, and one of which nobody entered where it is. */
export const SAMPLE_RUNWAYS: readonly Cells[] = [
  { ...runwayRow(9001, 'ZZPE', PETRELHOLM, 6500, 46), surface: 'ASP' },
  closed(9002, 'ZZPE'),
  { ...turnedRound(runwayRow(9003, 'ZZCH', CHOUGHFELL, 9000, 347, CHOUGHFELL_DISPLACED_FT)), surface: 'CON' },
  { ...runwayRow(9004, 'ZZWH', WHIMBRELNESS, 3900, 116), surface: 'ASP' },
  {
    id: 9005, airport_ref: 905, airport_ident: 'ZZWH', length_ft: 1800, width_ft: 60, surface: 'GRS',
    lighted: 0, closed: 0, le_ident: '04', he_ident: '22',
  },
];

/** A row with a facility's threshold at its low end, its pavement beginning so many feet before it. */
function runwayRow(
  id: number,
  ident: string,
  facility: FacilityFile,
  lengthFt: number,
  headingDeg: number,
  displacedFt = 0,
): Cells {
  const { designator, threshold, farEnd, widthFt } = facility.runway;
  const slope = (farEnd.elevationFt - threshold.elevationFt) / lengthFt;
  const begins = placeAlong(threshold, headingDeg, -displacedFt);
  return {
    id, airport_ref: id - 8100, airport_ident: ident, length_ft: lengthFt + displacedFt, width_ft: widthFt,
    lighted: 1, closed: 0, le_ident: designator,
    le_latitude_deg: sixth(begins.latDeg),
    le_longitude_deg: sixth(begins.lonDeg),
    le_elevation_ft: Math.round(threshold.elevationFt - displacedFt * slope),
    le_heading_degT: headingDeg,
    ...(displacedFt > 0 && { le_displaced_threshold_ft: displacedFt }),
    he_ident: reciprocalFacility(facility).runway.designator,
    he_latitude_deg: sixth(farEnd.latDeg),
    he_longitude_deg: sixth(farEnd.lonDeg),
    he_elevation_ft: farEnd.elevationFt,
    he_heading_degT: (headingDeg + 180) % 360,
  };
}

/** The same runway with its ends the other way round: 14/32, not 32/14. */
function turnedRound(row: Cells): Cells {
  const turned = (name: string) => name.replace(/^[lh]e_/, (end) => (end === 'le_' ? 'he_' : 'le_'));
  return Object.fromEntries(Object.entries(row).map(([name, value]) => [turned(name), value]));
}

function closed(id: number, ident: string): Cells {
  const place = { le_latitude_deg: -31.19, le_longitude_deg: -16.41, he_latitude_deg: -31.195, he_longitude_deg: -16.4 };
  return {
    id, airport_ref: 901, airport_ident: ident, length_ft: 2400, width_ft: 80, surface: 'GRS', lighted: 0,
    closed: 1, le_ident: '14', he_ident: '32', ...place,
  };
}

function sixth(deg: number): number {
  return Number(deg.toFixed(6));
}
