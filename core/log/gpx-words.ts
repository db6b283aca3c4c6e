import type { Quantity } from './log.ts';

/**
 * What elements inside a track point hold, by local name whatever their namespace, and in which unit (by its name in
 * `unit-words.ts`). GPX 1.1 schema (topografix.com/GPX/1/1/gpx.xsd) for ele, geoidheight, hdop and vdop, GPX 1.0
 * schema (topografix.com/GPX/1/0/gpx.xsd) for speed and course; from memory. The others are common in extensions;
 * common usage, no source.
 */
export const GPX_WORDS: ReadonlyMap<string, readonly [Quantity, string]> = new Map([
  ['ele', ['altitudeGeometricFt', 'm']],
  ['geoidheight', ['geoidHeightM', 'm']],
  ['hdop', ['hdop', 'other']],
  ['vdop', ['vdop', 'other']],
  ['speed', ['groundspeedKt', 'm/s']],
  ['course', ['courseTrueDeg', 'deg']],
  ['bearing', ['courseTrueDeg', 'deg']],
  ['heading', ['headingTrueDeg', 'deg']],
  ['accuracy', ['horizontalAccuracyM', 'm']],
  ['hacc', ['horizontalAccuracyM', 'm']],
  ['haccuracy', ['horizontalAccuracyM', 'm']],
  ['horizontalaccuracy', ['horizontalAccuracyM', 'm']],
  ['vacc', ['verticalAccuracyM', 'm']],
  ['vaccuracy', ['verticalAccuracyM', 'm']],
  ['verticalaccuracy', ['verticalAccuracyM', 'm']],
]);
