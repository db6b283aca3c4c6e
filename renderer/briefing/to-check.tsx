import type { Issue } from '../../core/issue/issue.ts';

/** What in the data contradicts itself, or was assumed: before it is flown by, and not afterwards. */
export function ToCheck({ issues }: { readonly issues: readonly Issue[] }) {
  if (issues.length === 0) return null;
  return (
    <section className="to-check">
      <h2>To be checked</h2>
      <ul>
        {issues.map(({ code, severity, message, tip }) => (
          <li key={code + message}>
            <strong>{severity}:</strong> {message} {tip}
          </li>
        ))}
      </ul>
    </section>
  );
}
