import type { DebriefStability } from '../../core/debrief/debrief.ts';
import { whole } from '../../core/units/whole.ts';
import { VERDICTS } from './verdicts.ts';

/** Both gates: what held at each, and what was lost after it. */
export function StabilityTable({ gates }: { readonly gates: readonly DebriefStability[] }) {
  if (gates.length === 0) return null;
  return (
    <table className="stability">
      <caption>
        Stability{' '}
        <span className="aside">as far as this log shows; not seen: configuration, power, checklists</span>
      </caption>
      <tbody>
        {gates.map((gate) => (
          <tr key={gate.gate} className={gate.verdict}>
            <th scope="row">
              {whole(gate.heightFt)} ft{gate.counts ? ', counts' : ''}
            </th>
            <td className="verdict">
              <span aria-hidden="true">{VERDICTS[gate.verdict].sign}</span> {stableWords(gate)}
            </td>
            <td>
              {gate.why}
              {lostWords(gate)}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function stableWords({ verdict }: DebriefStability): string {
  return { met: 'stable', 'not-met': 'not stable', unclear: 'unclear', 'not-assessed': 'not assessed' }[
    verdict
  ];
}

function lostWords({ lostAfter }: DebriefStability): string {
  const items = [...new Set(lostAfter.map(({ item }) => item))];
  return items.length === 0 ? '' : `; after it ${items.join(', ')} outside for 3 s or more`;
}
