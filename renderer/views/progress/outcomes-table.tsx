import { OUTCOME_WORDS } from '../../../core/progress/school/outcome-words.ts';
import type { Outcomes } from '../../../core/progress/school/school.ts';

/** What came of the approaches at their gates: three shares, each with how sure it is. */
export function OutcomesTable({ outcomes }: { readonly outcomes: Outcomes }) {
  const { decided, shares, unclear, notAssessed } = outcomes;
  return (
    <section className="outcomes">
      <h2>Stable, and what came of it</h2>
      <p className="aside">
        Of {decided} decided; besides {unclear} unclear and {notAssessed} not assessed.
      </p>
      <table>
        <thead>
          <tr>
            <th scope="col">Approaches</th>
            <th scope="col">Count</th>
            <th scope="col">Share</th>
            <th scope="col">Between, 95 %</th>
          </tr>
        </thead>
        <tbody>
          {shares.map(({ outcome, count, share, interval }) => (
            <tr key={outcome}>
              <th scope="row">{OUTCOME_WORDS[outcome]}</th>
              <td>{count}</td>
              <td>{percent(share)}</td>
              <td>
                {interval === null
                  ? 'one student only'
                  : `${percent(interval.low)} and ${percent(interval.high)}`}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function percent(share: number): string {
  return `${Math.round(share * 100)}\u00a0%`;
}
