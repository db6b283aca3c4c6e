import { defineFacility, readFlight } from '../../../core/analyze.ts';
import { findExcursions, timeOutsideS } from '../../../core/approach/excursions.ts';
import { findApproaches } from '../../../core/approach/find-approaches.ts';
import { flownAt, type Flown } from '../../../core/approach/flown.ts';
import type { FlownApproach } from '../../../core/approach/flown-approach.ts';
import { spreadOf } from '../../../core/approach/spread.ts';
import { projectTrack } from '../../../core/deviation/project-track.ts';
import type { Issue } from '../../../core/issue/issue.ts';
import { clip, type Span } from '../../../core/numeric/polyline.ts';
import type { FacilityFile } from '../../support/flight/facility-file.ts';
import { chunksOf, idle } from '../log/reading.ts';

/** What the program finds in a log, and what it was found in. */
export interface Found {
  readonly flown: Flown;
  readonly approaches: readonly FlownApproach[];
  readonly notes: readonly Issue[];
}

/** The way of the whole program from a file's text to its approaches. */
export async function foundIn(text: string, file: FacilityFile): Promise<Found> {
  const defined = defineFacility(JSON.stringify(file), 'facility.json');
  if (!defined.ok) throw new Error(defined.refusal.message);
  const { geometry } = defined.value;
  const source = { name: 'flight', sha256: () => '', size: text.length, chunks: chunksOf(text, 1 << 20) };
  const flight = await readFlight(source, geometry.threshold, {}, idle);
  if (!flight.ok) throw new Error(flight.refusal.message);
  const { track } = flight.value;
  const flown = flownAt(track, projectTrack(track, geometry), geometry);
  return { flown, ...findApproaches(flown, file.runway.touchdownZoneElevationFt) };
}

/** A needle over a span: fractions of full scale, and seconds beyond three quarters. */
export function needleOver(
  { flown }: Found,
  needle: 'localizerFullScale' | 'glidepathFullScale',
  span: Span,
): { mean: number; rms: number; largest: number; outsideS: number } {
  const { timeS, gapLimitS } = flown.track;
  const parts = clip(timeS, flown.deviations[needle], span, gapLimitS);
  const { mean, rms, peak } = spreadOf(parts)!;
  const outside = findExcursions(parts, { lower: -0.75, upper: 0.75 }, 0.05);
  return { mean, rms, largest: Math.abs(peak), outsideS: timeOutsideS(outside) };
}
