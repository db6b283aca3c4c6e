import { CharCodes } from './char-codes.ts';

const POWERS_OF_TEN = Array.from({ length: 16 }, (_, power) => 10 ** power);
const COMMA = 44;
const POINT = 46;
const MINUS = 45;
const PLUS = 43;
const SPACE = 32;

export type DecimalMark = '.' | ',';

/** The number in a cell, padding ignored; NaN when the cell is empty or holds anything else. */
export function parseNumber(text: string, mark: DecimalMark): number {
  return parseNumberIn(text, OWN_CODES.of(text), 0, text.length, mark);
}

const OWN_CODES = new CharCodes();

/** The number that stands in a text, whose codes are given, from one place to before another. */
export function parseNumberIn(
  text: string,
  codes: Uint8Array,
  from: number,
  to: number,
  mark: DecimalMark,
): number {
  if (from === to) return NaN;
  const markCode = mark === '.' ? POINT : COMMA;
  const number = plainNumber(codes, from, to, markCode);
  if (!Number.isNaN(number)) return number;
  let start = from;
  let end = to;
  while (start < end && codes[start]! <= SPACE) start++;
  while (end > start && codes[end - 1]! <= SPACE) end--;
  const bare = end - start < to - from ? plainNumber(codes, start, end, markCode) : NaN;
  return Number.isNaN(bare) ? parseUnusual(text.slice(start, end), mark) : bare;
}

/**
 * A number of digits, sign and decimal mark; NaN for all else.
 *
 * Up to 15 digits are exact in a double, and so is a power of ten up to 15: their quotient is then the nearest
 * double, the same that `Number` gives. Everything else (padding, exponents, grouped thousands) takes the slow way.
 */
function plainNumber(codes: Uint8Array, from: number, to: number, markCode: number): number {
  const sign = codes[from]!;
  let mantissa = 0;
  let digits = 0;
  let decimals = -1;
  for (let at = sign === MINUS || sign === PLUS ? from + 1 : from; at < to; at++) {
    const code = codes[at]!;
    if (code >= 48 && code <= 57) {
      mantissa = mantissa * 10 + (code - 48);
      digits++;
      if (decimals >= 0) decimals++;
    } else if (code === markCode && decimals < 0) decimals = 0;
    else return NaN;
  }
  if (digits === 0 || digits > 15) return NaN;
  const size = decimals > 0 ? mantissa / POWERS_OF_TEN[decimals]! : mantissa;
  return sign === MINUS ? -size : size;
}

const PLAIN = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i;
const GROUPED = {
  '.': /^[+-]?\d{1,3}(?:[,'’ \u00a0\u202f]\d{3})+(?:\.\d*)?$/,
  ',': /^[+-]?\d{1,3}(?:[.'’ \u00a0\u202f]\d{3})+(?:,\d*)?$/,
};

function parseUnusual(text: string, mark: DecimalMark): number {
  let number = text.trim().replace('−', '-');
  if (GROUPED[mark].test(number))
    number = number.replaceAll(mark === '.' ? /[,'’ \u00a0\u202f]/g : /[.'’ \u00a0\u202f]/g, '');
  if (mark === ',') number = number.replace(',', '.');
  return PLAIN.test(number) ? Number(number) : NaN;
}
