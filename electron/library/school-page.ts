import { latestApproaches } from '../../core/progress/school/latest-approaches.ts';
import { needsByCriterion } from '../../core/progress/school/needs-by-criterion.ts';
import { schoolWith } from '../../core/progress/school/school-of.ts';
import type { SchoolApproach, SchoolInput, SchoolMeasure } from '../../core/progress/school/school-input.ts';
import type { SchoolAsked, SchoolPage } from '../../core/progress/school/school-page.ts';
import { latestVerdicts } from './latest-verdicts.ts';
import { from, type Library } from './library.ts';
import { schoolApproaches } from './school-approaches.ts';
import { schoolCoverage } from './school-coverage.ts';
import { schoolMeasures } from './school-measures.ts';
import type { Role } from './tables.ts';

/** The whole school by one measure; null where nobody was held to it. */
export function schoolPage(library: Library, asked: SchoolAsked): SchoolPage | null {
  const measures = schoolMeasures(library);
  const measure = measures.find(({ id }) => id === asked.measure);
  if (!measure) return null;
  const names = namesOf(library, asked.isNamed);
  const { filter, groupBy } = asked;
  const { approaches, coverage } = read(library, measure);
  const { school, approaches: compared } = schoolWith({
    measure,
    approaches,
    filter,
    groupBy,
    names,
    coverage,
  });
  const latest = latestVerdicts(library, latestApproaches(compared));
  return { school, measures, needs: needsByCriterion(latest, measures, names) };
}

interface Read {
  readonly state: string;
  readonly measure: SchoolMeasure;
  readonly approaches: readonly SchoolApproach[];
  readonly coverage: SchoolInput['coverage'];
}

const LAST_READ = new WeakMap<Library, Read>();

/** What was read last is used again where it would be the same: other groups and filters are then there at once. */
function read(library: Library, measure: SchoolMeasure): Read {
  const state = library.state();
  const last = LAST_READ.get(library);
  if (last?.state === state && last.measure.id === measure.id) return last;
  const { approaches, ...counts } = schoolApproaches(library, measure);
  const now = { state, measure, approaches, coverage: schoolCoverage(library, counts) };
  LAST_READ.set(library, now);
  return now;
}

/** What an export without names calls somebody: another number for the same would be confusing. */
function isStandIn(name: string): boolean {
  return /^(Student|Instructor) \d+( \(\d+\))?$/.test(name);
}

const STAND_INS: Readonly<Record<Role, string>> = { student: 'Student', instructor: 'Instructor' };

/** By id; the numbers that stand for names go by the ids, which say nothing of who came first. */
function namesOf(library: Library, isNamed: boolean): Map<string, string> {
  const people = library.all(from.selectFrom('people').select(['id', 'role', 'name']).orderBy('id'));
  const counts = { student: 0, instructor: 0 };
  return new Map(
    people.map(({ id, role, name }) => [
      id,
      isNamed || isStandIn(name) ? name : `${STAND_INS[role]} ${++counts[role]}`,
    ]),
  );
}
