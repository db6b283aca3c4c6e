import type { Composed } from '../../core/debrief/compose-debrief.ts';
import { usable, type Outcome } from '../../core/issue/issue.ts';
import type { Job as Progress } from '../../core/log/log.ts';
import { debriefMap, geoJsonText } from '../../core/report/debrief-geojson.ts';
import { deviationsCsv } from '../../core/report/deviations-csv.ts';
import { handOverOf, type HandOver } from '../hand-over/hand-over.ts';
import { composedOf } from './composed-of.ts';
import type { KeptLogs } from './kept-logs.ts';
import type { JobInput, SavedFile } from './protocol.ts';

/** What writes the page to hand over: the other files do without. */
export const fetchPage = () => import('../hand-over/hand-over-html.tsx');

/** What the page to hand over is drawn of. */
export async function handOver(
  logs: KeptLogs,
  input: JobInput<'handOver'>,
  job: Progress,
): Promise<Outcome<HandOver>> {
  const composed = await composedOf(logs, input, job);
  return composed.ok ? usable(handOverOf(composed.value, input.sinceLast)) : composed;
}

/** A file of a debrief. */
export async function save(
  logs: KeptLogs,
  input: JobInput<'save'>,
  job: Progress,
): Promise<Outcome<SavedFile>> {
  const composed = await composedOf(logs, input, job);
  if (!composed.ok) return composed;
  const { what } = input;
  if (what === 'page') {
    const { handOverHtml } = await fetchPage();
    const text = handOverHtml([handOverOf(composed.value, input.sinceLast)], input.dots);
    return usable({ ending: 'debrief.html', type: 'text/html', text });
  }
  if (what === 'map') {
    const text = geoJsonText([debriefMap(composed.value)]);
    return usable({ ending: 'debrief.geojson', type: 'application/geo+json', text });
  }
  return usable(deviationsOf(composed.value, input.approach));
}

/** The fixes of one approach, as they were judged. */
function deviationsOf({ sittings }: Composed, index: number): SavedFile {
  const { flown, approach } = sittings[index - 1]!;
  const text = [...deviationsCsv(flown.track, flown.deviations, flown.facility, approach)].join('');
  return { ending: `approach-${index}.deviations.csv`, type: 'text/csv', text };
}
