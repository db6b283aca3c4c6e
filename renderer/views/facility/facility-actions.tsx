import { Button } from 'react-aria-components';
import { nameIn } from '../../state/facility-draft.ts';
import { Removal } from '../removal.tsx';

interface Props {
  readonly isSample: boolean;
  readonly isChanged: boolean;
  readonly text: string;
  readonly keep: () => void;
  readonly undo: () => void;
  readonly copy: () => void;
  readonly remove: () => void;
}

/** What can be done with a facility; a sample stays as it is. */
export function FacilityActions({ isSample, isChanged, text, keep, undo, copy, remove }: Props) {
  return (
    <div className="row">
      {isSample ? null : (
        <>
          <Button className="button primary" isDisabled={!isChanged} onPress={keep}>
            Keep the change
          </Button>
          <Button className="button" isDisabled={!isChanged} onPress={undo}>
            Undo it
          </Button>
        </>
      )}
      <Button className="button" onPress={copy}>
        Make a copy
      </Button>
      <a
        className="button"
        download={`${nameIn(text) || 'facility'}.json`}
        href={`data:application/json,${encodeURIComponent(text)}`}
      >
        Save as a file
      </a>
      {isSample ? null : <Removal remove={remove} />}
    </div>
  );
}
