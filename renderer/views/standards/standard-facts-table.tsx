import { standardFacts } from '../../../core/report/standard-facts.ts';
import type { Standard } from '../../../core/standard/standard.ts';

/** Every limit of a standard in words, in the order in which they are flown. */
export function StandardFactsTable({ standard }: { readonly standard: Standard }) {
  return (
    <table className="limits">
      <caption>
        {standard.title} <span className="aside">{standard.source}</span>
      </caption>
      <thead>
        <tr>
          <th scope="col">Tolerance</th>
          <th scope="col">Limit</th>
          <th scope="col">From</th>
        </tr>
      </thead>
      {standardFacts(standard).map(({ title, facts }) => (
        <tbody key={title}>
          <tr>
            <th scope="rowgroup" colSpan={3} className="group">
              {title}
            </th>
          </tr>
          {facts.map((fact) => (
            <tr key={fact.title} className={fact.isLimit ? '' : 'not-assessed'}>
              <th scope="row">{fact.title}</th>
              <td>{fact.words}</td>
              <td className="aside">{fact.from ?? (fact.isLimit ? 'its own' : '')}</td>
            </tr>
          ))}
        </tbody>
      ))}
    </table>
  );
}
