import fc from 'fast-check';
import { expect, it } from 'vitest';
import { LineCutter } from '../../../core/records/line-cutter.ts';

function cut(...blocks: string[]): string[] {
  const cutter = new LineCutter();
  const lines = blocks.flatMap((block) => cutter.push(block));
  return [...lines, cutter.end()];
}

it('cuts at line feeds, carriage returns and both, and counts both as one', () => {
  expect(cut('a\nb\r\nc\rd')).toEqual(['a', 'b', 'c', 'd']);
  expect(cut('a\n\nb\r\n\r\nc\r\rd')).toEqual(['a', '', 'b', '', 'c', '', 'd']);
});

it('cuts the same lines wherever the text was cut into blocks, between the two halves of a line end too', () => {
  expect(cut('a\r', '\nb')).toEqual(['a', 'b']);
  expect(cut('a\r', 'b')).toEqual(['a', 'b']);
  expect(cut('a\r', '', '\nb\r')).toEqual(['a', 'b']);
  const texts = fc.array(fc.constantFrom('a', 'bc', '\r', '\n', '\r\n'), { maxLength: 30 });
  fc.assert(
    fc.property(texts, (pieces) => {
      // A return at the very end ends the last line and begins none.
      expect(cut(...pieces)).toEqual(
        pieces
          .join('')
          .replace(/\r$/, '')
          .split(/\r\n|\r|\n/),
      );
    }),
  );
});

it('keeps the beginning of a line that does not end', () => {
  const [line] = cut('S'.repeat(1000), 'X'.repeat(1000));
  expect(line).toMatch(/^S{400}$/);
});
