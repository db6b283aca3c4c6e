import { Button } from 'react-aria-components';

interface Props {
  /** What saying it does. */
  readonly words: string;
  readonly enter: () => void;
  readonly close: () => void;
}

/** What can be done with something that is being made up: say it, or leave it. */
export function DraftActions({ words, enter, close }: Props) {
  return (
    <div className="row">
      <Button className="button" onPress={enter}>
        {words}
      </Button>
      <Button className="button" onPress={close}>
        Cancel
      </Button>
    </div>
  );
}
