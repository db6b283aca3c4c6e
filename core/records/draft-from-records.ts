import { deriveGeometry } from '../facility/derive-geometry.ts';
import type { Facility } from '../facility/facility-schema.ts';
import { parseFacility } from '../facility/parse-facility.ts';
import { runwayAxis } from '../facility/runway-axis.ts';
import { cycleIssue } from './cycle-issue.ts';
import { draftCourse } from './drafted-course.ts';
import { draftGlidepath } from './drafted-glidepath.ts';
import { draftLocalizer, draftRadio, draftVariation } from './drafted-localizer.ts';
import { draftProcedure } from './drafted-procedure.ts';
import { draftRunway } from './drafted-runway.ts';
import type { Drafted } from './drafted.ts';
import { Drafting } from './drafting.ts';
import { facilityRecords, type FacilityRecords } from './facility-records.ts';
import { localizerKind } from './localizer-record.ts';
import { checkRecords } from './record-contradictions.ts';
import { recordWords } from './record-words.ts';
import type { RecordsIndex } from './records-index.ts';
import { designatorOf } from './runway-names.ts';

export interface RecordsChoice {
  readonly airport: string;
  readonly localizer: string;
  /** The only procedure to look at, `I17RZ`, where several lead down the localizer. */
  readonly procedure?: string;
  /** ISO date for which the records should be good; without one their cycle is not looked at. */
  readonly onDay?: string;
}

/**
 * A facility out of official records: as complete as they are, each value with where it comes from. Touchdown zone
 * elevation and minimums are in no record and are never made up. An airport or localizer that is not there, or that
 * has no glideslope, gives an empty facility and a refusal among the issues.
 */
export function draftFromRecords(index: RecordsIndex, choice: RecordsChoice): Drafted {
  const { airport, localizer, procedure = null, onDay } = choice;
  const found = facilityRecords(index, airport, localizer, procedure);
  if (!found.ok) return { facility: {}, origins: {}, issues: [found.refusal] };
  const records = found.value;
  const words = recordWords(index.cycle);
  const draft = new Drafting();
  if (onDay !== undefined) draft.add(cycleIssue(index.cycle, onDay));
  draft.set('name', nameOf(records), words.computed('airport, runway and category'));
  draftRadio(draft, records, words);
  draft.set('airportElevationFt', records.airport?.elevationFt ?? null, words.from('airport'));
  draftRunway(draft, records, words);
  draftLocalizer(draft, records, words);
  draftGlidepath(draft, records, words);
  const facility = completeFacility(draft);
  draftProcedure(draft, records, facility === null ? null : runwayAxis(facility.runway), words);
  draftVariation(draft, records, words);
  if (facility !== null) {
    draftCourse(draft, records, facility, words);
    checkRecords(draft, records, deriveGeometry(facility));
  }
  return { ...draft.drafted(), ...(index.cycle !== null && { cycle: index.cycle }) };
}

function nameOf({ localizer }: FacilityRecords): string {
  return `${localizer.airport} ${localizerKind(localizer)} ${designatorOf(localizer.runway)}`;
}

/** What is drafted, if it has all that a facility needs. */
function completeFacility(draft: Drafting): Facility | null {
  const parsed = parseFacility(draft.text(), 'the draft');
  return parsed.ok ? parsed.value : null;
}
