import { seededRandom, type Random } from '../support/flight/random.ts';

/** What goes wrong in files, and what somebody puts into them on purpose. */
const ODD = [
  '',
  '\0',
  '"',
  '""',
  "'",
  ',',
  ';',
  '\t',
  '\r',
  '\n',
  '\r\n\r\n',
  '\uFEFF',
  '\u202E',
  '\uD800',
  '😀',
  '-',
  'NaN',
  'Infinity',
  '1e999',
  '-1e-999',
  '0x10',
  '99999999999999999999',
  '1,5',
  '91',
  '-181',
  '=1+1',
  '@SUM(A1)',
  '{',
  '}',
  '[[[[[[[[',
  '<!DOCTYPE a [<!ENTITY b "c">]>',
  '&lol;',
  '<![CDATA[',
  '</trkpt>',
  '__proto__',
  'constructor',
  '../../etc/passwd',
  'CON',
  'null',
  'true',
  '%s%n',
  '2024-02-30T25:61:61Z',
  'a'.repeat(5000),
  '9'.repeat(400),
] as const;

/** A text with a few of its pieces cut out, doubled, moved, or made odd; now and then it is spliced with another. */
function mutated(seeds: readonly string[], random: Random): string {
  const pick = <T>(of: readonly T[]): T => of[Math.floor(random.uniform() * of.length)]!;
  let text = pick(seeds);
  const changes = 1 + Math.floor(random.uniform() * 6);
  for (let i = 0; i < changes; i++) {
    const at = Math.floor(random.uniform() * (text.length + 1));
    const length = Math.floor(random.uniform() ** 3 * Math.min(text.length, 400));
    const [before, piece, after] = [text.slice(0, at), text.slice(at, at + length), text.slice(at + length)];
    const how = random.uniform();
    if (how < 0.2) text = before + after;
    else if (how < 0.35) text = before + piece + piece + after;
    else if (how < 0.45) text = before + [...piece].toReversed().join('') + after;
    else if (how < 0.5) text = before;
    else if (how < 0.55) text = before + pick(seeds).slice(-length - 1);
    else text = before + pick(ODD) + (how < 0.8 ? after : piece + after);
  }
  return text;
}

/** Of these readers 18,000 and 360,000; those of records and of runway tables have a million each besides. */
const SCALE = process.env['HALFDOT_LONG'] ? 20 : 1;
/** No input may keep a reader longer, by far less than which it is to be stopped. */
const LONGEST_MS = 2000;
/** Nor may a thousand small files leave more behind. */
const MOST_LEFT_BYTES = 300e6;

/** Gives a reader so many mutated texts: each is answered in time, and what was read is let go of. */
export async function fuzz(
  name: string,
  seeds: readonly string[],
  count: number,
  read: (text: string) => unknown,
): Promise<void> {
  const random = seededRandom(`fuzz ${name}`);
  const before = process.memoryUsage();
  for (let i = 0; i < count * SCALE; i++) {
    const text = mutated(seeds, random);
    const startMs = performance.now();
    try {
      await read(text);
    } catch (error) {
      throw new Error(`${name}, input ${i}: ${JSON.stringify(text.slice(0, 300))}`, { cause: error });
    }
    const ms = performance.now() - startMs;
    if (ms > LONGEST_MS) throw new Error(`${name}, input ${i}, took ${ms} ms: ${JSON.stringify(text)}`);
  }
  const { external, arrayBuffers } = process.memoryUsage();
  const leftBytes = external + arrayBuffers - before.external - before.arrayBuffers;
  if (leftBytes > MOST_LEFT_BYTES) throw new Error(`${name} left ${leftBytes} bytes`);
}
