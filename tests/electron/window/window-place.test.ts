import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fitted } from '../../../electron/window/window-place.ts';

const LEFT = { x: 0, y: 25, width: 1920, height: 1015 };
const RIGHT = { x: 1920, y: 0, width: 2560, height: 1400 };

describe('a window on the displays', () => {
  it.each([
    ['where nothing is kept, in the middle of the first', null, { x: 320, y: 103, width: 1280, height: 860 }],
    ['as it was', { x: 2000, y: 10, width: 1000, height: 700 }, { x: 2000, y: 10, width: 1000, height: 700 }],
    [
      'moved in where a part of it is off the edge',
      { x: -200, y: 900, width: 1000, height: 700 },
      { x: 0, y: 340, width: 1000, height: 700 },
    ],
    [
      'on the display that holds most of it',
      { x: 1500, y: 100, width: 1000, height: 700 },
      { x: 1920, y: 100, width: 1000, height: 700 },
    ],
    [
      'anew where its display is gone',
      { x: -3000, y: 0, width: 1000, height: 700 },
      { x: 320, y: 103, width: 1280, height: 860 },
    ],
    ['as large as the display where it was larger', { x: 0, y: 0, width: 9000, height: 9000 }, RIGHT],
    [
      'never too small to read',
      { x: 100, y: 100, width: 10, height: 10 },
      { x: 100, y: 100, width: 760, height: 560 },
    ],
  ])('stands %s', (_, kept, expected) => expect(fitted(kept, [LEFT, RIGHT])).toEqual(expected));

  it('lies within one of them, whatever was kept and whatever they are', () => {
    const rectangle = fc.record({
      x: fc.integer({ min: -5000, max: 5000 }),
      y: fc.integer({ min: -5000, max: 5000 }),
      width: fc.integer({ min: 1, max: 6000 }),
      height: fc.integer({ min: 1, max: 6000 }),
    });
    fc.assert(
      fc.property(fc.option(rectangle), rectangle, rectangle, (kept, first, second) => {
        const { x, y, width, height } = fitted(kept, [first, second]);
        return [first, second].some(
          (on) => x >= on.x && y >= on.y && x + width <= on.x + on.width && y + height <= on.y + on.height,
        );
      }),
    );
  });
});
