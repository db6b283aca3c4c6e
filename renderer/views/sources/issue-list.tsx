import type { Issue } from '../../../core/issue/issue.ts';

/** What has to be known of a source, or of what it gave. */
export function IssueList({ issues }: { readonly issues: readonly Issue[] }) {
  if (issues.length === 0) return null;
  return (
    <ul className="source-issues">
      {issues.map(({ code, message, tip }) => (
        <li key={`${code} ${message}`}>
          {message} {tip}
        </li>
      ))}
    </ul>
  );
}
