export interface Superiority {
  /** That a value of the first list is above one of the second, equal ones half; U / (n₁ n₂) of Mann and Whitney. */
  readonly chance: number;
  /** Pairs of which the value of the first list is above, equal to and below that of the second. */
  readonly above: number;
  readonly equal: number;
  readonly below: number;
}

/** The probability of superiority of one list over another, neither of them empty. */
export function superiority(first: readonly number[], second: readonly number[]): Superiority {
  let above = 0;
  let equal = 0;
  for (const value of first)
    for (const other of second) {
      if (value > other) above++;
      else if (value === other) equal++;
    }
  const pairs = first.length * second.length;
  return { chance: (above + equal / 2) / pairs, above, equal, below: pairs - above - equal };
}
