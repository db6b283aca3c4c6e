import { describe, expect, it } from 'vitest';
import { readLog } from '../../../core/log/read-log.ts';
import { chunksOf } from './reading.ts';

const ROWS = Array.from({ length: 20_000 }, (_, i) => `${1714557600 + i},47,8,${i % 1000}`).join('\n');
const TEXT = `Unix time,Lat,Lon,AltMSL (ft)\n${ROWS}`;

describe('progress', () => {
  it('rises to the whole, in steps, however large the chunks are', async () => {
    for (const chunks of [[TEXT], [...chunksOf(TEXT, 1000)]]) {
      const shares: (number | null)[] = [];
      const job = { progress: (share: number | null) => void shares.push(share), cancelled: () => false };
      await readLog({ name: 'a', sha256: () => '', size: TEXT.length, chunks }, {}, job);
      expect(shares.length).toBeGreaterThan(5);
      expect(shares.at(-1)).toBe(1);
      expect(shares).toEqual(shares.toSorted((a, b) => a! - b!));
    }
  });

  it('is null when the size is unknown, and never beyond the whole', async () => {
    const shares = new Set<number | null>();
    const job = { progress: (share: number | null) => void shares.add(share), cancelled: () => false };
    await readLog({ name: 'a', sha256: () => '', size: null, chunks: [TEXT] }, {}, job);
    expect([...shares]).toEqual([null]);
    shares.clear();
    await readLog({ name: 'a', sha256: () => '', size: 10, chunks: [TEXT] }, {}, job);
    expect([...shares]).toEqual([1]);
  });

  it('chunks may come asynchronously', async () => {
    async function* slowly() {
      yield* chunksOf(TEXT, 50_000);
    }
    const outcome = await readLog(
      { name: 'a', sha256: () => '', size: null, chunks: slowly() },
      {},
      { progress: () => undefined, cancelled: () => false },
    );
    expect(outcome.ok && outcome.value.timeS.length).toBe(20_000);
    expect(outcome.ok && outcome.value.timeS[19_999]).toBe(1714577599);
    expect(outcome.ok && outcome.value.values.altitudeGeometricFt![19_999]).toBe(999);
  });
});
