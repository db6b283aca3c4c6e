import { feature, featureCollection } from '@turf/turf';
import type { Composed } from '../debrief/compose-debrief.ts';
import type { ApproachDebrief, DebriefCriterion } from '../debrief/debrief.ts';
import { planShapes } from '../facility/plan-shapes.ts';
import { secondsOf } from '../units/utc.ts';
import { cutLine, cutOutline, type Vertex } from './antimeridian.ts';
import { lineOnMap, linesBetween, trackOnMap, type TrackOnMap } from './track-on-map.ts';

/** One feature of a map: what it is, and what is to be known of it, with units in the names. */
type MapFeature = ReturnType<typeof feature>;

/** What one log has on a map. */
export interface DebriefMap {
  /** Runway, course and sectors. */
  readonly facility: readonly MapFeature[];
  /** Each approach's track, and the parts of it that were outside of a tolerance. */
  readonly flown: readonly MapFeature[];
}

type Excursion = DebriefCriterion['excursions'][number];

/** A debrief on a map: GeoJSON after RFC 7946, in degrees; no position has a height, which it counts otherwise. */
export function debriefMap({ debrief, sittings }: Composed): DebriefMap {
  const [first] = sittings;
  if (!first) return { facility: [], flown: [] };
  const track = trackOnMap(first.flown);
  const { file } = debrief.log;
  const facility = planShapes(first.flown.facility).features.flatMap(({ geometry, properties: { kind } }) => {
    // Rings serve a map without a scale.
    if (kind === 'range-ring') return [];
    const shape =
      geometry.type === 'LineString'
        ? lineOnMap(cutLine(geometry.coordinates as unknown as Vertex[]))
        : cutOutline(geometry.coordinates[0]!);
    return [feature(shape, { feature: kind.replaceAll('-', ' '), facility: debrief.facility.name })];
  });
  const flown = debrief.approaches.flatMap((approach) => [
    ...trackFeature(track, approach, file),
    ...approach.criteria.flatMap((criterion) =>
      criterion.excursions.flatMap((excursion) =>
        excursionFeature(track, { file, approach: approach.index, criterion, excursion }),
      ),
    ),
  ]);
  return { facility, flown };
}

/** Several debriefs at one facility as one collection, a feature a line. */
export function geoJsonText(maps: readonly DebriefMap[]): string {
  const facility = maps.find((map) => map.facility.length > 0)?.facility ?? [];
  const { features } = featureCollection([...facility, ...maps.flatMap(({ flown }) => flown)]);
  const lines = features.map((one) => JSON.stringify(one)).join(',\n');
  return `{"type":"FeatureCollection","features":[\n${lines}\n]}\n`;
}

function trackFeature(track: TrackOnMap, approach: ApproachDebrief, log: string): MapFeature[] {
  const { index, startUtc, endUtc, outcome, summary } = approach;
  const lines = linesBetween(track, { startS: secondsOf(startUtc), endS: secondsOf(endUtc) });
  if (lines === null) return [];
  return [
    feature(lines.geometry, {
      feature: 'approach track',
      log,
      approach: index,
      outcome,
      summary,
      startUtc,
      endUtc,
      // By this name the common converters of tracks write the time of each position.
      coordTimes: lines.timesUtc,
      heightsFeetAboveSeaLevel: lines.heightsFt,
    }),
  ];
}

interface Excursed {
  readonly file: string;
  readonly approach: number;
  readonly criterion: DebriefCriterion;
  readonly excursion: Excursion;
}

function excursionFeature(
  track: TrackOnMap,
  { file, approach, criterion, excursion }: Excursed,
): MapFeature[] {
  const { startUtc, endUtc, peakUtc, peak, prompt } = excursion;
  const lines = linesBetween(track, { startS: secondsOf(startUtc), endS: secondsOf(endUtc) });
  if (lines === null) return [];
  return [
    feature(lines.geometry, {
      feature: 'outside of a tolerance',
      log: file,
      approach,
      tolerance: criterion.title,
      side: sideOf(criterion, peak),
      startUtc,
      endUtc,
      peakUtc,
      [PEAKS[criterion.unit ?? ''] ?? 'peak']: peak,
      promptlyCorrected: prompt,
      coordTimes: lines.timesUtc,
    }),
  ];
}

const PEAKS: Readonly<Record<string, string>> = {
  'full scale': 'peakFractionOfFullScale',
  kt: 'peakKnots',
  ft: 'peakFeet',
  'ft/min': 'peakFeetPerMinute',
  deg: 'peakDegrees',
};

/** Which limit was passed; a bank or a sink has no side of its own. */
function sideOf({ id, lower, upper }: DebriefCriterion, peak: number): string {
  const middle =
    lower !== null && upper !== null ? (lower + upper) / 2 : upper === null ? Infinity : -Infinity;
  const isAbove = peak > middle;
  if (id.startsWith('localizer')) return isAbove ? 'right' : 'left';
  if (id === 'glidepath-final') return isAbove ? 'high' : 'low';
  if (id === 'airspeed-final') return isAbove ? 'fast' : 'slow';
  return isAbove ? 'above the limit' : 'below the limit';
}
