import type { AppState, BriefTyped } from '../../state/app-state.ts';
import { windFrom, windProblem, windWords } from '../../state/wind-text.ts';
import { FacilityOptions } from '../facility/facility-options.tsx';
import { Choice, NumberBox, TextBox } from '../fields.tsx';
import { DateBox } from '../library/flight-filters.tsx';
import type { LastTime } from './use-last-time.ts';

interface Props {
  readonly state: AppState;
  /** Of the student that is chosen. */
  readonly lastTime: LastTime;
  readonly say: (change: Partial<BriefTyped>) => void;
}

/** As the command takes them. */
const SPEED_KT = { min: 30, max: 400 };
const ALTITUDE_FT = { min: -1500, max: 30_000 };
const TEMPERATURE_C = { min: -60, max: 60 };

/** What only the people who will fly know. */
export function BriefForm({ state, lastTime, say }: Props) {
  const { brief, facilities } = state;
  return (
    <form className="side" aria-labelledby="brief-heading" onSubmit={(event) => event.preventDefault()}>
      <h1 id="brief-heading">Before the flight</h1>
      <Choice words="Facility" value={brief.facilityId ?? ''} choose={(facilityId) => say({ facilityId })}>
        <FacilityOptions
          facilities={facilities}
          fits={facilities.map(({ id }) => id)}
          chosenId={brief.facilityId}
        />
      </Choice>
      {/* Boxes of their own for each facility: what stood in them for another one goes. */}
      <Speeds key={`air ${brief.facilityId}`} brief={brief} say={say} />
      <DecisionAltitude key={`chart ${brief.facilityId}`} brief={brief} say={say} />
      <Lesson state={state} lastTime={lastTime} say={say} />
      <Entered key={`entered ${brief.facilityId}`} brief={brief} say={say} />
    </form>
  );
}

type Part = Pick<Props, 'say'> & { readonly brief: BriefTyped };

function Speeds({ brief, say }: Part) {
  return (
    <>
      <NumberBox
        words="Groundspeed on final, kt"
        value={brief.groundspeedKt}
        {...SPEED_KT}
        say={(groundspeedKt) => say({ groundspeedKt })}
      />
      <NumberBox
        words="Indicated airspeed on final, kt"
        value={brief.airspeedKt}
        {...SPEED_KT}
        say={(airspeedKt) => say({ airspeedKt })}
      />
      <TextBox
        words="Wind, as 250/18 (true, kt)"
        value={windWords(brief.wind)}
        problem={windProblem}
        say={(text) => say({ wind: windFrom(text) })}
      />
      <NumberBox
        words="Temperature at the aerodrome, °C"
        value={brief.temperatureC}
        {...TEMPERATURE_C}
        say={(temperatureC) => say({ temperatureC })}
      />
    </>
  );
}

/** Typed, and typed again: nothing else puts it on the sheet. */
function DecisionAltitude({ brief, say }: Part) {
  return (
    <fieldset>
      <legend>From the current chart</legend>
      <div className="pair">
        <NumberBox
          words="Decision altitude, ft"
          value={brief.decisionAltitudeFt}
          {...ALTITUDE_FT}
          say={(decisionAltitudeFt) => say({ decisionAltitudeFt })}
        />
        <NumberBox
          words="The same again, ft"
          value={brief.decisionAltitudeAgainFt}
          {...ALTITUDE_FT}
          say={(decisionAltitudeAgainFt) => say({ decisionAltitudeAgainFt })}
        />
      </div>
    </fieldset>
  );
}

function Lesson({ state, lastTime, say }: Props) {
  const { brief } = state;
  const { practise, problem } = lastTime;
  const students = state.library.overview?.students ?? [];
  return (
    <>
      {students.length === 0 ? null : (
        <Choice
          words="Student, whose goals are put on it"
          value={brief.studentId ?? ''}
          choose={(id) => say({ studentId: id === '' ? null : id })}
        >
          <option value="">nobody</option>
          {students.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </Choice>
      )}
      {problem === null ? null : <p className="wrong">{problem}</p>}
      <TextBox
        words="Objective of the lesson"
        value={brief.objective ?? ''}
        choices={practise === null ? [] : [practise]}
        maxLength={300}
        say={(text) => say({ objective: text === '' ? null : text })}
      />
    </>
  );
}

function Entered({ brief, say }: Part) {
  return (
    <fieldset>
      <legend>The data of the facility</legend>
      <TextBox
        words="Entered by"
        value={brief.enteredBy ?? ''}
        maxLength={60}
        say={(text) => say({ enteredBy: text === '' ? null : text })}
      />
      <DateBox words="Of the day" value={brief.enteredOn} say={(enteredOn) => say({ enteredOn })} />
    </fieldset>
  );
}
