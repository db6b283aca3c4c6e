import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TextDecoding } from '../../../electron/files/decode-text.ts';

function decodeInPieces(bytes: Uint8Array, pieceLength: number): string {
  const decoding = new TextDecoding();
  let text = '';
  for (let at = 0; at < bytes.length; at += pieceLength)
    text += decoding.decode(bytes.slice(at, at + pieceLength));
  return text + decoding.end();
}
const utf8 = (text: string) => new TextEncoder().encode(text);
const utf16le = (text: string) => new Uint8Array([0xff, 0xfe, ...Buffer.from(text, 'utf16le')]);
const utf16be = (text: string) => new Uint8Array([0xfe, 0xff, ...Buffer.from(text, 'utf16le').swap16()]);

describe('decoding', () => {
  it.each([1, 2, 3, 5, 100])('reads UTF-8 in pieces of %d bytes', (pieceLength) => {
    expect(decodeInPieces(utf8('Höhe m,47°30′,✈,🛩 end'), pieceLength)).toBe('Höhe m,47°30′,✈,🛩 end');
  });

  it.each([1, 3, 100])('reads UTF-16 by its mark, in pieces of %d bytes', (pieceLength) => {
    expect(decodeInPieces(utf16le('Höhe,🛩'), pieceLength)).toBe('Höhe,🛩');
    expect(decodeInPieces(utf16be('Höhe,🛩'), pieceLength)).toBe('Höhe,🛩');
  });

  it('keeps the UTF-8 mark for the reader, who knows what a first character is', () => {
    expect(decodeInPieces(utf8('\uFEFFtime,lat'), 100)).toBe('\uFEFFtime,lat');
  });

  it.each([1, 2, 100])('takes what is no UTF-8 for Windows-1252, in pieces of %d bytes', (pieceLength) => {
    expect(decodeInPieces(Uint8Array.from([72, 0xf6, 104, 101, 0x20, 0x80, 10, 49]), pieceLength)).toBe(
      'Höhe €\n1',
    );
  });

  it('takes an unfinished character at the very end for Windows-1252', () => {
    expect(decodeInPieces(Uint8Array.from([97, 98, 99, 0xc3]), 2)).toBe('abcÃ');
  });

  it('gives nothing for nothing, and one byte for one', () => {
    expect(decodeInPieces(new Uint8Array(0), 4)).toBe('');
    expect(decodeInPieces(utf8('x'), 4)).toBe('x');
  });

  it('never throws, whatever the bytes and the pieces, and pieces of UTF-8 do not matter', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 40 }), fc.integer({ min: 1, max: 9 }), (bytes, pieceLength) => {
        expect(typeof decodeInPieces(bytes, pieceLength)).toBe('string');
      }),
    );
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.integer({ min: 1, max: 9 }), (text, pieceLength) => {
        fc.pre(!/^[\ufeff\ufffe]/.test(text));
        const bytes = utf8(text);
        expect(decodeInPieces(bytes, pieceLength)).toBe(new TextDecoder().decode(bytes));
      }),
    );
  });
});
