import { useId, useState } from 'react';
import type { Span } from '../../core/numeric/polyline.ts';
import { zoneOf } from '../../core/report/debrief-text.ts';
import type { Inspection } from '../../core/report/inspection.ts';
import { isOutside, momentsOf, spanFrom, spanWords } from '../state/span-text.ts';
import type { Debriefed } from '../state/app-state.ts';
import type { Session } from '../state/session.ts';
import { Additions } from './additions.tsx';
import { DraftActions } from './draft-actions.tsx';
import { DraftField } from './draft-field.tsx';
import { useUnsaid } from './use-unsaid.ts';

interface Props {
  readonly spans: readonly Span[];
  readonly log: Inspection;
  /** The last debrief, whose moments are offered as times; null before there is one. */
  readonly debriefed: Debriefed | null;
  readonly say: (spans: readonly Span[]) => void;
  readonly session: Session;
  readonly flightId: string;
}

/** Spans that the instructor flew: "my controls". They are left out of all that is judged. */
export function InstructorSpans({ spans, log, debriefed, say, session, flightId }: Props) {
  const path = `${flightId}/span`;
  return (
    <Additions
      legend="My controls"
      explains="What the instructor flew is left out of all that is judged."
      add="Add a span"
      entries={spans.map((span, index) => ({
        key: `${index} ${spanWords(span)}`,
        words: spanWords(span),
        note: isOutside(span, log) ? 'This is outside the log’s times: nothing is left out by it.' : null,
        remove: () => say(spans.filter((_, i) => i !== index)),
      }))}
      session={session}
      path={path}
    >
      {(close, isFirst) => (
        <SpanDraft
          log={log}
          debriefed={debriefed}
          close={close}
          session={session}
          path={path}
          isFirst={isFirst}
          add={(span) => say([...spans, span].toSorted((a, b) => a.startS - b.startS))}
        />
      )}
    </Additions>
  );
}

interface DraftProps extends Pick<Props, 'log' | 'debriefed' | 'session'> {
  readonly add: (span: Span) => void;
  readonly close: () => void;
  readonly path: string;
  readonly isFirst: boolean;
}

/** From when to when; the moments of the approach are offered, and any other time of the log can be typed. */
function SpanDraft({ log, debriefed, add, close, session, path, isFirst }: DraftProps) {
  const list = useId();
  const [start, setStart] = useUnsaid(session, `${path}/start`, '');
  const [end, setEnd] = useUnsaid(session, `${path}/end`, '');
  const [wrong, setWrong] = useState<{ readonly start: string | null; readonly end: string | null }>(NONE);
  const enter = () => {
    const typed = spanFrom(start, end, log);
    if (typed.span === null) return setWrong(typed);
    add(typed.span);
    close();
  };
  return (
    <>
      <p className="aside">Times as in the table of moments: {zoneOf(log)}.</p>
      <datalist id={list}>
        {momentsOf(debriefed?.debrief.approaches ?? []).map(([clock, words]) => (
          <option key={clock} value={clock} label={`${clock} ${words}`} />
        ))}
      </datalist>
      <div className="pair">
        <DraftField
          words="From, hh:mm:ss"
          value={start}
          change={setStart}
          wrong={wrong.start}
          enter={enter}
          list={list}
          isFirst={isFirst}
        />
        <DraftField
          words="To, hh:mm:ss"
          value={end}
          change={setEnd}
          wrong={wrong.end}
          enter={enter}
          list={list}
        />
      </div>
      <DraftActions words="Add this span" enter={enter} close={close} />
    </>
  );
}

const NONE = { start: null, end: null };
