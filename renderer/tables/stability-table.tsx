import type { DebriefStability } from '../../core/debrief/debrief.ts';
import { whole } from '../../core/units/whole.ts';
import { gateWords } from '../../core/report/criterion-lines.ts';
import { stableWord, VERDICTS } from '../../core/report/verdict-words.ts';

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
            <th scope="row">{whole(gate.heightFt)} ft</th>
            <td className="verdict">
              <span aria-hidden="true">{VERDICTS[gate.verdict].sign}</span> {stableWord(gate.verdict)}
            </td>
            <td>{gateWords(gate)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
