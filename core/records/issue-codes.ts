import type { Severity } from '../issue/issue.ts';

/** Everything that reading records and drafting a facility can have to say: how severe, and when. */
export const RECORDS_ISSUES = {
  // The file.
  cancelled: ['refusal', 'the job was stopped'],
  'records-file-empty': ['refusal', 'the file holds nothing, or blanks only'],
  'records-file-packed': ['refusal', 'it is a packed archive, as the file is published'],
  'records-none': ['refusal', 'no line of it is a record of ARINC 424'],
  'records-unreadable': ['caution', 'records are left out because they could not be read'],
  'records-fewer-than-said': ['caution', 'the header says that there are more records'],
  'records-too-many': ['warning', 'more records than are held at a time: the last ones are left out'],
  'records-cycle-unknown': ['caution', 'nothing says which cycle the file is of'],
  'records-cycle-past': ['caution', 'the day in question lies after the cycle of the file'],
  'records-cycle-not-yet': ['caution', 'the day in question lies before it'],
  'records-no-ils': ['note', 'no airport in it has a localizer with a glideslope'],
  // Which facility.
  'records-airport-unknown': ['refusal', 'no airport of that ident has a localizer'],
  'records-localizer-unknown': ['refusal', 'the airport has no localizer of that ident'],
  'records-no-glideslope': ['refusal', 'the localizer has no glideslope'],
  'records-procedure-unknown': ['refusal', 'no procedure of that name leads down this localizer'],
  // What the facility lacks, or what of it was decided.
  'records-no-runway': ['warning', 'no record of the runway: there is no threshold'],
  'records-no-elevation': ['warning', 'the runway record lacks the elevation of the threshold'],
  'records-no-far-end': ['caution', 'no record of the opposite runway: the far end is computed'],
  'records-no-crossing-height': ['warning', 'no record tells the threshold crossing height'],
  'records-no-fix': ['caution', 'no final approach fix can be told'],
  'records-fix-place-unknown': ['caution', 'the fix has no record: its distance is that of the leg'],
  // What contradicts something else in the records.
  'records-antenna-disagrees': ['caution', 'the antenna is not where the record says it stands'],
  'records-angle-disagrees': ['warning', 'the procedure has another angle than the glideslope'],
  'records-crossing-altitude-disagrees': ['caution', 'the procedure crosses the threshold at another height'],
  'records-leg-disagrees': ['caution', 'the leg has another length than its fix'],
  'records-procedures-disagree': ['caution', 'several procedures name different fixes: none is taken'],
} as const satisfies Readonly<Record<string, readonly [Severity, string]>>;

export type RecordsIssueCode = keyof typeof RECORDS_ISSUES;
