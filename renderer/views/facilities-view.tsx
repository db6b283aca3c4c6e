import { useEffect, useState } from 'react';
import { Button, FileTrigger } from 'react-aria-components';
import type { AppState, FacilityEntry } from '../state/app-state.ts';
import type { Session } from '../state/session.ts';
import { FacilityPlan } from './facility-plan.tsx';
import type { FacilityReading } from '../worker/protocol.ts';

interface Props {
  readonly state: AppState;
  readonly session: Session;
}

const NEW_FACILITY = `{
  "format": "halfdot-facility/1",
  "name": "",
  "ident": "",
  "runway": {
    "designator": "",
    "threshold": { "latDeg": 0, "lonDeg": 0, "elevationFt": 0 },
    "farEnd": { "latDeg": 0, "lonDeg": 0, "elevationFt": 0 }
  },
  "glidepath": { "angleDeg": 3, "thresholdCrossingHeightFt": 50 },
  "minimums": { "decisionAltitudeFt": 0 }
}
`;

/** The facilities that can be flown to: what each says of itself, and the user's own to be changed. */
export function FacilitiesView({ state, session }: Props) {
  const [chosenId, choose] = useState<string | null>(null);
  const chosen = state.facilities.find(({ id }) => id === chosenId) ?? null;
  const add = (text: string) => {
    const id = crypto.randomUUID();
    void session.keepFacility(id, text).then(() => choose(id));
  };
  return (
    <div className="facilities">
      <section className="side" aria-labelledby="facilities-heading">
        <h1 id="facilities-heading">Facilities</h1>
        <ul>
          {state.facilities.map((facility) => (
            <li key={facility.id}>
              <Button
                className="place"
                {...(facility.id === chosenId ? { 'aria-current': 'page' as const } : {})}
                onPress={() => choose(facility.id)}
              >
                {nameOf(facility)}
              </Button>
              {facility.isSample ? <span className="aside"> sample</span> : null}
            </li>
          ))}
        </ul>
        <FileTrigger onSelect={(files) => void files?.[0]?.text().then(add)}>
          <Button className="button">Bring one in from a file…</Button>
        </FileTrigger>
        <Button className="button" onPress={() => add(NEW_FACILITY)}>
          Enter a new one
        </Button>
      </section>
      {chosen ? (
        <Editor key={chosen.id} facility={chosen} session={session} />
      ) : (
        <p className="empty">Choose a facility to see what follows from it, or bring one in from a file.</p>
      )}
    </div>
  );
}

function nameOf({ reading, id }: FacilityEntry): string {
  if (!reading) return id;
  return reading.refusal ? 'Not complete yet' : reading.name;
}

/** A facility's text, checked while it is written; what can be used is kept at once when that is asked for. */
function Editor({ facility, session }: { readonly facility: FacilityEntry; readonly session: Session }) {
  const [text, setText] = useState(facility.text);
  const [reading, setReading] = useState<FacilityReading | null>(facility.reading);
  useEffect(() => {
    let isCurrent = true;
    const { id } = facility;
    void session.readFacility({ id, text }).then((found) => isCurrent && setReading(found));
    return () => {
      isCurrent = false;
    };
  }, [facility, session, text]);
  const isChanged = text !== facility.text;
  return (
    <section className="editor" aria-label={nameOf(facility)}>
      <Checked reading={reading} />
      {reading && reading.plan.length > 0 ? <FacilityPlan plan={reading.plan} name={reading.name} /> : null}
      <label className="field">
        <span>{facility.isSample ? 'Its file (a sample: make a copy to change it)' : 'Its file'}</span>
        <textarea
          spellCheck={false}
          readOnly={facility.isSample}
          rows={22}
          value={text}
          onChange={({ target }) => setText(target.value)}
        />
      </label>
      <div className="row">
        {facility.isSample ? (
          <Button className="button" onPress={() => void session.keepFacility(crypto.randomUUID(), text)}>
            Make a copy
          </Button>
        ) : (
          <>
            <Button
              className="button primary"
              isDisabled={!isChanged}
              onPress={() => void session.keepFacility(facility.id, text)}
            >
              Keep the change
            </Button>
            <Button className="button" isDisabled={!isChanged} onPress={() => setText(facility.text)}>
              Undo it
            </Button>
          </>
        )}
        <a
          className="button"
          download={`${reading?.name || 'facility'}.json`}
          href={`data:application/json,${encodeURIComponent(text)}`}
        >
          Save as a file
        </a>
        {facility.isSample ? null : <Removal remove={() => void session.removeFacility(facility.id)} />}
      </div>
    </section>
  );
}

/** What the text says of itself: what is wrong with it, or what follows from it. */
function Checked({ reading }: { readonly reading: FacilityReading | null }) {
  if (reading === null) return <p>Checking …</p>;
  if (reading.refusal)
    return (
      <div className="failed" role="status">
        <p>{reading.refusal.message}</p>
        {reading.refusal.tip ? <p>{reading.refusal.tip}</p> : null}
      </div>
    );
  return <pre className="page">{reading.details}</pre>;
}

/** Takes a facility away once that was asked about. */
function Removal({ remove }: { readonly remove: () => void }) {
  const [asks, setAsks] = useState(false);
  if (!asks)
    return (
      <Button className="button" onPress={() => setAsks(true)}>
        Remove…
      </Button>
    );
  return (
    <>
      <span>Remove it for good?</span>
      <Button className="button" onPress={remove}>
        Remove
      </Button>
      <Button className="button" onPress={() => setAsks(false)}>
        Leave it
      </Button>
    </>
  );
}
