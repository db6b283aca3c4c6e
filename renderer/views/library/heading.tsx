import { useEffect, type ReactNode, type RefObject } from 'react';

interface Props {
  readonly place: RefObject<HTMLHeadingElement | null>;
  readonly children: ReactNode;
}

/** The heading of a view: the keyboard is put on it when what had it has gone, as a form that was answered. */
export function Heading({ place, children }: Props) {
  useEffect(() => {
    if (document.activeElement === document.body) place.current?.focus();
  }, [place]);
  return (
    <h1 ref={place} tabIndex={-1}>
      {children}
    </h1>
  );
}
