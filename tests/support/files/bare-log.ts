import type { FlightTruth } from '../flight/flight-truth.ts';

/** A log of positions and heights alone, a fix a second. */
export function bareLog({ columns }: FlightTruth, header: string, heightOf: (ft: number) => number): string {
  const lines: string[] = [];
  for (let i = 0; i < columns.timeS.length; i += 10) {
    const at = new Date(Date.UTC(2026, 4, 30, 9) + i * 100).toISOString();
    const place = `${columns.latDeg[i]!.toFixed(7)},${columns.lonDeg[i]!.toFixed(7)}`;
    lines.push(`${at},${place},${heightOf(columns.heightFt[i]!).toFixed(2)}`);
  }
  return [`timestamp,lat,lon,${header}`, ...lines, ''].join('\n');
}
