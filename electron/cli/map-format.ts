import { debriefMap, geoJsonText, type DebriefMap } from '../../core/report/debrief-geojson.ts';
import type { DebriefFormat } from './debrief-formats.ts';

/** For a map. */
export const geojson: DebriefFormat<DebriefMap> = {
  ending: 'geojson',
  partOf: debriefMap,
  written: (map) => geoJsonText([map]),
  allInOne: geoJsonText,
};
