import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Rectangle } from 'electron';
import { z } from 'zod';
import { makeFolder, writeAtomically } from '../files/write-atomically.ts';

const PIXELS = z.number().int().min(-100_000).max(100_000);
const PLACE = z.strictObject({
  format: z.literal('halfdot-window/1'),
  x: PIXELS,
  y: PIXELS,
  width: PIXELS.positive(),
  height: PIXELS.positive(),
  isMaximized: z.boolean(),
});

/** Where the window was, in pixels of the displays, and whether it filled one. */
export type Place = Omit<z.infer<typeof PLACE>, 'format'>;

/** The smallest window in which the page can be read, and the one that a first start gets (ours). */
export const SMALLEST = { width: 760, height: 560 };
const FIRST = { width: 1280, height: 860 };

const FILE = 'window.json';

/** Where the window was last; null where that is not known, also where the file cannot be read as it should be. */
export function readPlace(folder: string): Place | null {
  try {
    const { format: _, ...place } = PLACE.parse(JSON.parse(readFileSync(join(folder, FILE), 'utf8')));
    return place;
  } catch {
    return null;
  }
}

/** Keeps where the window is. Where the folder cannot be written, the next start has a window like the first. */
export function keepPlace(folder: string, place: Place): void {
  if (!makeFolder(folder).ok) return;
  writeAtomically(join(folder, FILE), `${JSON.stringify({ format: 'halfdot-window/1', ...place })}\n`);
}

/**
 * A window that lies within one of the displays: on that which holds most of where it was, as near to there as it can
 * be; where no display does (it was unplugged), in the middle of the first.
 */
export function fitted(
  kept: Rectangle | null,
  displays: readonly [Rectangle, ...(readonly Rectangle[])],
): Rectangle {
  let on = displays[0];
  for (const display of kept ? displays : []) if (shared(kept!, display) > shared(kept!, on)) on = display;
  const was = kept && shared(kept, on) > 0 ? kept : null;
  const width = Math.min(Math.max(was?.width ?? FIRST.width, SMALLEST.width), on.width);
  const height = Math.min(Math.max(was?.height ?? FIRST.height, SMALLEST.height), on.height);
  return {
    x: within(was?.x ?? on.x + Math.round((on.width - width) / 2), on.x, on.x + on.width - width),
    y: within(was?.y ?? on.y + Math.round((on.height - height) / 2), on.y, on.y + on.height - height),
    width,
    height,
  };
}

function within(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}

/** Area that two rectangles share, in square pixels. */
function shared(a: Rectangle, b: Rectangle): number {
  const width = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const height = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return Math.max(width, 0) * Math.max(height, 0);
}
