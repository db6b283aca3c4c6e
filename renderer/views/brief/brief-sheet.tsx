import type { Paper } from '../../../core/briefing/papers.ts';
import { DEFAULT_STANDARD } from '../../../core/standard/standards.ts';
import { BriefingSheet } from '../../briefing/briefing-sheet.tsx';
import type { AppState, FacilityEntry } from '../../state/app-state.ts';
import { standardNamed } from '../../state/own-standards.ts';
import type { Session } from '../../state/session.ts';
import type { AskedBriefing } from '../../worker/protocol.ts';
import { Failed } from '../failed.tsx';
import { Choice } from '../fields.tsx';
import { BriefButtons } from './brief-buttons.tsx';
import { useBriefing } from './use-briefing.ts';

interface Props {
  readonly facility: FacilityEntry;
  readonly goals: readonly string[];
  readonly state: AppState;
  readonly session: Session;
}

/** The sheet as it will be printed, and what can be done with it. */
export function BriefSheet({ facility, goals, state, session }: Props) {
  const { paper } = state.brief;
  const made = useBriefing(askedOf(facility, goals, state), session.facilities.brief);
  if (made === null) return <p className="working">The sheet is being made …</p>;
  if (!made.ok) return <Failed what="No briefing can be made" issue={made.refusal} />;
  const { briefing, decisionProblem } = made.value;
  return (
    <section aria-label="Sheet">
      <div className="row brief-actions">
        <Choice
          words="Paper"
          value={paper}
          choose={(chosen) => session.store.dispatch({ do: 'brief', brief: { paper: chosen as Paper } })}
        >
          <option value="a5">A5</option>
          <option value="half-letter">half letter</option>
        </Choice>
        <BriefButtons briefing={briefing} paper={paper} />
      </div>
      <div role="alert">
        {decisionProblem === null ? null : (
          <p className="notice">
            {decisionProblem.message} {decisionProblem.tip}
          </p>
        )}
      </div>
      <div className="hand-over">
        <BriefingSheet briefing={briefing} paper={paper} />
      </div>
    </section>
  );
}

function askedOf({ id, text }: FacilityEntry, goals: readonly string[], state: AppState): AskedBriefing {
  const { groundspeedKt, airspeedKt, wind, temperatureC, objective, enteredBy, enteredOn } = state.brief;
  const { dots, standard } = state.notes.settings;
  // What one's own standard lies broken, the default one has.
  const { gates } = standardNamed(state, standard) ?? DEFAULT_STANDARD;
  return {
    facility: { id, text },
    asked: {
      groundspeedKt,
      airspeedKt,
      wind,
      temperatureC,
      gateDatum: gates.datum,
      dots,
      objective,
      goals,
      enteredBy,
      enteredOn,
    },
    decisionAltitudesFt: [state.brief.decisionAltitudeFt, state.brief.decisionAltitudeAgainFt],
  };
}
