import type { LoggedFix } from './logged-fix.ts';

/** What happens to logs on the way: each takes fixes and gives new ones, and leaves the given ones alone. */
export type Mishap = (fixes: readonly LoggedFix[]) => LoggedFix[];

/** Nothing was recorded from one time to another, both in seconds from the first fix; the ends are kept. */
export function gap(fromS: number, toS: number): Mishap {
  return (fixes) => {
    const startS = fixes[0]?.timeS ?? 0;
    return fixes.filter((fix) => fix.timeS - startS <= fromS || fix.timeS - startS >= toS);
  };
}

/** Every nth fix is written twice. */
export function duplicates(every: number): Mishap {
  return (fixes) => fixes.flatMap((fix, i) => (i % every === every - 1 ? [fix, fix] : [fix]));
}

/** Every nth fix and the one after it have changed places. */
export function disorder(every: number): Mishap {
  return (fixes) => {
    const shuffled = [...fixes];
    for (let i = every - 1; i + 1 < shuffled.length; i += every) {
      [shuffled[i], shuffled[i + 1]] = [shuffled[i + 1]!, shuffled[i]!];
    }
    return shuffled;
  };
}

/** The recorder was switched off early: nothing after so many seconds. */
export function endsAfter(seconds: number): Mishap {
  return (fixes) => {
    const startS = fixes[0]?.timeS ?? 0;
    return fixes.filter((fix) => fix.timeS - startS <= seconds);
  };
}
