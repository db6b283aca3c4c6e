import type { LogSettings } from '../../../core/log/log.ts';
import { readUsable } from './reading.ts';

/** Reads rows that consist of cells of time, with a position and an altitude put behind them. */
export function withTimes(header: string, cells: string[], settings?: LogSettings, preamble = '') {
  const rows = cells.map((cell, i) => `${cell};47.${i};8;1000`);
  return readUsable(`${preamble}${header};Lat;Lon;AltMSL (ft)\n${rows.join('\n')}`, settings);
}
