import { Button } from 'react-aria-components';

interface Props {
  readonly words: string;
  readonly share: number | null;
  readonly stop: (() => void) | null;
}

/** Something under way: how far it is, and a way to stop it. */
export function Working({ words, share, stop }: Props) {
  return (
    <section className="working" aria-live="polite">
      <p>
        {words}
        {share === null ? ' …' : `, ${Math.round(share * 100)} %`}
      </p>
      <progress aria-label={words} {...(share === null ? {} : { value: share })} max={1} />
      {stop ? (
        <Button className="button" onPress={stop}>
          Stop
        </Button>
      ) : null}
    </section>
  );
}
