import type { Deviations } from '../deviation/deviations.ts';
import type { FacilityGeometry } from '../facility/derive-geometry.ts';
import { firstAfter, firstAtOrAfter, type Span } from '../numeric/polyline.ts';
import type { Track } from '../track/track.ts';
import { utcText } from '../units/utc.ts';

export const DEVIATIONS_HEADER =
  'timeUtc,latDeg,lonDeg,altitudeFt,distanceToThresholdNm,centrelineOffsetFt,localizerDeg,localizerFullScale,' +
  'glidepathDeg,glidepathFullScale,heightAboveGlidepathFt\n';
export const LINES_IN_A_BLOCK = 4000;

/** What the lines are written of, column by column. */
export interface DeviationColumns {
  readonly timeS: Float64Array;
  readonly values: readonly Float64Array[];
  /** What each is multiplied by: degrees are told of fractions of full scale. */
  readonly factors: readonly number[];
}

export function deviationColumns(
  track: Track,
  deviations: Deviations,
  { localizerFullScaleDeg, glidepathFullScaleDeg }: FacilityGeometry,
): DeviationColumns {
  const { localizerFullScale, glidepathFullScale } = deviations;
  return {
    timeS: track.timeS,
    values: [
      track.latDeg,
      track.lonDeg,
      track.altitudeFt,
      deviations.distanceToThresholdNm,
      deviations.centrelineOffsetFt,
      localizerFullScale,
      localizerFullScale,
      glidepathFullScale,
      glidepathFullScale,
      deviations.heightAboveGlidepathFt,
    ],
    factors: [1, 1, 1, 1, 1, localizerFullScaleDeg, 1, glidepathFullScaleDeg, 1, 1],
  };
}

/**
 * The deviations of every fix as CSV (design, section 13), or of those in a span, in blocks of lines: full precision,
 * one line a fix; a value that is not known is an empty cell.
 */
export function* deviationsCsv(
  track: Track,
  deviations: Deviations,
  facility: FacilityGeometry,
  span?: Span,
): Generator<string> {
  yield DEVIATIONS_HEADER;
  const first = span ? firstAtOrAfter(track.timeS, span.startS) : 0;
  const end = span ? firstAfter(track.timeS, span.endS) : track.count;
  const columns = deviationColumns(track, deviations, facility);
  for (let start = first; start < end; start += LINES_IN_A_BLOCK)
    yield deviationLines(columns, start, Math.min(end, start + LINES_IN_A_BLOCK));
}

/** The lines of some fixes, from the one to before the other. */
export function deviationLines(
  { timeS, values, factors }: DeviationColumns,
  from: number,
  to: number,
): string {
  const cells = ['', ...values.map(() => '')];
  const lines: string[] = [];
  for (let i = from; i < to; i++) {
    cells[0] = utcText(timeS[i]!)!;
    for (let c = 0; c < values.length; c++) {
      // Right behind the antenna a full scale back and forth may come out a hair beyond −180°.
      const value = factors[c] === 1 ? values[c]![i]! : Math.max(-180, values[c]![i]! * factors[c]!);
      // NaN is not equal to itself.
      cells[c + 1] = value === value ? `${value}` : '';
    }
    // Joined, since a text that is added to piece by piece leaves its pieces to be cleared away.
    lines.push(cells.join(','));
  }
  return `${lines.join('\n')}\n`;
}
