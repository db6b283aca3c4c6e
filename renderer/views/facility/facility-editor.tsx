import { useState } from 'react';
import type { FacilityEntry } from '../../state/app-state.ts';
import { copyOf, draftOf, nameIn } from '../../state/facility-draft.ts';
import { fileName } from '../../state/file-name.ts';
import { remarksOf } from '../../state/facility-remarks.ts';
import type { Session } from '../../state/session.ts';
import { EditorActions } from '../editor-actions.tsx';
import { useReading } from '../use-reading.ts';
import { FacilityForm } from './facility-form.tsx';
import { FacilityLive } from './facility-live.tsx';

interface Props {
  readonly facility: FacilityEntry;
  /** What was typed into it and not kept yet. */
  readonly draft: string | undefined;
  readonly session: Session;
  /** Keeps a text as a new facility. */
  readonly add: (text: string) => void;
}

/**
 * One facility: a form over its text, what follows from it beside that, and the text itself. The text is the one
 * truth. What is typed lies in the app's notes until it is kept or undone, so that nothing has to be asked on leaving.
 */
export function FacilityEditor({ facility, draft, session, add }: Props) {
  const text = draft ?? facility.text;
  const write = (next: string) => {
    if (next !== text) session.facilities.type(facility.id, next === facility.text ? null : next);
  };
  const { reading, isCurrent } = useReading(text, facility, session.facilities.read);
  const change = {
    isChanged: draft !== undefined,
    keep: () => void session.facilities.keep(facility.id, text),
    undo: () => session.facilities.type(facility.id, null),
    remove: () => void session.facilities.remove(facility.id),
  };
  const form = draftOf(text);
  const remarks = form.ok ? remarksOf(form.root, reading?.problems ?? []) : [];
  return (
    <section className="editor" aria-label={nameIn(text) || 'Without a name'}>
      <div className="facility-form">
        {facility.mark === null ? null : (
          <p className="aside">{`It is here ${facility.mark === 'sample' ? 'as a sample' : facility.mark}: make a copy to change it.`}</p>
        )}
        {form.ok ? (
          <FacilityForm
            text={text}
            root={form.root}
            remarks={remarks}
            isFixed={facility.isFixed}
            write={write}
          />
        ) : (
          <div className="failed">
            <p>The form is shown when its file can be read again. {form.why}</p>
          </div>
        )}
        <FileText text={text} isFixed={facility.isFixed} isOpen={!form.ok} write={write} />
      </div>
      <div className="live" aria-busy={!isCurrent}>
        <FacilityLive
          reading={reading}
          remarks={remarks}
          actions={
            <EditorActions
              text={text}
              file={`${fileName(nameIn(text) || 'facility')}.json`}
              copy={() => add(copyOf(text))}
              change={facility.isFixed ? null : change}
            />
          }
        />
      </div>
      {reading?.details ? (
        <details className="whole-sheet">
          <summary>All that follows from it</summary>
          <pre className="page">{reading.details}</pre>
        </details>
      ) : null}
    </section>
  );
}

interface FileTextProps {
  readonly text: string;
  readonly isFixed: boolean;
  readonly isOpen: boolean;
  readonly write: (text: string) => void;
}

function FileText({ text, isFixed, isOpen, write }: FileTextProps) {
  // Once it had to be opened it stays so: who mends the text is still in it when it can be read again.
  const [opens, setOpens] = useState(isOpen);
  if (isOpen && !opens) setOpens(true);
  return (
    <details open={opens}>
      <summary>Its file</summary>
      <label className="field">
        <span>Its file, as the JSON text that it is</span>
        <textarea
          spellCheck={false}
          readOnly={isFixed}
          rows={22}
          value={text}
          onChange={({ target }) => write(target.value)}
        />
      </label>
    </details>
  );
}
