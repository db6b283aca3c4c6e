import { fly } from '../flight/fly.ts';
import { AUGMENTED } from '../flight/gnss-error.ts';
import { PANEL } from '../flight/altimeter-error.ts';
import { csvText } from '../files/csv.ts';
import { englishLayout } from '../files/csv-layouts.ts';
import { gpxText } from '../files/gpx.ts';
import { recordFlight } from '../files/logged-fix.ts';
import { FIRST_APPROACH } from './first-approach.ts';
import { PETRELHOLM } from './petrelholm.ts';

/** Every file that the generator makes, by its path inside samples/. */
export function sampleFiles(): Map<string, string> {
  const fixes = recordFlight(fly(FIRST_APPROACH), { rateHz: 1, gnss: AUGMENTED, altimeter: PANEL });
  return new Map([
    ['petrelholm-ils-07.json', `${JSON.stringify(PETRELHOLM, null, 2)}\n`],
    ['first-approach.csv', csvText(englishLayout(), fixes)],
    ['first-approach.gpx', gpxText({ version: '1.1', trackName: 'First approach', motion: true }, fixes)],
  ]);
}
