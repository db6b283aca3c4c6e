import type { Log } from '../../../core/log/log.ts';

interface Rows {
  timeS: number[];
  latDeg: number[];
  lonDeg: number[];
  values?: Partial<Record<keyof Log['values'], number[]>>;
}

/** A log as a reader would hand it over: the given columns, line 2 for the first row, 1,000 ft geometric if silent. */
export function makeLog({ timeS, latDeg, lonDeg, values = {} }: Rows): Log {
  const altitudes = Object.keys(values).some((name) => name.startsWith('altitude'))
    ? {}
    : { altitudeGeometricFt: timeS.map(() => 1001.3) };
  const columns = Object.entries({ ...altitudes, ...values }).map(([name, column]) => [
    name,
    Float64Array.from(column),
  ]);
  return {
    name: 'made.csv',
    sha256: '',
    kind: 'csv',
    recognised: '',
    timeReference: 'utc',
    utcOffsetS: null,
    columns: [],
    rowsSeen: timeS.length,
    timeS: Float64Array.from(timeS),
    line: Uint32Array.from(timeS, (_, i) => i + 2),
    values: {
      latDeg: Float64Array.from(latDeg),
      lonDeg: Float64Array.from(lonDeg),
      ...Object.fromEntries(columns),
    },
    breaks: [],
    issues: [],
  };
}

/** `count` fixes a second apart from `startS`, flying north at `knots` along a meridian from 10° S. */
export function flyingNorth(count: number, knots: number, startS = 1_000_000_000) {
  const stepDeg = ((knots / 3600) * 1852) / 110_607.8;
  return {
    timeS: Array.from({ length: count }, (_, i) => startS + i),
    latDeg: Array.from({ length: count }, (_, i) => -10 + i * stepDeg),
    lonDeg: Array.from({ length: count }, () => -20.123456),
  };
}
