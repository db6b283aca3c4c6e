import { useRef, type ReactNode } from 'react';
import { Button } from 'react-aria-components';
import { Heading } from './library/heading.tsx';
import type { Answered } from './use-answer.ts';

type Props = Pick<Answered<never>, 'again'> & {
  readonly problem: NonNullable<Answered<never>['problem']>;
};

/** In place of a page that is not there any more, or could not be read. */
export function Unread({
  what,
  problem: { isGone, words },
  again,
  back,
}: Props & { readonly what: string; readonly back: ReactNode }) {
  const heading = useRef<HTMLHeadingElement>(null);
  return (
    <section className="empty">
      <Heading place={heading}>
        {isGone ? `This ${what} is not in the library any more` : `The ${what} could not be read`}
      </Heading>
      {isGone ? null : <p role="alert">{words}</p>}
      <div className="row">
        {isGone ? null : <TryAgain again={again} />}
        {back}
      </div>
    </section>
  );
}

/** Above a page that is shown as it was read before. */
export function ReadBefore({ problem, again }: Props) {
  return (
    <p role="alert">
      What is shown was read before, and could not be read anew. {problem.words} <TryAgain again={again} />
    </p>
  );
}

function TryAgain({ again }: { readonly again: () => void }) {
  return (
    <Button className="button" onPress={again}>
      Try again
    </Button>
  );
}
