import type { ReactNode } from 'react';
import type { Issue } from '../../core/issue/issue.ts';

interface Props {
  readonly what: string;
  readonly issue: Pick<Issue, 'message' | 'tip'>;
  /** What can be done about it. */
  readonly children?: ReactNode;
}

/** That something could not be made, why, and what helps. */
export function Failed({ what, issue, children }: Props) {
  return (
    <section className="failed" role="alert">
      <h1>{what}</h1>
      <p>{issue.message}</p>
      {issue.tip ? <p>{issue.tip}</p> : null}
      {children}
    </section>
  );
}
