import { placeOnAxis, type RunwayAxis } from '../facility/runway-axis.ts';
import { decimal } from '../facility/wording.ts';
import { listed } from '../units/listed.ts';
import { FEET_PER_NM } from '../units/units.ts';
import { rounded, type Drafting } from './drafting.ts';
import { fixOfLeg, hasOwnDme, type FacilityRecords } from './facility-records.ts';
import { finalFixLeg, legsFromFixNm, missedApproachAltitudeFt, type Procedure } from './procedures.ts';
import type { RecordWords } from './record-words.ts';

/** Legs are given to a tenth of a mile; a fix farther from where its leg begins is another (our own choice). */
const LEG_SLACK_NM = 0.2;

/** What a procedure says that a facility file holds; absent where it does not. */
interface Told {
  readonly fixName: string | null;
  readonly fixAltitudeFt: number | null;
  readonly missedFt: number | null;
}

/**
 * Final approach fix and missed approach altitude. Several procedures down one localizer (Y and Z) mostly share them;
 * what they do not share is left to the user, who may name one.
 *
 * @param axis of the runway; null where it is not known
 */
export function draftProcedure(
  draft: Drafting,
  records: FacilityRecords,
  axis: RunwayAxis | null,
  words: RecordWords,
): void {
  const { procedures } = records;
  const told = procedures.map(toldBy);
  const [procedure] = procedures;
  const [first] = told;
  if (procedure === undefined || first === undefined || told.every(({ fixName }) => fixName === null))
    return noFix(draft, records);
  const idents = procedures.map(({ ident }) => ident);
  const from = words.from(`approach ${listed(idents)}`);
  if (told.every(({ missedFt }) => missedFt === first.missedFt))
    draft.set('missedApproach.climbToFt', first.missedFt, from);
  const isOneFix = told.every(
    ({ fixName, fixAltitudeFt }) => fixName === first.fixName && fixAltitudeFt === first.fixAltitudeFt,
  );
  if (!isOneFix) {
    const message = `The procedures ${listed(idents)} name different final approach fixes or altitudes, so none is taken`;
    return draft.say('records-procedures-disagree', message, 'Name the one that was flown.');
  }
  draft.set('finalApproachFix.name', first.fixName, from);
  draft.set('finalApproachFix.altitudeFt', first.fixAltitudeFt, from);
  if (hasOwnDme(records)) draft.set('finalApproachFix.dmeNm', finalFixLeg(procedure)!.dmeNm, from);
  draftDistance(draft, records, procedure, axis, words);
}

function toldBy(procedure: Procedure): Told {
  const leg = finalFixLeg(procedure);
  return {
    fixName: leg?.fix?.ident ?? null,
    fixAltitudeFt: leg?.altitudeFt ?? null,
    missedFt: missedApproachAltitudeFt(procedure),
  };
}

function noFix(draft: Drafting, { localizer }: FacilityRecords): void {
  const message = `No procedure in the records gives a final approach fix for ${localizer.ident}`;
  draft.say('records-no-fix', message, 'Enter finalApproachFix from the current chart.');
}

/** To the landing threshold, along the runway's centreline as deviations are; by the legs where the fix has no record. */
function draftDistance(
  draft: Drafting,
  { fixes, localizer }: FacilityRecords,
  procedure: Procedure,
  axis: RunwayAxis | null,
  words: RecordWords,
): void {
  const leg = finalFixLeg(procedure)!;
  const name = leg.fix!.ident;
  const place = fixOfLeg(fixes, leg);
  const legsNm = legsFromFixNm(procedure, localizer.runway);
  const path = 'finalApproachFix.distanceNm';
  if (place === null || axis === null) {
    draft.set(path, legsNm, words.from(`legs of approach ${procedure.ident}`));
    const message = `The file has no place of ${name} or of the threshold, so its distance is that of the legs, to a tenth of a mile`;
    return draft.say(
      'records-fix-place-unknown',
      legsNm === null ? `The file has no place of ${name}` : message,
    );
  }
  const distanceNm = -placeOnAxis(axis, place).alongFt / FEET_PER_NM;
  draft.set(path, rounded(distanceNm, 2), words.computed(`the positions of ${name} and of the threshold`));
  if (legsNm === null || Math.abs(legsNm - distanceNm) <= LEG_SLACK_NM) return;
  const message = `${name} lies ${decimal(distanceNm, 2)} NM from the threshold by its position, but the legs of ${procedure.ident} are ${decimal(legsNm)} NM long`;
  draft.say('records-leg-disagrees', message, 'Compare finalApproachFix with the current chart.');
}
