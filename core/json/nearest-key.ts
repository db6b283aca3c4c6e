/**
 * The known key that a mistyped one most likely stands for; null when none is near. Upper and lower case are
 * one here, and a swapped pair of letters counts as one slip (optimal string alignment distance).
 */
export function nearestKey(typed: string, known: readonly string[]): string | null {
  const allowed = Math.max(2, Math.floor(typed.length / 3));
  let nearest: string | null = null;
  let fewest = allowed + 1;
  for (const key of known) {
    const slips = slipsBetween(typed.toLowerCase(), key.toLowerCase());
    if (slips < fewest) [nearest, fewest] = [key, slips];
  }
  return nearest;
}

function slipsBetween(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)];
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const changed = rows[i - 1]![j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      row[j] = Math.min(changed, rows[i - 1]![j]! + 1, row[j - 1]! + 1);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) row[j] = Math.min(row[j]!, rows[i - 2]![j - 2]! + 1);
    }
    rows.push(row);
  }
  return rows[a.length]![b.length]!;
}
