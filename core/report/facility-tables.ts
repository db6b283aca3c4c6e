import { descentRateFpm } from '../facility/descent-rate.ts';
import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import { glidepathFeet, localizerFeet } from '../facility/needle-feet.ts';
import { distanceAtGlidepathAltitudeNm, glidepathAltitudeFt } from '../facility/path-altitude.ts';
import { whole } from '../units/whole.ts';
import { readingFeet, roundTo } from './reading-feet.ts';
import { textCells, textRow } from './text-rows.ts';

const NEEDLE_DISTANCES_NM = [0, 1, 3, 5] as const;
const PATH_DISTANCES_NM = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10] as const;
const GROUNDSPEEDS_KT = [70, 80, 90, 100, 110, 120, 130, 140, 150] as const;
const NEEDLE_COLUMN = 11;
const PATH_COLUMN = 7;

/** What a facility means in flight, block by block: needle widths in feet, the path's altitudes, sink rates. */
export function facilityTables(geometry: FacilityGeometry): string[][] {
  return [needleTable(geometry), altitudeTable(geometry), descentTable(geometry)];
}

function needleTable(geometry: FacilityGeometry): string[] {
  const line = (label: string, feet: typeof localizerFeet, fraction: number): string => {
    const values = NEEDLE_DISTANCES_NM.map((nm) => readingFeet(feet(geometry, nm, fraction)));
    return textCells(label, values, NEEDLE_COLUMN);
  };
  return [
    'What the needles mean, in feet (a dot is one of two)',
    textCells('', ['threshold', '1 NM', '3 NM', '5 NM'], NEEDLE_COLUMN),
    line('Localizer, one dot', localizerFeet, 0.5),
    line('Localizer, full scale', localizerFeet, 1),
    line('Glidepath, one dot', glidepathFeet, 0.5),
    line('Glidepath, full scale', glidepathFeet, 1),
  ];
}

function altitudeTable(geometry: FacilityGeometry): string[] {
  const altitudes = PATH_DISTANCES_NM.map((nm) => readingFeet(glidepathAltitudeFt(geometry, nm)));
  return [
    'Where the path is, in feet above sea level (with the curve of the earth)',
    textCells('NM to the threshold', PATH_DISTANCES_NM, PATH_COLUMN),
    textCells('Altitude of the path', altitudes, PATH_COLUMN),
    fixRow(geometry),
    decisionRow(geometry),
  ];
}

function fixRow(geometry: FacilityGeometry): string {
  const { name, distanceNm, altitudeFt } = geometry.finalApproachFix;
  const assumed = geometry.origins.finalApproachFix === 'assumed';
  const where = `${distanceNm.toFixed(1)} NM${name === null ? '' : `, ${name}`}`;
  const path = `path at ${readingFeet(glidepathAltitudeFt(geometry, distanceNm))} ft`;
  const published = altitudeFt === null ? 'no altitude given' : `${whole(altitudeFt)} ft given`;
  return textRow('Final approach fix', where, assumed ? `assumed: ${path}` : `${path}, ${published}`);
}

function decisionRow(geometry: FacilityGeometry): string {
  const { decisionAltitudeFt, touchdownZoneElevationFt } = geometry;
  if (decisionAltitudeFt === null) return textRow('Decision altitude', 'not given');
  const distanceNm = distanceAtGlidepathAltitudeNm(geometry, decisionAltitudeFt);
  const height = whole(decisionAltitudeFt - touchdownZoneElevationFt);
  const remark = `height ${height} ft; the path is there at ${distanceNm.toFixed(2)} NM`;
  return textRow('Decision altitude', `${whole(decisionAltitudeFt)} ft`, remark);
}

function descentTable({ glidepathAngleDeg }: FacilityGeometry): string[] {
  const rates = GROUNDSPEEDS_KT.map((kt) => whole(roundTo(5, descentRateFpm(kt, glidepathAngleDeg))));
  return [
    'Sink rate that holds the path, in ft/min',
    textCells('Groundspeed, kt', GROUNDSPEEDS_KT, PATH_COLUMN),
    textCells('Sink rate', rates, PATH_COLUMN),
  ];
}
