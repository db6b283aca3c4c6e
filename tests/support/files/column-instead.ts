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

/** Some columns of a log, each under a name of its own. */
export function columnsOf(csv: string, picked: readonly (readonly [header: string, as: string])[]): string {
  const [names, ...rows] = csv.trimEnd().split('\n');
  const headers = names!.split(',');
  const at = picked.map(([header]) => headers.indexOf(header));
  const lines = rows.map((row) => {
    const cells = row.split(',');
    return at.map((i) => cells[i]).join(',');
  });
  return `${[picked.map(([, as]) => as).join(','), ...lines].join('\n')}\n`;
}
