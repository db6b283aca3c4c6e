import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findIls, ilsIn } from '../../../core/records/ils-listing.ts';
import { scanRecords } from '../../../core/records/scan-records.ts';
import { regionRecords } from '../../support/records/fictional-region.ts';
import { codesOf, idle, indexOf, publishedLines, withColumns } from './reading.ts';

const REGION = regionRecords();
const KBTV = publishedLines('kbtv');

async function scanned(...chunks: string[]) {
  return scanRecords(chunks, null, idle);
}

describe('the index of a file', () => {
  it('tells the cycle, its day and the counts', async () => {
    const index = await indexOf(...REGION.trimEnd().split('\n'));
    expect(index).toMatchObject({
      format: 'halfdot-records/1',
      cycle: '2602',
      effectiveDay: '2026-02-19',
      recordsRead: 40,
      recordsUnreadable: 0,
      continuations: 0,
      issues: [],
    });
    expect(index.airports.map(({ ident }) => ident)).toEqual(['XDOS', 'XPEH', 'XWHN']);
  });

  it('takes the cycle from the published headers (FAA CIFP), either of them', async () => {
    expect(await indexOf(...KBTV)).toMatchObject({ cycle: '2609', effectiveDay: '2026-09-03' });
    const volume = await indexOf(...publishedLines('header-volume'), ...KBTV.slice(1));
    expect(volume).toMatchObject({ cycle: '2609', effectiveDay: '2026-09-03', issues: [] });
    expect(await indexOf(...KBTV.slice(1))).toMatchObject({ cycle: null, effectiveDay: null });
  });

  it('says when there are fewer records than the header counts', async () => {
    const index = await indexOf(...KBTV);
    expect(codesOf(index.issues)).toEqual(['records-fewer-than-said']);
    expect(index.issues[0]!.message).toContain('396,811');
  });

  it('holds the records of each ILS, and of the waypoints those that its legs name', async () => {
    const [kbtv] = (await indexOf(...KBTV)).airports;
    expect(kbtv).toMatchObject({ ident: 'KBTV' });
    expect(kbtv!.localizers).toHaveLength(2);
    expect(kbtv!.runways).toHaveLength(4);
    // Transitions, and procedures without a glideslope, are left out.
    expect(kbtv!.legs.every((line) => /^SUSAP KBTVK6FI(?:15|33) {3}I/.test(line))).toBe(true);
    expect(kbtv!.legs).toHaveLength(15);
    const named = kbtv!.fixes.map((line) => line.slice(13, 18).trim());
    expect(named.toSorted()).toEqual(
      ['BTV', 'EHIKO', 'FOVES', 'HONIB', 'IBTV', 'IVOE', 'JANUD', 'NIDUQ', 'STAEV', 'WINLA'].toSorted(),
    );
  });

  it('holds nothing of an airport without a localizer, and no more than that where none has a glideslope', async () => {
    const index = await indexOf(...publishedLines('padl-localizer-only', 'kden-airport', 'kjfk-runway'));
    expect(index.airports).toEqual([
      {
        ident: 'PADL',
        airport: null,
        localizers: publishedLines('padl-localizer-only'),
        runways: [],
        legs: [],
        fixes: [],
      },
    ]);
    expect(codesOf(index.issues)).toEqual(['records-no-ils']);
  });

  it('does not rely on the order of the records', async () => {
    const forwards = await indexOf(...KBTV);
    const [header, ...records] = KBTV;
    const backwards = await indexOf(header!, ...records.toReversed());
    expect(backwards.airports[0]!.fixes).toEqual(forwards.airports[0]!.fixes);
    expect(backwards.airports[0]!.legs.toSorted()).toEqual(forwards.airports[0]!.legs.toSorted());
    expect(ilsIn(backwards)).toEqual(ilsIn(forwards));
  });

  it('is plain JSON', async () => {
    const index = await indexOf(...KBTV);
    expect(JSON.parse(JSON.stringify(index))).toEqual(index);
  });
});

describe('a file as it may come', () => {
  it('in chunks of any size gives the same index', async () => {
    const whole = await scanned(REGION);
    await fc.assert(
      fc.asyncProperty(fc.array(fc.integer({ min: 1, max: 900 }), { minLength: 1 }), async (sizes) => {
        const chunks: string[] = [];
        for (let at = 0, turn = 0; at < REGION.length; turn++) {
          const size = sizes[turn % sizes.length]!;
          chunks.push(REGION.slice(at, at + size));
          at += size;
        }
        expect(await scanned(...chunks)).toEqual(whole);
      }),
      { numRuns: 50 },
    );
  });

  it.each([
    ['with carriage returns', REGION.replaceAll('\n', '\r\n')],
    ['with carriage returns alone', REGION.replaceAll('\n', '\r')],
    ['with a byte-order mark', `\uFEFF${REGION}`],
    ['in lower case', REGION.toLowerCase()],
    ['without trailing blanks', REGION.replaceAll(/ +$/gm, '')],
    ['with longer lines', REGION.replaceAll('\n', '   behind\n')],
    ['without a last line end', REGION.trimEnd()],
    ['with blank lines', REGION.replaceAll('\n', '\n\n')],
    ['with an end mark', `${REGION}\u001a`],
  ])('%s it says the same', async (_, text) => {
    const whole = await scanned(REGION);
    const found = await scanned(text);
    expect(found).toEqual(whole);
  });

  it('with carriage returns cut between two chunks counts its lines right', async () => {
    const text = REGION.replaceAll('\n', '\r\n');
    const bad = `${text}SXXXP XPEHX1GRW99    O`.padEnd(60);
    const at = text.indexOf('\r\n') + 1;
    const found = await scanned(bad.slice(0, at), bad.slice(at));
    if (!found.ok) throw new Error(found.refusal.message);
    expect(found.value.unreadable).toMatchObject([{ line: 43 }]);
  });

  it('with records that cannot be read counts them and keeps their lines', async () => {
    const lines = [...KBTV];
    const runway = lines.findIndex((line) => line.includes('GRW15'));
    lines[runway] = withColumns(lines[runway]!, 33, 'N44X85043');
    lines.push('no record at all');
    const index = await indexOf(...lines);
    expect(index).toMatchObject({
      recordsRead: 35,
      recordsUnreadable: 2,
      unreadable: [
        { line: runway + 1, why: 'columns 33 to 41 hold "N44X85043"' },
        { line: KBTV.length + 1, why: 'it is no record' },
      ],
    });
    expect(index.issues[0]).toMatchObject({
      code: 'records-unreadable',
      severity: 'caution',
      count: 2,
      firstLine: runway + 1,
    });
    expect(index.airports[0]!.runways).toHaveLength(3);
  });

  it('passes over records that only add to the one before, and counts them', async () => {
    const index = await indexOf(...KBTV);
    expect(index.continuations).toBe(1);
    expect(index.recordsRead).toBe(KBTV.length - 1);
  });

  it('of one endless line costs no memory and holds nothing', async () => {
    function* endless() {
      yield `${KBTV[1]!}\nS`;
      for (let i = 0; i < 200; i++) yield 'X'.repeat(100_000);
    }
    const found = await scanRecords(endless(), null, idle);
    expect(found).toMatchObject({ ok: true, value: { recordsRead: 1, recordsUnreadable: 1 } });
  });

  it('of more records than are held says how many are left out', async () => {
    const waypoint = KBTV.find((line) => line.includes('EAENRT'))!;
    function* many() {
      yield `${KBTV.join('\n')}\n`;
      for (let block = 0; block < 405; block++) {
        const lines = Array.from({ length: 1000 }, (_, at) =>
          withColumns(waypoint, 14, (1e6 + block * 1000 + at).toString(36).padStart(5, '0').toUpperCase()),
        );
        yield `${lines.join('\n')}\n`;
      }
    }
    const found = await scanRecords(many(), null, idle);
    if (!found.ok) throw new Error(found.refusal.message);
    expect(codesOf(found.value.issues)).toContain('records-too-many');
    expect(ilsIn(found.value)).toHaveLength(2);
  });
});

describe('a job', () => {
  it('is told how far it is, and may be stopped', async () => {
    const shares: (number | null)[] = [];
    const text = REGION.repeat(60);
    const watched = { progress: (share: number | null) => void shares.push(share), cancelled: () => false };
    await scanRecords([text], text.length, watched);
    expect(shares.at(-1)).toBe(1);
    expect(shares.length).toBeGreaterThan(3);
    let asked = 0;
    const stopped = await scanRecords([text], text.length, {
      progress: () => {},
      cancelled: () => ++asked > 3,
    });
    expect(stopped).toMatchObject({ ok: false, refusal: { code: 'cancelled' } });
  });

  it.each([
    ['records-file-empty', ''],
    ['records-file-empty', ' \n\n'],
    ['records-file-packed', 'PK\u0003\u0004 something'],
    ['records-none', 'time,lat,lon\n1,2,3\n'],
    ['records-none', 'HDR01 and nothing else\n'],
  ])('is refused with %s for "%s"', async (code, text) => {
    expect(await scanned(text)).toMatchObject({ ok: false, refusal: { code, severity: 'refusal' } });
  });
});

describe('the list for a chooser', () => {
  it('has every localizer, and says which has a glideslope', async () => {
    const listed = ilsIn(await indexOf(...REGION.trimEnd().split('\n')));
    expect(
      listed.map(({ airport, runway, kind, hasGlideslope }) => [airport, runway, kind, hasGlideslope]),
    ).toEqual([
      ['XDOS', '22', 'LOC', false],
      ['XPEH', '07', 'ILS', true],
      ['XWHN', '13', 'ILS', true],
    ]);
    expect(listed[1]).toEqual({
      airport: 'XPEH',
      airportName: 'PETRELHOLM',
      runway: '07',
      localizer: 'IZPE',
      kind: 'ILS',
      category: '1',
      course: { deg: 70, isTrue: false },
      frequencyMHz: 110.95,
      hasGlideslope: true,
    });
  });

  it('is searched by words in any order and case', async () => {
    const listed = ilsIn(await indexOf(...REGION.trimEnd().split('\n')));
    const found = (text: string) => findIls(listed, text).map(({ localizer }) => localizer);
    expect(found('petrel')).toEqual(['IZPE']);
    expect(found('13 whimbrel')).toEqual(['IZWH']);
    expect(found('izds')).toEqual(['IZDS']);
    expect(found('')).toHaveLength(3);
    expect(found('petrel 13')).toEqual([]);
  });
});
