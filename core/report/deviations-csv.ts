import type { Deviations } from '../deviation/deviations.ts';
import { firstAfter, firstAtOrAfter, type Span } from '../numeric/polyline.ts';
import type { Track } from '../track/track.ts';
import { utcText } from '../units/utc.ts';

const HEADER =
  'timeUtc,latDeg,lonDeg,altitudeFt,distanceToThresholdNm,centrelineOffsetFt,localizerDeg,localizerFullScale,' +
  'glidepathDeg,glidepathFullScale,heightAboveGlidepathFt';
const LINES_IN_A_BLOCK = 4000;

/**
 * The deviations of every fix as CSV (design, section 13), or of those in a span, in blocks of lines: full precision,
 * one line a fix; a value that is not known is an empty cell.
 */
export function* deviationsCsv(track: Track, deviations: Deviations, span?: Span): Generator<string> {
  yield `${HEADER}\n`;
  const first = span ? firstAtOrAfter(track.timeS, span.startS) : 0;
  const end = span ? firstAfter(track.timeS, span.endS) : track.count;
  const columns = [
    track.latDeg,
    track.lonDeg,
    track.altitudeFt,
    deviations.distanceToThresholdNm,
    deviations.centrelineOffsetFt,
    deviations.localizerDeg,
    deviations.localizerFullScale,
    deviations.glidepathDeg,
    deviations.glidepathFullScale,
    deviations.heightAboveGlidepathFt,
  ];
  for (let start = first; start < end; start += LINES_IN_A_BLOCK) {
    let block = '';
    for (let i = start; i < Math.min(end, start + LINES_IN_A_BLOCK); i++) {
      block += utcText(track.timeS[i]!);
      for (const column of columns) {
        const value = column[i]!;
        // NaN is not equal to itself.
        block += value === value ? `,${value}` : ',';
      }
      block += '\n';
    }
    yield block;
  }
}
