import type { StudentNeeds } from './needs-by-criterion.ts';
import type { School } from './school.ts';
import type { SchoolInput, SchoolMeasure } from './school-input.ts';

/** What is asked about a school. */
export interface SchoolAsked extends Pick<SchoolInput, 'filter' | 'groupBy'> {
  /** A criterion's id, or `level`. */
  readonly measure: string;
  /** Else everybody has a number in place of the name. */
  readonly isNamed: boolean;
}

/** A school by one measure, with what else it can be looked at by. */
export interface SchoolPage {
  readonly school: School;
  readonly measures: readonly SchoolMeasure[];
  /** Over each student's latest three lessons among what is compared. */
  readonly needs: readonly StudentNeeds[];
}
