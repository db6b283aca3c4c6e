import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fileName } from '../../renderer/state/file-name.ts';

describe('a file’s name', () => {
  it.each([
    ['Rowan Teal', 'Rowan Teal'],
    ['J. R. Teal', 'J. R. Teal'],
    ['Łucja Müller-Ñandú', 'Łucja Müller-Ñandú'],
    ['../../etc/passwd', 'etc-passwd'],
    ['N-123/A', 'N-123-A'],
    ['CON', '-CON'],
    ['nul.csv', '-nul.csv'],
    ['Connie', 'Connie'],
    ['gnp.\u202Efdp.exe', 'gnp.-fdp.exe'],
    ['a\0b\nc', 'a-b-c'],
    [' . ', 'file'],
    ['', 'file'],
    ['x'.repeat(300), 'x'.repeat(180)],
  ])('of %j is %j', (name, safe) => expect(fileName(name)).toBe(safe));

  it('is safe whatever it is made of, and of itself the same', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 400 }), (name) => {
        const safe = fileName(name);
        expect(safe).not.toMatch(/[\p{Cc}\p{Cf}"*/:<>?\\|]|^[\s.]|[\s.]$|^$/u);
        expect(new TextEncoder().encode(safe).length).toBeLessThanOrEqual(181);
        expect(fileName(safe).replace(/^-/, '')).toBe(safe.replace(/^-/, ''));
      }),
      { numRuns: 2000 },
    );
  });
});
