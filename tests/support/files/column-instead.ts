/**
 * A log in the words of `englishLayout` with one column under another header, its values times a factor: a recorder
 * that counts in something else and does not say so.
 */
export function columnInstead(csv: string, header: string, instead: string, factor: number): string {
  const [names, ...rows] = csv.trimEnd().split('\n');
  const headers = names!.split(',');
  const at = headers.indexOf(header);
  if (at === -1) throw new Error(`no column "${header}"`);
  const lines = rows.map((row) =>
    row
      .split(',')
      .map((cell, i) => (i === at ? (Number(cell) * factor).toFixed(2) : cell))
      .join(','),
  );
  return `${[headers.with(at, instead).join(','), ...lines].join('\n')}\n`;
}
