import { SINK_MARGIN_FPM } from '../standard/gate-items.ts';
import { TIMED_TITLES } from '../standard/criterion-ids.ts';
import { noLimit } from '../standard/no-limit.ts';
import { OWN_UNITS } from '../standard/own-criteria.ts';
import type {
  GateLimits,
  Limit,
  MinimumsRule,
  SourceStatus,
  SpeedBasis,
  Standard,
} from '../standard/standard.ts';
import { bandWords, scaleWords, seconds } from '../standard/words.ts';
import { whole } from '../units/whole.ts';

/** One tolerance of a standard in words. */
interface StandardFact {
  readonly title: string;
  /** The limit as it is said aloud, or why there is none. */
  readonly words: string;
  /** False where nothing is asked. */
  readonly isLimit: boolean;
  /** The standard's own code or the place where it was read, and how surely; null where the standard itself sets it. */
  readonly from: string | null;
}

/** A group of tolerances, in the order in which they are flown. */
export interface StandardFacts {
  readonly title: string;
  readonly facts: readonly StandardFact[];
}

/** Every limit of a standard in words. */
export function standardFacts(standard: Standard): StandardFacts[] {
  const { final, gates, own } = standard;
  const groups: readonly (readonly [string, readonly Tolerance[]])[] = [
    ['Before final', beforeFinal(standard)],
    [`On final, ${COUNTS_FROM[final.countsFrom]}`, onFinal(standard)],
    [
      `Stable at ${whole(gates.instrumentFt)} and ${gates.visualFt} ft above ${DATUMS[gates.datum]}`,
      atGates(gates),
    ],
    ['At minimums', [atMinimums(standard)]],
    ...(own.length === 0 ? [] : [['Also on final, for no points', own.map(ownTolerance)] as const]),
  ];
  return groups.map(([title, tolerances]) => ({
    title,
    facts: tolerances.map(({ limit, ...told }) => ({
      ...told,
      isLimit: limit !== null,
      from: limit === null ? null : sourceWords(limit, standard),
    })),
  }));
}

/** Where a limit was read; null where the user's own standard sets it. */
function sourceWords(limit: Limit, { source, referenceId, own }: Standard): string | null {
  if (referenceId === null && limit.source === source) return null;
  if (own.some((criterion) => criterion.limit === limit)) return limit.source;
  return `${limit.code ?? limit.source} (${STATUS[limit.status]})`;
}

const STATUS: Readonly<Record<SourceStatus, string>> = {
  published: 'published',
  'second-hand': 'second-hand',
  'common practice': 'common practice',
  'from memory': 'from memory',
  'own choice': 'Halfdot’s own choice',
};

const COUNTS_FROM = { fix: 'from the final approach fix', gate: 'from the gate that counts' };
const DATUMS = {
  airport: 'the airport',
  'touchdown-zone': 'the touchdown zone',
  threshold: 'the threshold',
};
const BASES: Readonly<Record<SpeedBasis, string>> = { target: 'the target', vref: 'Vref' };

/** One tolerance, with its limit as the standard has it. */
interface Tolerance extends Pick<StandardFact, 'title' | 'words'> {
  readonly limit: Limit | null;
}

function fact(title: string, limit: Limit | null, words: (limit: Limit) => string, none: string): Tolerance {
  return { title, limit, words: limit === null ? `no limit: ${none}` : words(limit) };
}

function beforeFinal(standard: Standard): Tolerance[] {
  const { localizer, altitudeFt, airspeedKt } = standard.beforeFinal;
  return [
    fact(
      TIMED_TITLES['localizer-before-final'],
      localizer,
      needleWords('localizer'),
      noLimit(standard, 'localizer-before-final'),
    ),
    fact(
      TIMED_TITLES['altitude-before-final'],
      altitudeFt,
      (limit) => `${sidesWords(limit, 'ft')} of the altitude assigned, else the fix’s`,
      noLimit(standard, 'altitude-before-final'),
    ),
    // Told with the stretch before final, and no criterion of its own.
    ...(airspeedKt === null ? [] : [fact('Airspeed before final', airspeedKt, speedWords('target'), '')]),
  ];
}

function onFinal(standard: Standard): Tolerance[] {
  const { localizer, glidepath, airspeedKt, speedBasis, airspeedAsymmetricKt } = standard.final;
  const without = (id: keyof typeof TIMED_TITLES) => noLimit(standard, id);
  return [
    fact(TIMED_TITLES['localizer-final'], localizer, needleWords('localizer'), without('localizer-final')),
    fact(TIMED_TITLES['glidepath-final'], glidepath, needleWords('glidepath'), without('glidepath-final')),
    fact(TIMED_TITLES['airspeed-final'], airspeedKt, speedWords(speedBasis), without('airspeed-final')),
    ...(airspeedAsymmetricKt === null
      ? []
      : [fact('The same with one engine out', airspeedAsymmetricKt, speedWords(speedBasis), '')]),
  ];
}

function atGates({ localizer, glidepath, airspeed, speedBasis, sinkFpm, bankDeg }: GateLimits): Tolerance[] {
  const none = 'nothing is asked of it';
  return [
    fact('Localizer', localizer, needleWords('localizer'), none),
    fact('Glidepath', glidepath, needleWords('glidepath'), none),
    fact('Airspeed', airspeed, speedWords(speedBasis), none),
    fact('Sink rate', sinkFpm, sinkWords, none),
    fact('Bank', bankDeg, ({ upper }) => `at most ${upper!}° to either side`, none),
  ];
}

function sinkWords({ upper }: Limit): string {
  return `at most ${whole(upper!)} ft/min, or ${SINK_MARGIN_FPM} more than the groundspeed needs where that is higher`;
}

function atMinimums(standard: Standard): Tolerance {
  const { minimums } = standard;
  return fact(
    'Missed approach',
    minimums?.limit ?? null,
    () => minimumsWords(minimums!),
    noLimit(standard, 'minimums'),
  );
}

function minimumsWords(rule: MinimumsRule): string {
  return rule.kind === 'start-within-time'
    ? `begun within ${seconds(rule.seconds)} of decision altitude`
    : `begun within ${sidesWords(rule.limit, 'ft')} of decision altitude`;
}

function ownTolerance({ title, quantity, limit }: Standard['own'][number]): Tolerance {
  return fact(title, limit, (given) => absoluteWords(given, OWN_UNITS[quantity]), '');
}

function speedWords(basis: SpeedBasis): (limit: Limit) => string {
  return (limit) => `${sidesWords(limit, 'kt')} of ${BASES[basis]}`;
}

/** A limit about a target; of one side alone it says that the other is free. */
function sidesWords({ lower, upper }: Limit, unit: string): string {
  const oneSide = lower === null ? 'at most ' : upper === null ? 'at least ' : '';
  return `${oneSide}${bandWords(lower, upper, unit)}`;
}

/** A limit that counts from nothing: "from −900 to −500 ft/min". */
function absoluteWords({ lower, upper }: Limit, unit: string): string {
  const signed = (value: number) => `${value < 0 ? '−' : ''}${Math.abs(value)}`;
  if (lower === null) return `at most ${signed(upper!)} ${unit}`;
  if (upper === null) return `at least ${signed(lower)} ${unit}`;
  return lower === -upper ? `±${upper} ${unit}` : `from ${signed(lower)} to ${signed(upper)} ${unit}`;
}

const NEEDLE_SIDES = { localizer: ['left', 'right'], glidepath: ['low', 'high'] } as const;

/** "¾ scale to either side", "¼ scale low, ½ scale high". */
function needleWords(axis: keyof typeof NEEDLE_SIDES): (limit: Limit) => string {
  return ({ lower, upper }) => {
    if (lower !== null && upper === -lower) return `${scaleWords(upper)} to either side`;
    const [below, above] = NEEDLE_SIDES[axis];
    const side = (bound: number | null, word: string) => {
      if (bound === null) return `no limit ${word}`;
      return bound === 0 ? `never ${word}` : `${scaleWords(Math.abs(bound))} ${word}`;
    };
    return `${side(lower, below)}, ${side(upper, above)}`;
  };
}
