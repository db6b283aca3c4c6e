import type { ApproachDebrief, Debrief } from '../debrief/debrief.ts';
import { ERROR_SOURCE_WORDS, RECEIVER_WORDS } from './log-uses.ts';

/** How far off the positions may be and what that makes of the needles, in a sentence or two. */
export function positionSentence({ log, approaches }: Pick<Debrief, 'log' | 'approaches'>): string {
  const { receiver, receiverStated, sideFt, heightFt, sideFrom, heightFrom } = log.positionError;
  const kind = `${receiverStated ? '' : 'taken for '}${RECEIVER_WORDS[receiver]}${receiverStated ? '' : ' by what the log holds'}`;
  const [side, height] = [sideFrom, heightFrom].map((source) =>
    source === 'class' ? kind : ERROR_SOURCE_WORDS[source],
  );
  const from = side === height ? side : `to the side: ${side}; in height: ${height}`;
  const feet = `${feetOf(sideFt)} to the side and ${feetOf(heightFt)} in height`;
  return `Position error: 95 % within ${feet} (${from})${needleWords(approaches)}.`;
}

function feetOf({ median, largest }: { median: number; largest: number }): string {
  const [usual, most] = [Math.ceil(median), Math.ceil(largest)];
  return most > 1.2 * usual ? `${usual} to ${most} ft` : `${most} ft`;
}

/** What it comes to at the end of final, where it weighs most; of several approaches at the worst of them. */
function needleWords(approaches: readonly ApproachDebrief[]): string {
  const finals = approaches.flatMap(({ segments }) => segments).filter(({ kind }) => kind === 'final');
  const most = (needle: 'localizer' | 'glidepath') =>
    Math.max(...finals.map((final) => final[needle]?.halfWidthFullScale?.largest ?? -Infinity));
  const [localizer, glidepath] = [most('localizer'), most('glidepath')];
  if (localizer < 0 || glidepath < 0) return '';
  return `: at the end of final ${localizer.toFixed(2)} of the localizer's and ${glidepath.toFixed(2)} of the glidepath's full scale`;
}
