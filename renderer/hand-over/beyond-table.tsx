import type { Dots, Sheet } from '../../core/sheet/sheet.ts';
import { clockOf, excursionWords } from '../sheet/words.ts';

/** Every time outside of a tolerance that was counted, one a row: the same list as beside the sheet. */
export function BeyondTable({ sheet, dots }: { readonly sheet: Sheet; readonly dots: Dots }) {
  if (sheet.excursions.length === 0) return null;
  return (
    <table className="beyond">
      <caption>Outside of a tolerance</caption>
      <thead>
        <tr>
          <th scope="col">From</th>
          <th scope="col">To</th>
          <th scope="col">Tolerance</th>
          <th scope="col">How far, and how long</th>
        </tr>
      </thead>
      <tbody>
        {sheet.excursions.map((excursion) => (
          <tr key={`${excursion.criterionId} ${excursion.startS}`}>
            <td>{clockOf(excursion.startS)}</td>
            <td>{clockOf(excursion.endS)}</td>
            <th scope="row">{excursion.title}</th>
            <td>{excursionWords(excursion, dots)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
