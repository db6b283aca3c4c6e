import type { BriefingTable } from '../../core/briefing/briefing-tables.ts';
import { WideTable } from '../tables/wide-table.tsx';

/** A table of figures; the column that was asked for stands out. */
export function FiguresTable({ table }: { readonly table: BriefingTable }) {
  const { title, corner, columns, asked, rows } = table;
  const look = (column: number) => (column === asked ? 'number this-speed' : 'number');
  return (
    <WideTable name={title}>
      <table>
        <caption>{title}</caption>
        <thead>
          <tr>
            <th scope="col">{corner}</th>
            {columns.map((words, column) => (
              <th key={words} scope="col" className={look(column)}>
                {words}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ label, cells }) => (
            <tr key={label}>
              <th scope="row">{label}</th>
              {cells.map((words, column) => (
                <td key={columns[column]} className={look(column)}>
                  {words}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </WideTable>
  );
}
