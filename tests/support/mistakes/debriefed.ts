import { debriefLog, defineFacility } from '../../../core/analyze.ts';
import type { ApproachDebrief } from '../../../core/debrief/debrief.ts';
import { DEFAULT_STANDARD } from '../../../core/standard/standards.ts';
import { NOTHING_STATED } from '../../../core/standard/stated.ts';
import { csvText } from '../files/csv.ts';
import { englishLayout } from '../files/csv-layouts.ts';
import { gpxText } from '../files/gpx.ts';
import { recordFlight } from '../files/logged-fix.ts';
import { PANEL } from '../flight/altimeter-error.ts';
import { fly } from '../flight/fly.ts';
import { AUGMENTED } from '../flight/gnss-error.ts';
import { WAYS } from '../simulate/tally.ts';
import type { MistakenFlight } from './practice-flight.ts';

/** As the panel's recorder has it, with altimeter and airspeed; or as a phone has it, positions alone. */
export type RecordedBy = 'panel' | 'phone';

/** The flight as files, by who recorded it. */
export function filesOf({ plan }: MistakenFlight): Readonly<Record<RecordedBy, string>> {
  const truth = fly(plan);
  const panel = recordFlight(truth, { rateHz: 1, gnss: AUGMENTED, altimeter: PANEL });
  const phone = recordFlight(truth, { rateHz: 1, gnss: WAYS.phone.gnss, altimeter: PANEL, seed: 'phone' });
  return {
    panel: csvText(englishLayout(1), panel),
    phone: gpxText({ version: '1.1', trackName: 'flight', motion: true, timeDecimals: 1 }, phone),
  };
}

const JOB = { progress: () => {}, cancelled: () => false };

/** What the program makes of one of these files. */
export async function debriefed(
  text: string,
  { plan, stated }: MistakenFlight,
): Promise<readonly ApproachDebrief[]> {
  const defined = defineFacility(JSON.stringify(plan.facility), 'facility.json');
  if (!defined.ok) throw new Error(defined.refusal.message);
  const source = { name: 'flight', sha256: () => '', size: text.length, chunks: [text] };
  const judging = { standard: DEFAULT_STANDARD, stated: { ...NOTHING_STATED, ...stated } };
  const debrief = await debriefLog(source, defined.value, {}, JOB, judging);
  if (!debrief.ok) throw new Error(debrief.refusal.message);
  return debrief.value.approaches;
}
