import type { EventKind } from '../approach/flown-approach.ts';
import type { ApproachDebrief, Debrief, DebriefMeasures } from '../debrief/debrief.ts';
import { isBySatellite } from '../track/position-error.ts';
import { whole } from '../units/whole.ts';
import { descentLines } from './descent-lines.ts';
import { duration } from './plain-words.ts';
import { pageLines } from './text-rows.ts';
import { whoFlew } from './who-flew.ts';
import { windSentences } from './wind-lines.ts';

/** The band of a height on a roll (design, section 10). */
const RIGHT_WITHIN_FT = 13;

/** An approach as far as its measures are told of it, and whose they are. */
type Measured = Pick<ApproachDebrief, 'measures' | 'events' | 'segments' | 'stated'>;

/** What was measured of an approach as a whole, as lines of a page. */
export function measureLines(approach: Measured, log: Debrief['log']): string[] {
  return measureSentences(approach, log).flatMap(pageLines);
}

/** The same, in sentences. What the instructor flew is said to be so. */
export function measureSentences(approach: Measured, log: Debrief['log']): string[] {
  const { measures } = approach;
  const { threshold, touchdownDistanceFt, heightLostInMissedApproachFt: lostFt } = measures;
  const found = [...finalSentences(approach), ...windSentences(measures)];
  if (threshold) found.push(`${thresholdWords(threshold, log)}${whoFlewAt(approach, 'threshold')}.`);
  if (touchdownDistanceFt !== null)
    found.push(
      `Touched down about ${whole(toStep(touchdownDistanceFt))} ft past the threshold${whoFlewAt(approach, 'touchdown')}.`,
    );
  if (lostFt !== null)
    found.push(
      `Lost ${whole(lostFt)} ft by ${heightWords(log)} in the missed approach, from where the sink was halved${whoFlewAt(approach, 'missed-approach-start', 'lowest-point')}.`,
    );
  return [...found, ...needleSentences(measures), ...rolloutSentence(measures, log)];
}

/** How final was flown: the rate, the path and the track. */
function finalSentences({ measures, segments, stated: { instructorFlew } }: Measured): string[] {
  const { correctionsOnFinal, sinkOnFinal, descent } = measures;
  const final = segments.find(({ kind }) => kind === 'final');
  const flew = final ? whoFlew(instructorFlew, final.startUtc, final.endUtc) : '';
  const found: string[] = [];
  if (sinkOnFinal)
    found.push(
      `Sink rate on final ${whole(sinkOnFinal.heldFpm)} ft/min; the path needed ${whole(sinkOnFinal.neededFpm)}${flew}.`,
    );
  if (descent) found.push(...descentLines(descent, instructorFlew, flew));
  if (correctionsOnFinal && correctionsOnFinal.count > 0)
    found.push(
      `${changes(correctionsOnFinal.count)} of track on final of 2° or more, ` +
        `${whole(correctionsOnFinal.meanDeg!)}° on average and ${whole(correctionsOnFinal.largestDeg!)}° at most${flew}.`,
    );
  return found;
}

/** The same from one event to another, or at one. */
function whoFlewAt({ events, stated }: Measured, from: EventKind, to = from): string {
  const [fromUtc, toUtc] = [from, to].map((asked) => events.find(({ kind }) => kind === asked)?.utc);
  return fromUtc === undefined ? '' : whoFlew(stated.instructorFlew, fromUtc, toUtc);
}

/** A touchdown is found from the flare on: nearer than this nobody can say. Ours. */
const TOUCHDOWN_STEP_FT = 50;

function toStep(ft: number): number {
  return Math.round(ft / TOUCHDOWN_STEP_FT) * TOUCHDOWN_STEP_FT;
}

/** Which height the path was held against. */
function heightWords({ altitudeReference }: Debrief['log']): string {
  return isBySatellite({ altitudeSource: altitudeReference }) ? 'GNSS height' : 'altimeter height';
}

/** What a roll says of the log's heights. Within a receiver's own error they are right. */
function rolloutSentence({ rollout }: DebriefMeasures, log: Debrief['log']): string[] {
  const { antennaHeightFt, heightCorrectionFt, altitudeReference } = log;
  // Those of an altimeter are never corrected by a roll.
  const offer = isBySatellite({ altitudeSource: altitudeReference })
    ? ' The roll can be used to correct them.'
    : '';
  if (rollout === null || rollout.heightBiasFt === null) return [];
  const { heightBiasFt } = rollout;
  if (heightCorrectionFt === 0 && Math.abs(heightBiasFt) < RIGHT_WITHIN_FT)
    return [`On the roll the ${heightWords(log)}s of the log were right within ${RIGHT_WITHIN_FT} ft.`];
  return [
    `On the roll, for an antenna ${Number(antennaHeightFt.toFixed(1))} ft above the ground, the heights of the log were ${whole(Math.abs(heightBiasFt))} ft too ${heightBiasFt > 0 ? 'high' : 'low'}, ` +
      (heightCorrectionFt === 0 ? `and probably on the way down.${offer}` : 'and were corrected by that.'),
  ];
}

/** What the recorded needles say of the computed ones, which grade. */
function needleSentences({ recordedLocalizer, recordedGlidepath }: DebriefMeasures): string[] {
  return [
    ...needleSentence(
      'localizer',
      recordedLocalizer,
      ['farther right', 'farther left'],
      'course, its antenna or its width',
    ),
    ...needleSentence(
      'glidepath',
      recordedGlidepath,
      ['higher', 'lower'],
      'angle, its crossing height or the heights of the log',
    ),
  ];
}

function needleSentence(
  name: string,
  needle: DebriefMeasures['recordedLocalizer'],
  [above, below]: readonly [string, string],
  doubt: string,
): string[] {
  if (!needle) return [];
  const { biasFullScale, rmsFullScale, comparedS, correlation, agrees, turned } = needle;
  const bias = Math.abs(biasFullScale).toFixed(2);
  const side = Number(bias) === 0 ? '' : ` ${biasFullScale > 0 ? above : below}`;
  const apart = `${bias} of full scale${side} on average, ${rmsFullScale.toFixed(2)} RMS, over ${duration(comparedS)}`;
  // Of a needle that hardly moved the sense is a guess, and a turn of it nothing to speak of.
  const sense =
    turned && correlation !== null
      ? ' The log has where the needle pointed, and not where the aircraft was: its sign was turned.'
      : '';
  return agrees
    ? [`The recorded ${name} needle agrees with the computed one: ${apart}.${sense}`]
    : [
        `The recorded ${name} needle does not agree with the computed one: ${apart}.${sense} Check the facility's ` +
          `${doubt}, and whether the needle had this source.`,
      ];
}

function changes(count: number): string {
  return count === 1 ? '1 change' : `${count} changes`;
}

/** By which height, since the table of moments may tell the altimeter's. */
function thresholdWords(
  { heightFt, offsetFt }: NonNullable<DebriefMeasures['threshold']>,
  log: Debrief['log'],
): string {
  const feet = whole(Math.abs(offsetFt));
  const where = feet === '0' ? 'on' : `${feet} ft ${offsetFt < 0 ? 'left' : 'right'} of`;
  return `Crossed the threshold ${whole(heightFt)} ft above it by ${heightWords(log)}, ${where} the centreline`;
}
