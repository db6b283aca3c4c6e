import type { ReactNode } from 'react';

interface Props {
  /** What a screen reader calls it; another for each on a page. */
  readonly name: string;
  readonly children: ReactNode;
}

/** Where a table wider than the page is moved sideways, also by the arrow keys. */
export function WideTable({ name, children }: Props) {
  return (
    <div className="wide-table" role="region" aria-label={name} tabIndex={0}>
      {children}
    </div>
  );
}
