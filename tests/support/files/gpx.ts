import { METRES_PER_FOOT } from '../../../core/units/units.ts';
import { decimal } from './csv.ts';
import type { LoggedFix } from './logged-fix.ts';
import { isoUtc } from './time-text.ts';

export interface GpxStyle {
  readonly version: '1.0' | '1.1';
  readonly trackName: string;
  /** Speed and course: elements of 1.0, extensions of a namespace of their own in 1.1. */
  readonly motion: boolean;
  /** Metres of geoid above the ellipsoid, written beside each height. */
  readonly geoidHeightM?: number;
  /** Fixes at which a new segment begins, counted from 0. */
  readonly segmentsAt?: readonly number[];
  readonly timeDecimals?: 0 | 1 | 3;
}

/** Writes fixes as GPX; element order as the schemas have it (topografix.com/GPX/1/0 and /1/1, published). */
export function gpxText(style: GpxStyle, fixes: readonly LoggedFix[]): string {
  const space = `http://www.topografix.com/GPX/${style.version.replace('.', '/')}`;
  const motionSpace = style.motion && style.version === '1.1' ? ' xmlns:motion="urn:halfdot:motion"' : '';
  const cuts = [0, ...(style.segmentsAt ?? []), fixes.length];
  const segments = cuts
    .slice(1)
    .map((end, i) => fixes.slice(cuts[i], end))
    .filter((segment) => segment.length > 0);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<gpx version="${style.version}" creator="sample generator" xmlns="${space}"${motionSpace}>`,
    '<trk>',
    `<name>${style.trackName}</name>`,
    ...segments.flatMap((segment) => segmentLines(style, segment)),
    '</trk>',
    '</gpx>',
    '',
  ].join('\n');
}

function segmentLines(style: GpxStyle, segment: readonly LoggedFix[]): string[] {
  return ['<trkseg>'].concat(
    segment.map((fix) => point(style, fix)),
    '</trkseg>',
  );
}

function point(style: GpxStyle, fix: LoggedFix): string {
  const course = decimal(fix.trackTrueDeg, 1);
  const speed = decimal((fix.groundspeedKt * 1852) / 3600, 2);
  const geoid = style.geoidHeightM;
  const parts = [
    `<ele>${decimal(fix.gnssAltitudeFt * METRES_PER_FOOT, 2)}</ele>`,
    `<time>${isoUtc(fix.timeS, style.timeDecimals ?? 0)}</time>`,
    ...(style.motion && style.version === '1.0' ? [`<course>${course}</course><speed>${speed}</speed>`] : []),
    ...(geoid === undefined ? [] : [`<geoidheight>${decimal(geoid, 1)}</geoidheight>`]),
    ...(style.motion && style.version === '1.1'
      ? [
          `<extensions><motion:speed>${speed}</motion:speed><motion:course>${course}</motion:course></extensions>`,
        ]
      : []),
  ];
  return `<trkpt lat="${decimal(fix.latDeg, 7)}" lon="${decimal(fix.lonDeg, 7)}">${parts.join('')}</trkpt>`;
}
