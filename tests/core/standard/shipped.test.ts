import { describe, expect, it } from 'vitest';
import type { Limit, Standard } from '../../../core/standard/standard.ts';
import { CRITERION_IDS, type CriterionId } from '../../../core/standard/criterion-ids.ts';
import { DEFAULT_STANDARD, SHIPPED, standardById } from '../../../core/standard/standards.ts';
import reference from '../../reference/tolerance-standards.json' with { type: 'json' };
import { limitsOf, valueAt } from './limits-of.ts';

/**
 * tests/reference/tolerance-standards.json: one row a limit, each with its document, section and status (FAA ACS and
 * Part-FCL published, FSF, ICAO and the FAA handbook second-hand).
 */
type Row = (typeof reference.rows)[number];
const rowId = ({ section, phase, quantity }: Row) => [section, phase, quantity].filter(Boolean).join(' | ');
const rowsOf = (id: string) => reference.rows.filter(({ standard_id }) => standard_id === id);

const NEEDLES = (row: string) => ({
  [`${row} | localizer_deflection`]: ['final.localizer', 'gates.localizer'],
  [`${row} | glidepath_deflection`]: ['final.glidepath', 'gates.glidepath'],
});

/** What each row of a standard's document became. */
const USED: Record<string, Record<string, string[]>> = {
  'instrument-rating': {
    'IR.VI.B precision approach S9 | before final segment | altitude': ['beforeFinal.altitudeFt'],
    'IR.VI.B precision approach S9 | before final segment | airspeed': ['beforeFinal.airspeedKt'],
    'IR.VI.B precision approach S9 | before final segment | localizer_deflection': ['beforeFinal.localizer'],
    ...NEEDLES('IR.VI.B precision approach S12 | final, FAF to DA/DH'),
    'IR.VI.B precision approach S12 | final, FAF to DA/DH | airspeed': ['final.airspeedKt', 'gates.airspeed'],
  },
  'airline-transport': {
    'AA.VI.E precision approach S9 | before final segment | altitude': ['beforeFinal.altitudeFt'],
    'AA.VI.E precision approach S9 | before final segment | airspeed': ['beforeFinal.airspeedKt'],
    ...NEEDLES('AA.VI.E precision approach S12 | final, FAF to DA/DH'),
    'AA.VI.E precision approach S12 | final, FAF to DA/DH | airspeed': ['final.airspeedKt', 'gates.airspeed'],
  },
  'skill-test': {
    '(EU) 1178/2011 Annex I App 7 | general | height': ['beforeFinal.altitudeFt'],
    '(EU) 1178/2011 Annex I App 7 | general | speed, all engines': [
      'beforeFinal.airspeedKt',
      'final.airspeedKt',
      'gates.airspeed',
    ],
    '(EU) 1178/2011 Annex I App 7 | general | speed, asymmetric': ['final.airspeedAsymmetricKt'],
    ...NEEDLES('(EU) 1178/2011 Annex I App 7 | final (LPV, ILS, MLS, GLS)'),
    '(EU) 1178/2011 Annex I App 7 | starting go-around at DH/DA | height': ['minimums.limit'],
  },
  'stabilized-approach': {
    'gate | gate_height_imc': ['gates.instrumentFt'],
    'gate | gate_height_vmc': ['gates.visualFt'],
    ...NEEDLES('below the gate'),
    'below the gate | airspeed relative to VREF': ['final.airspeedKt', 'gates.airspeed'],
    'below the gate | sink_rate': ['gates.sinkFpm'],
  },
  'light-aircraft': {
    'ch 9 | gate | gate_height_vmc': ['gates.visualFt'],
    'ch 9 | final | airspeed': ['final.airspeedKt', 'gates.airspeed'],
    'ch 9 | final | bank': ['gates.bankDeg'],
    'ch 9 | final | sink_rate': ['gates.sinkFpm'],
  },
};

const NO_HEADING = 'assigned headings are not in a log';
const NO_TRACKING = 'tracking of other radio aids is not in a log';
const NONPRECISION = 'a nonprecision approach has no glidepath, and this program reads none';
const ENROUTE = 'clearances before the approach are not in a log';
const ACTION = 'an action, not a band; judged by time, which is our own choice';

/** Rows that this program cannot use, each with the reason. */
const NOT_USED: Record<string, [row: RegExp, why: string][]> = {
  'instrument-rating': [
    [/^IR\.VI\.B .* heading$/, NO_HEADING],
    [/^IR\.VI\.B .* at DA\/DH \| altitude$/, ACTION],
    [/^IR\.VI\.A /, NONPRECISION],
    [/^IR\.III\.A /, ENROUTE],
  ],
  'airline-transport': [
    [/^AA\.VI\.E .* heading$/, NO_HEADING],
    [/^AA\.VI\.E .* at DA\/DH \| altitude$/, ACTION],
    [/^nonprecision /, NONPRECISION],
  ],
  'skill-test': [
    [/ general \| heading, /, NO_HEADING],
    [/ general \| tracking /, NO_TRACKING],
    [/ at MDH\/MAP /, NONPRECISION],
  ],
  'stabilized-approach': [[/^circling /, 'a circling approach leaves the final that is judged']],
  'light-aircraft': [
    [/ traffic pattern: /, 'flown by eye in the traffic pattern, below the gates of an instrument approach'],
  ],
};

const WITHOUT_GATES = ['instrument-rating', 'airline-transport', 'skill-test'];
const WITHOUT_INSTRUMENT_GATE = [...WITHOUT_GATES, 'light-aircraft'];

/** What a standard without such a gate takes from elsewhere. */
const BORROWED: [path: string, source: string, row: string, by: string[]][] = [
  ['gates.sinkFpm', 'faa-h-8083-3c', 'ch 9 | final | sink_rate', WITHOUT_GATES],
  ['gates.bankDeg', 'faa-h-8083-3c', 'ch 9 | final | bank', WITHOUT_GATES],
  ['gates.visualFt', 'faa-h-8083-3c', 'ch 9 | gate | gate_height_vmc', WITHOUT_GATES],
  ['gates.instrumentFt', 'fsf-alar-bn-7-1', 'gate | gate_height_imc', WITHOUT_INSTRUMENT_GATE],
  [
    'gates.instrumentFt',
    'icao-pans-ops-stabilized',
    'Part III Section 4 ch 3 | gate | gate_height_imc',
    WITHOUT_INSTRUMENT_GATE,
  ],
];

function expectOnRow(standard: Standard, path: string, row: Row): void {
  const value = valueAt(standard, path);
  if (typeof value === 'number') {
    expect(value).toBe(row.lower);
    return;
  }
  const limit = value as Limit;
  // The handbook's 500 ft/min is a usual figure; only more than the upper one is unstable (design, section 9).
  const lower = path === 'gates.sinkFpm' ? null : row.lower;
  expect({ lower: limit.lower, upper: limit.upper }).toEqual({ lower, upper: row.upper });
  expect(limit.status).toBe(row.status);
  const code = /^((?:IR|AA)\.\S+) .* (S\d+)$/.exec(row.section ?? '');
  expect(limit.code).toBe(code === null ? null : `${code[1]!}.${code[2]!}`);
}

const CASES = Object.entries(USED).flatMap(([id, rows]) =>
  Object.entries(rows).flatMap(([row, paths]) => paths.map((path) => [id, path, row] as const)),
);

describe('each limit equals the row that it stands on', () => {
  it.each(CASES)('%s: %s is "%s"', (id, path, row) => {
    const standard = standardById(id)!;
    const found = rowsOf(standard.referenceId!).filter((candidate) => rowId(candidate) === row);
    expect(found).toHaveLength(1);
    expectOnRow(standard, path, found[0]!);
  });

  it.each(BORROWED.flatMap(([path, source, row, by]) => by.map((id) => [id, path, source, row] as const)))(
    '%s, which has no such gate, takes %s from %s: "%s"',
    (id, path, source, row) => {
      const found = rowsOf(source).filter((candidate) => rowId(candidate) === row);
      expect(found).toHaveLength(1);
      expectOnRow(standardById(id)!, path, found[0]!);
      expect(standardById(id)!.gates.source).toMatch(/FAA-H-8083-3C.*FSF ALAR.*ICAO PANS-OPS/);
    },
  );

  it.each(SHIPPED.map((standard) => [standard.id, standard] as const))(
    'and %s has no limit without a row but the time to start a missed approach, which is our own',
    (id, standard) => {
      const grounded = new Set([
        ...CASES.filter(([used]) => used === id).map(([, path]) => path),
        ...BORROWED.filter(([, , , by]) => by.includes(id)).map(([path]) => path),
      ]);
      const others = limitsOf(standard).filter(([path]) => !grounded.has(path));
      const own = standard.minimums?.kind === 'start-within-time' ? ['minimums.limit'] : [];
      expect(others.map(([path]) => path)).toEqual(own);
      for (const [, limit] of others)
        expect(limit).toMatchObject({ lower: null, upper: 3, status: 'own choice' });
    },
  );
});

describe('each row is used, or cannot be', () => {
  it.each(SHIPPED.map((standard) => [standard.referenceId!, standard.id] as const))('%s', (source, id) => {
    const rows = rowsOf(source).map(rowId);
    expect(rows.length).toBeGreaterThan(4);
    for (const row of rows) {
      const reasons = NOT_USED[id]!.filter(([pattern]) => pattern.test(row));
      expect([row, reasons.length + (row in USED[id]! ? 1 : 0)]).toEqual([row, 1]);
    }
    for (const [pattern] of NOT_USED[id]!) expect(rows.some((row) => pattern.test(row))).toBe(true);
  });
});

describe('the shipped standards', () => {
  it('are these, the instrument rating first and by default', () => {
    expect(SHIPPED.map(({ id, referenceId }) => [id, referenceId])).toEqual([
      ['instrument-rating', 'faa-s-acs-8c'],
      ['airline-transport', 'faa-s-acs-11a'],
      ['skill-test', 'part-fcl-appendix-7'],
      ['stabilized-approach', 'fsf-alar-bn-7-1'],
      ['light-aircraft', 'faa-h-8083-3c'],
    ]);
    expect(DEFAULT_STANDARD.id).toBe('instrument-rating');
  });

  it.each(SHIPPED.map((standard) => [standard.id, standard] as const))(
    '%s is found by its id',
    (id, standard) => {
      expect(standardById(id)).toBe(standard);
    },
  );

  it.each(['', 'instrument', 'Instrument-Rating', 'faa-s-acs-8c'])('"%s" is the id of none', (id) => {
    expect(standardById(id)).toBeNull();
  });

  it('measure speed against the target, but the stabilized approach against Vref', () => {
    for (const { id, final, gates } of SHIPPED) {
      expect(final.speedBasis).toBe(id === 'stabilized-approach' ? 'vref' : 'target');
      expect(gates.speedBasis).toBe(final.speedBasis);
    }
  });

  it('count from the fix, but the stabilized approach from its gate, whose height is above the airport', () => {
    for (const { id, final, gates } of SHIPPED) {
      expect(final.countsFrom).toBe(id === 'stabilized-approach' ? 'gate' : 'fix');
      expect(gates.datum).toBe(id === 'stabilized-approach' ? 'airport' : 'touchdown-zone');
    }
  });

  it('ask at decision altitude for a time, for a height, or for nothing', () => {
    expect(SHIPPED.map(({ minimums }) => minimums?.kind ?? null)).toEqual([
      'start-within-time',
      'start-within-time',
      'start-within-height',
      null,
      null,
    ]);
    for (const { minimums } of SHIPPED)
      if (minimums?.kind === 'start-within-time') expect(minimums.seconds).toBe(minimums.limit.upper);
  });

  it('say for each criterion without a limit why, and for none that has one', () => {
    for (const standard of SHIPPED) {
      const limits: Record<CriterionId, unknown> = {
        'localizer-before-final': standard.beforeFinal.localizer,
        'altitude-before-final': standard.beforeFinal.altitudeFt,
        'localizer-final': standard.final.localizer,
        'glidepath-final': standard.final.glidepath,
        'airspeed-final': standard.final.airspeedKt,
        stability: standard.gates,
        minimums: standard.minimums,
      };
      const without = CRITERION_IDS.filter((id) => limits[id] === null);
      expect(Object.keys(standard.lacks ?? {})).toEqual(without);
      for (const why of Object.values(standard.lacks ?? {})) expect(why).toMatch(/\S.*[^.]$/);
    }
  });

  it('name a task, what of it a log covers, and what it cannot see', () => {
    for (const { tasks } of SHIPPED) {
      expect(tasks).toHaveLength(1);
      expect(tasks[0]!.notSeen).toMatch(/configuration/);
      expect(tasks[0]!.notSeen).toMatch(/checklists/);
      expect(tasks[0]!.covered).toMatch(/speed/);
    }
  });

  it('have no criteria of a user', () => {
    expect(SHIPPED.flatMap(({ own }) => own)).toEqual([]);
  });
});
