import type { Stated } from '../../core/standard/stated.ts';
import type { Inspection } from '../../core/report/inspection.ts';
import { lastDebriefed, type AppState, type Flight } from '../state/app-state.ts';
import type { Session } from '../state/session.ts';
import { windFrom, windProblem, windWords } from '../state/wind-text.ts';
import { standardNamed } from '../state/own-standards.ts';
import { Allowances } from './allowances.tsx';
import { FacilityOptions } from './facility/facility-options.tsx';
import { Choice, NumberBox, TextBox, Tick } from './fields.tsx';
import { InstructorSpans } from './instructor-spans.tsx';
import { StandardOptions } from './standards/standard-options.tsx';

interface Props {
  readonly flight: Flight;
  readonly state: AppState;
  readonly session: Session;
  readonly inspection: Inspection;
}

/** Facility, standard, and what only the people on board know. Every change judges anew. */
export function StatementForm({ flight, state, session, inspection }: Props) {
  const { id, stated } = flight;
  const say = (change: Partial<Stated>) => void session.state(id, change);
  return (
    <form className="statements" onSubmit={(event) => event.preventDefault()}>
      <Choice
        words="Facility"
        value={flight.facilityId ?? ''}
        choose={(facilityId) => void session.chooseFacility(id, facilityId)}
      >
        <FacilityOptions
          facilities={state.facilities}
          fits={flight.fits ?? []}
          chosenId={flight.facilityId}
        />
      </Choice>
      <Choice
        words="Standard"
        value={flight.standardId}
        choose={(standardId) => void session.chooseStandard(id, standardId)}
      >
        <StandardOptions own={state.standards} kept={state.keptStandards} chosenId={flight.standardId} />
      </Choice>
      <Statements stated={stated} say={say} />
      <InstructorSpans
        spans={stated.instructorFlew}
        log={inspection}
        debriefed={lastDebriefed(flight.judged)}
        say={(instructorFlew) => say({ instructorFlew })}
      />
      <Allowances
        allowances={stated.allowances}
        standard={standardNamed(state, flight.standardId)}
        say={(allowances) => say({ allowances })}
      />
      <Choice
        words="Positions come from"
        value={flight.settings.receiver ?? ''}
        choose={(receiver) => void session.setSettings(id, withReceiver(flight, receiver))}
      >
        <option value="">as the log shows</option>
        <option value="augmented">an augmented receiver</option>
        <option value="plain">a plain receiver</option>
        <option value="phone">a phone</option>
      </Choice>
    </form>
  );
}

interface StatementsProps {
  readonly stated: Stated;
  readonly say: (change: Partial<Stated>) => void;
}

/** Speeds of aircraft that fly an ILS, and altitudes that one is assigned: the command takes the same. */
const SPEED_KT = { min: 30, max: 400 };
const ALTITUDE_FT = { min: -1500, max: 30_000 };

/** What a log cannot tell; what is not stated is not guessed. */
function Statements({ stated, say }: StatementsProps) {
  return (
    <fieldset>
      <legend>What only you know</legend>
      <p className="aside">What is left empty is not stated, and not guessed.</p>
      <NumberBox
        words="Target airspeed on final, kt"
        value={stated.targetAirspeedKt}
        {...SPEED_KT}
        say={(kt) => say({ targetAirspeedKt: kt })}
      />
      <NumberBox words="Vref, kt" value={stated.vrefKt} {...SPEED_KT} say={(kt) => say({ vrefKt: kt })} />
      <NumberBox
        words="Airspeed before final, kt"
        value={stated.interceptAirspeedKt}
        {...SPEED_KT}
        say={(kt) => say({ interceptAirspeedKt: kt })}
      />
      <NumberBox
        words="Altitude assigned before final, ft"
        value={stated.assignedAltitudeFt}
        {...ALTITUDE_FT}
        say={(ft) => say({ assignedAltitudeFt: ft })}
      />
      <Choice
        words="Conditions"
        value={stated.conditions}
        choose={(conditions) => say({ conditions: conditions as Stated['conditions'] })}
      >
        <option value="not-stated">not stated</option>
        <option value="imc">instrument</option>
        <option value="simulated">simulated instrument</option>
        <option value="vmc">visual</option>
      </Choice>
      <Choice
        words="Runway at minimums"
        value={stated.visualReferenceAtMinimums}
        choose={(seen) => say({ visualReferenceAtMinimums: seen as Stated['visualReferenceAtMinimums'] })}
      >
        <option value="not-stated">not stated</option>
        <option value="seen">in sight</option>
        <option value="not-seen">not in sight</option>
      </Choice>
      <Tick
        words="Vectored onto it inside the fix"
        value={stated.vectoredInsideFix}
        say={(yes) => say({ vectoredInsideFix: yes })}
      />
      <Tick words="One engine out" value={stated.engineOut} say={(yes) => say({ engineOut: yes })} />
      <MoreStatements stated={stated} say={say} />
    </fieldset>
  );
}

/** Printed with the answer; but for the wind none of it changes a verdict. */
function MoreStatements({ stated, say }: StatementsProps) {
  return (
    <>
      <TextBox
        words="Wind, as 250/18 (true, kt)"
        value={windWords(stated.wind)}
        problem={windProblem}
        say={(text) => say({ wind: windFrom(text) })}
      />
      <Choice
        words="Hood"
        value={stated.hood === null ? '' : stated.hood ? 'yes' : 'no'}
        choose={(hood) => say({ hood: hood === '' ? null : hood === 'yes' })}
      >
        <option value="">not stated</option>
        <option value="yes">worn</option>
        <option value="no">not worn</option>
      </Choice>
      <Choice
        words="Flown"
        value={stated.flown ?? ''}
        choose={(flown) => say({ flown: flown === '' ? null : (flown as NonNullable<Stated['flown']>) })}
      >
        <option value="">not stated</option>
        <option value="hand-flown">by hand</option>
        <option value="coupled">coupled</option>
      </Choice>
      <TextBox
        words="Turbulence"
        value={stated.turbulence ?? ''}
        say={(text) => say({ turbulence: text === '' ? null : text })}
      />
    </>
  );
}

function withReceiver({ settings }: Flight, receiver: string): Flight['settings'] {
  const { receiver: _, ...rest } = settings;
  return receiver === ''
    ? rest
    : { ...rest, receiver: receiver as NonNullable<Flight['settings']['receiver']> };
}
