import { FLOWN_WORDS } from '../flown-words.ts';
import { alphabetical } from './alphabetical.ts';
import { grouped } from './grouped.ts';
import type { MixCount } from './school.ts';
import type { ApproachMix, MixFactor, SchoolApproach, SchoolFilter } from './school-input.ts';

/** The key of a value that nobody stated. */
export const NOT_STATED = 'not-stated';

interface FactorWords {
  readonly title: string;
  readonly key: (mix: ApproachMix) => string;
  /** Of keys that are no words for a reader. */
  readonly labels: Readonly<Record<string, string>>;
}

const FACTORS: Readonly<Record<MixFactor, FactorWords>> = {
  flown: { title: 'By hand or coupled', key: ({ flown }) => flown ?? NOT_STATED, labels: FLOWN_WORDS },
  aircraft: { title: 'Aircraft', key: ({ aircraft }) => aircraft ?? NOT_STATED, labels: {} },
  conditions: {
    title: 'Conditions',
    key: ({ conditions }) => conditions,
    labels: {
      imc: 'instrument conditions',
      simulated: 'simulated instrument conditions',
      vmc: 'visual conditions',
    },
  },
  turbulence: {
    title: 'Turbulence',
    key: ({ turbulence }) => turbulence?.trim().toLowerCase() || NOT_STATED,
    labels: {},
  },
  'course-width': {
    title: 'Course width',
    key: ({ localizerFullScaleDeg }) => widthClass(2 * localizerFullScaleDeg),
    labels: { 'under-4': 'under 4°', '4-to-5': '4° to under 5°', '5-and-more': '5° and more' },
  },
  'log-kind': { title: 'Kind of log', key: ({ logKind }) => logKind, labels: {} },
};

export const MIX_FACTORS = Object.keys(FACTORS) as MixFactor[];

/** A derived width is not exact. */
const ROUNDING_DEG = 0.0005;

/** From full left to full right, as it is published; the classes are our own. */
function widthClass(widthDeg: number): string {
  if (widthDeg < 4 - ROUNDING_DEG) return 'under-4';
  return widthDeg < 5 - ROUNDING_DEG ? '4-to-5' : '5-and-more';
}

export function mixKey(factor: MixFactor, { caseMix }: SchoolApproach): string {
  return FACTORS[factor].key(caseMix);
}

export function mixTitle(factor: MixFactor): string {
  return FACTORS[factor].title;
}

export function mixLabel(factor: MixFactor, key: string): string {
  return FACTORS[factor].labels[key] ?? (key === NOT_STATED ? 'not stated' : key);
}

/** Each factor with all of its values, counted. */
export function caseMixOf(approaches: readonly SchoolApproach[]): MixCount[] {
  const students = [...grouped(approaches, ({ studentId }) => studentId).values()];
  return MIX_FACTORS.map((factor) => ({
    factor,
    title: mixTitle(factor),
    values: alphabetical(countsOf(factor, students), ({ label }) => label),
  }));
}

function countsOf(
  factor: MixFactor,
  students: readonly (readonly SchoolApproach[])[],
): MixCount['values'][number][] {
  const counts = new Map<string, { approaches: number; students: number; last: unknown }>();
  for (const flown of students)
    for (const approach of flown) {
      const key = mixKey(factor, approach);
      let count = counts.get(key);
      if (!count) counts.set(key, (count = { approaches: 0, students: 0, last: null }));
      count.approaches++;
      if (count.last !== flown) count.students++;
      count.last = flown;
    }
  return [...counts].map(([key, { approaches, students }]) => ({
    key,
    label: mixLabel(factor, key),
    approaches,
    students,
  }));
}

/** Whether a filter lets an approach in, whatever its day and standard. */
export function isLetIn(approach: SchoolApproach, { mix }: SchoolFilter): boolean {
  return MIX_FACTORS.every((factor) => mix[factor]?.includes(mixKey(factor, approach)) ?? true);
}
