import { useState } from 'react';
import { Button } from 'react-aria-components';

/** Takes something away for good, once that was asked about. */
export function Removal({ remove }: { readonly remove: () => void }) {
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
      <Button className="button" autoFocus onPress={() => setAsks(false)}>
        Leave it
      </Button>
      <Button className="button" onPress={remove}>
        Remove
      </Button>
    </>
  );
}
