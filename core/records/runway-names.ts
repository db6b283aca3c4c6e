/** `RW17R` as pilots and facility files write it: `17R`. */
export function designatorOf(runway: string): string {
  return runway.replace(/^RW/, '');
}

const OTHER_SIDE: Readonly<Record<string, string>> = { L: 'R', R: 'L' };

/** The name of the same pavement from its other end, `RW35L` of `RW17R`; null for what is no such name. */
export function oppositeRunway(runway: string): string | null {
  const parts = /^RW(\d{2})([A-Z]?)$/.exec(runway);
  const number = Number(parts?.[1]);
  if (parts === null || number < 1 || number > 36) return null;
  const opposite = number > 18 ? number - 18 : number + 18;
  const letter = parts[2]!;
  return `RW${String(opposite).padStart(2, '0')}${OTHER_SIDE[letter] ?? letter}`;
}
