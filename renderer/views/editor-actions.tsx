import { Button } from 'react-aria-components';
import { Asked } from './asked.tsx';

interface Props {
  readonly text: string;
  /** Name of the file that it is saved as. */
  readonly file: string;
  /** Null of what can only be looked at. */
  readonly change: {
    readonly isChanged: boolean;
    readonly keep: () => void;
    readonly undo: () => void;
    readonly remove: () => void;
  } | null;
  readonly copy?: () => void;
}

/** What can be done with a facility or a standard that is looked at. */
export function EditorActions({ text, file, change, copy }: Props) {
  return (
    <div className="row">
      {change ? (
        <>
          <Button className="button primary" isDisabled={!change.isChanged} onPress={change.keep}>
            Keep the change
          </Button>
          <Button className="button" isDisabled={!change.isChanged} onPress={change.undo}>
            Undo it
          </Button>
        </>
      ) : null}
      {copy ? (
        <Button className="button" onPress={copy}>
          Make a copy
        </Button>
      ) : null}
      <a className="button" download={file} href={`data:application/json,${encodeURIComponent(text)}`}>
        Save as a file
      </a>
      {change ? (
        <Asked words="Remove…" question="Remove it for good?" yes="Remove" act={change.remove} />
      ) : null}
    </div>
  );
}
