import { useState } from 'react';
import { roomWords } from '../../core/report/criterion-lines.ts';
import { allowableOf, type Allowable } from '../../core/standard/allowable.ts';
import type { Standard } from '../../core/standard/standard.ts';
import type { Allowance } from '../../core/standard/stated.ts';
import { allowanceFrom, UNIT_WORDS } from '../state/allowance-text.ts';
import type { Session } from '../state/session.ts';
import { Additions } from './additions.tsx';
import { DraftActions } from './draft-actions.tsx';
import { DraftField } from './draft-field.tsx';
import { Choice } from './fields.tsx';
import { useUnsaid } from './use-unsaid.ts';

interface Props {
  readonly allowances: readonly Allowance[];
  /** What the log is judged by; null where that cannot be used. */
  readonly standard: Standard | null;
  readonly say: (allowances: readonly Allowance[]) => void;
  readonly session: Session;
  readonly flightId: string;
}

/** More room on a criterion, with its reason: the plain verdict stands, and the other is shown beside it. */
export function Allowances({ allowances, standard, say, session, flightId }: Props) {
  const path = `${flightId}/allowance`;
  const all = standard ? allowableOf(standard) : [];
  const open = all.filter(({ id }) => !allowances.some(({ criterion }) => criterion === id));
  return (
    <Additions
      legend="Allowances"
      explains="More room, and why: shown beside the plain verdict, which stands."
      add="Add an allowance"
      noMore={open.length === 0 ? noMoreWords(allowances.length > 0) : null}
      entries={allowances.map((allowance) => {
        const { criterion, by, reason } = allowance;
        const known = all.find(({ id }) => id === criterion);
        return {
          key: criterion,
          words: `${known?.title ?? criterion}: ${roomWords(by, known?.unit ?? null)} more, ${reason}`,
          note: known ? null : 'This standard has no such limit: it changes nothing.',
          remove: () => say(allowances.filter((one) => one !== allowance)),
        };
      })}
      session={session}
      path={path}
    >
      {(close, isFirst) => (
        <AllowanceDraft
          open={open}
          close={close}
          session={session}
          path={path}
          isFirst={isFirst}
          add={(allowance) =>
            // The standard may have been changed meanwhile: the last one said of a criterion is what holds.
            say([...allowances.filter(({ criterion }) => criterion !== allowance.criterion), allowance])
          }
        />
      )}
    </Additions>
  );
}

function noMoreWords(hasSome: boolean): string {
  return hasSome
    ? 'Every limit of this standard has its allowance.'
    : 'This standard has no limit to allow more on.';
}

interface DraftProps {
  readonly open: readonly Allowable[];
  readonly add: (allowance: Allowance) => void;
  readonly close: () => void;
  readonly session: Session;
  readonly path: string;
  readonly isFirst: boolean;
}

function AllowanceDraft({ open, add, close, session, path, isFirst }: DraftProps) {
  const [chosen, choose] = useUnsaid(session, `${path}/criterion`, '');
  const [by, setBy] = useUnsaid(session, `${path}/by`, '');
  const [reason, setReason] = useUnsaid(session, `${path}/reason`, '');
  const [wrong, setWrong] = useState<{ readonly by: string | null; readonly reason: string | null }>(NONE);
  const criterion = open.find(({ id }) => id === chosen) ?? open[0];
  if (!criterion) return null;
  const enter = () => {
    const typed = allowanceFrom(criterion, by, reason);
    if (typed.allowance === null) return setWrong(typed);
    add(typed.allowance);
    close();
  };
  return (
    <>
      <Choice words="Criterion" value={criterion.id} choose={choose} isFirst={isFirst}>
        {open.map(({ id, title }) => (
          <option key={id} value={id}>
            {title}
          </option>
        ))}
      </Choice>
      <DraftField
        words={`More room to either side, ${UNIT_WORDS[criterion.unit]}`}
        value={by}
        change={setBy}
        wrong={wrong.by}
        enter={enter}
      />
      <DraftField words="Reason" value={reason} change={setReason} wrong={wrong.reason} enter={enter} />
      <DraftActions words="Allow it" enter={enter} close={close} />
    </>
  );
}

const NONE = { by: null, reason: null };
