import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';
import type { Issue } from '../../../core/issue/issue.ts';
import { inWords, nameOfPlace, type Remark } from '../../state/facility-remarks.ts';
import type { FacilityFact, FacilityReading } from '../../worker/protocol.ts';
import { boxId } from './facility-box.tsx';
import { FacilityPlan } from './facility-plan.tsx';

interface Props {
  readonly reading: FacilityReading | null;
  readonly remarks: readonly Remark[];
  /** What can be done with it, which stands right below whether it is complete. */
  readonly actions: ReactNode;
}

/** Beside the form: whether a facility can be used, what it lacks, and what follows from what was typed. */
export function FacilityLive({ reading, remarks, actions }: Props) {
  if (reading === null) return <p role="status">Checking …</p>;
  if (reading.refusal) return <Incomplete refusal={reading.refusal} remarks={remarks} actions={actions} />;
  const { plan, name, facts, issues } = reading;
  return (
    <>
      <Status words="Complete: it can be used" />
      {actions}
      <ToCheck issues={issues} />
      <FacilityPlan plan={plan} name={name} />
      <Facts facts={facts} />
    </>
  );
}

/** Told to who cannot see it whenever it changes. */
function Status({ words }: { readonly words: string }) {
  return (
    <div role="status">
      <h2>{words}</h2>
    </div>
  );
}

interface IncompleteProps extends Omit<Props, 'reading'> {
  readonly refusal: Issue;
}

function Incomplete({ refusal, remarks, actions }: IncompleteProps) {
  const lacking = remarks.filter(({ kind }) => kind === 'lacking');
  const wrong = remarks.filter(({ kind }) => kind === 'wrong');
  return (
    <>
      <Status words="Not complete yet" />
      {actions}
      <p>It can be kept as it is, and finished later. No flight is judged by it until it is complete.</p>
      {remarks.length === 0 ? (
        <div className="failed">
          <p>{refusal.message}</p>
          {refusal.tip ? <p>{refusal.tip}</p> : null}
        </div>
      ) : null}
      {wrong.length > 0 ? (
        <>
          <h3>To be put right</h3>
          <ul className="remarks">
            {wrong.map((remark) => (
              <li key={`${nameOfPlace(remark)} ${remark.sentence}`}>
                <Place remark={remark} /> <span className="wrong">{remark.sentence}</span>
              </li>
            ))}
          </ul>
        </>
      ) : null}
      {lacking.length > 0 ? (
        <>
          <h3>Still needed</h3>
          <ul className="remarks">
            {lacking.map((remark) => (
              <li key={nameOfPlace(remark)}>
                <Place remark={remark} />
              </li>
            ))}
          </ul>
        </>
      ) : null}
    </>
  );
}

/** The name of a field, by which it is gone to; the name alone of what is not one field. */
function Place({ remark }: { readonly remark: Remark }) {
  const { at } = remark;
  if (at === null) return null;
  const field = 'fields' in at ? at.fields[0]! : at;
  return (
    <Button className="link" onPress={() => goTo(boxId(field))}>
      {nameOfPlace(remark)}
    </Button>
  );
}

function goTo(id: string): void {
  const box = document.getElementById(id);
  const around = box?.closest('details');
  if (around) around.open = true;
  box?.focus();
}

function Facts({ facts }: { readonly facts: readonly FacilityFact[] }) {
  return (
    <dl className="facts">
      {facts.map(({ words, value, from }) => (
        <div key={words}>
          <dt>{words}</dt>
          <dd>
            {value}
            {from ? <span className="aside"> {from}</span> : null}
          </dd>
        </div>
      ))}
    </dl>
  );
}

function ToCheck({ issues }: { readonly issues: readonly Issue[] }) {
  if (issues.length === 0) return <p>Nothing in it contradicts anything else in it.</p>;
  return (
    <>
      <h3>To be checked</h3>
      <ul className="remarks">
        {issues.map(({ message, tip, severity }) => (
          <li key={message}>
            <span className={severity === 'warning' ? 'wrong' : ''}>{inWords(message)}</span>
            {tip ? <span className="aside"> {inWords(tip)}</span> : null}
          </li>
        ))}
      </ul>
    </>
  );
}
