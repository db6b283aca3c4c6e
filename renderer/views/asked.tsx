import { useRef, useState } from 'react';
import { Button } from 'react-aria-components';

interface Props {
  readonly words: string;
  /** For who does not see what the button stands beside. */
  readonly label?: string;
  readonly question: string;
  readonly yes: string;
  readonly no?: string;
  readonly act: () => void;
}

/** A button that asks once before it does what cannot be undone; left, the keyboard is on it again. */
export function Asked({ words, label, question, yes, no = 'Leave it', act }: Props) {
  const [asks, setAsks] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const leave = () => {
    setAsks(false);
    // The button is there again once the answer is drawn.
    requestAnimationFrame(() => button.current?.focus());
  };
  if (!asks)
    return (
      <Button
        ref={button}
        className={label === undefined ? 'button' : 'small'}
        {...(label !== undefined && { 'aria-label': label })}
        onPress={() => setAsks(true)}
      >
        {words}
      </Button>
    );
  return (
    <div className="asked" role="group" aria-label={question}>
      <span>{question}</span>
      <Button className="button" autoFocus onPress={leave}>
        {no}
      </Button>
      <Button className="button" onPress={act}>
        {yes}
      </Button>
    </div>
  );
}
