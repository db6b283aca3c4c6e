import { compose, type Composed } from '../../core/debrief/compose-debrief.ts';
import { usable, type Outcome } from '../../core/issue/issue.ts';
import type { Job as Progress } from '../../core/log/log.ts';
import type { KeptLogs } from './kept-logs.ts';
import type { AskedDebrief } from './protocol.ts';
import { standardOf } from './read-standard.ts';

/** A log debriefed as it was asked for: for the page that shows it, and for every file that is made of it. */
export async function composedOf(
  logs: KeptLogs,
  { log, facility, asked }: AskedDebrief,
  job: Progress,
): Promise<Outcome<Composed>> {
  const standard = standardOf(asked.standard);
  if (!standard.ok) return standard;
  const material = await logs.material(log, facility, job);
  if (!material.ok) return material;
  const { stated, heights, antennaHeightFt } = asked;
  return usable(
    compose(material.value, {
      standard: standard.value,
      stated,
      ...(heights && { heights }),
      ...(antennaHeightFt !== null && { antennaHeightFt }),
    }),
  );
}
