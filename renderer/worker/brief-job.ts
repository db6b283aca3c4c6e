import { defineFacility } from '../../core/analyze.ts';
import { briefingOf } from '../../core/briefing/briefing-of.ts';
import { agreedDecisionAltitude } from '../../core/briefing/decision-altitude.ts';
import { usable, type Outcome } from '../../core/issue/issue.ts';
import type { AskedBriefing, BriefingMade } from './protocol.ts';

/**
 * The briefing of a facility; a decision altitude that was not typed twice alike is left open on it.
 *
 * @param onDate decimal year for the magnetic model
 */
export function briefingMade(
  { facility, asked, decisionAltitudesFt }: AskedBriefing,
  onDate: number,
): Outcome<BriefingMade> {
  const defined = defineFacility(facility.text, 'The facility');
  if (!defined.ok) return defined;
  const agreed = agreedDecisionAltitude(...decisionAltitudesFt, defined.value.geometry);
  const decisionAltitudeFt = agreed.ok ? agreed.value : null;
  const briefing = briefingOf(defined.value, { ...asked, decisionAltitudeFt }, onDate);
  if (!briefing.ok) return briefing;
  return usable({ briefing: briefing.value, decisionProblem: agreed.ok ? null : agreed.refusal });
}
