import { expect } from 'vitest';
import type { Log } from '../../../core/log/log.ts';

export const START_S = Date.UTC(2024, 4, 1, 10, 0, 0) / 1000;
export const FT_PER_M = 1 / 0.3048;

/** The numbers of the flight that every file here writes in its own way. */
export function expectFlight(log: Log, lines: number[]): void {
  expect([...log.timeS]).toEqual([START_S, START_S + 1, START_S + 2]);
  expect([...log.values.latDeg]).toEqual([47.1, 47.2, 47.3]);
  expect([...log.values.lonDeg]).toEqual([8.1, 8.2, 8.3]);
  expect([...log.values.altitudeGeometricFt!]).toEqual([3000, 2990.5, 2981]);
  expect([...log.line]).toEqual(lines);
}

export const HEADER = 'Time,Latitude,Longitude,AltMSL (ft)';
export const ROWS = [
  '2024-05-01T10:00:00Z,47.1,8.1,3000',
  '2024-05-01T10:00:01Z,47.2,8.2,2990.5',
  '2024-05-01T10:00:02Z,47.3,8.3,2981',
];
export const PLAIN = [HEADER, ...ROWS].join('\n') + '\n';
