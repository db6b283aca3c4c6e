import { useState } from 'react';
import { Button } from 'react-aria-components';
import type { DebriefFinding, FindingRemark } from '../../../core/debrief/debrief-finding.ts';
import { clockOf, isDismissed, remarkSentences, saidText } from '../../../core/report/finding-lines.ts';
import type { Session } from '../../state/session.ts';
import { useUnsaid } from '../use-unsaid.ts';
import { WordsForm } from './words-form.tsx';

interface Props {
  readonly finding: DebriefFinding;
  readonly jump: (utc: string) => void;
  readonly say: (change: Partial<FindingRemark>) => void;
}

interface ItemProps extends Props {
  readonly session: Session;
  /** What is written about it goes by this. */
  readonly path: string;
}

type Writing = 'words' | 'answer';

/** One finding with its moment, and what the people of the flight say to it. */
export function FindingItem({ finding, jump, say, session, path }: ItemProps) {
  const { title, text, practise, remark } = finding;
  const [writing, setWriting] = useUnsaid<Writing | ''>(session, path, '');
  // The form was opened by its button in this view, and the keyboard goes back to that.
  const [lastWritten, setLastWritten] = useState<Writing | null>(null);
  const write = (next: Writing) => {
    setWriting(next);
    setLastWritten(next);
  };
  const close = () => session.store.unsaid.forget(path);
  if (isDismissed(finding))
    return (
      <li className="finding">
        {title}{' '}
        <Button className="link" onPress={() => say({ verdict: null })}>
          Take it back
        </Button>
      </li>
    );
  return (
    <li className="finding">
      <p>
        <strong>{title}.</strong> {saidText(finding)}
      </p>
      {practise === null ? null : <p className="aside">Practise: {practise}</p>}
      {remarkSentences(finding).map((sentence) => (
        <p key={sentence} className="aside">
          {sentence}
        </p>
      ))}
      {writing === '' ? (
        <Actions finding={finding} jump={jump} say={say} write={write} lastWritten={lastWritten} />
      ) : (
        <WordsForm
          words={writing === 'words' ? 'In your words' : 'The student’s answer'}
          value={(writing === 'words' ? (remark?.words ?? text) : remark?.answer) ?? ''}
          leave={close}
          session={session}
          path={`${path}/text`}
          isFirst={lastWritten !== null}
          keep={(said) => {
            const isOwn = said !== '' && !(writing === 'words' && said === text);
            say({ [writing]: isOwn ? said : null });
            close();
          }}
        />
      )}
    </li>
  );
}

interface ActionsProps extends Props {
  readonly write: (writing: Writing) => void;
  /** What was written before: the keyboard goes back to its button. */
  readonly lastWritten: Writing | null;
}

function Actions({ finding: { title, fromUtc, remark }, jump, say, write, lastWritten }: ActionsProps) {
  const isAccepted = remark?.verdict === 'accepted';
  return (
    <div className="row" role="group" aria-label={title}>
      <Button className="link" onPress={() => jump(fromUtc)}>
        {clockOf(fromUtc)} on the sheet
      </Button>
      <Button
        className="link"
        aria-pressed={isAccepted}
        onPress={() => say({ verdict: isAccepted ? null : 'accepted' })}
      >
        {isAccepted ? '✓ It stands' : 'It stands'}
      </Button>
      <Button className="link" autoFocus={lastWritten === 'words'} onPress={() => write('words')}>
        Say it otherwise…
      </Button>
      <Button className="link" onPress={() => say({ verdict: 'dismissed' })}>
        Take it off
      </Button>
      <Button className="link" autoFocus={lastWritten === 'answer'} onPress={() => write('answer')}>
        The student’s answer…
      </Button>
    </div>
  );
}
