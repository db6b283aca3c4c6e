/** When and in which log something was flown. */
export interface Moment {
  /** `YYYY-MM-DD`, of the lesson. */
  readonly date: string;
  readonly startUtc: string;
  readonly endUtc: string;
  readonly logSha256: string;
}

/** By day, and within a day by the clock. */
export function inOrder(a: Moment, b: Moment): number {
  return compare(a.date, b.date) || compare(a.startUtc, b.startUtc);
}

function compare(a: string, b: string): number {
  if (a === b) return 0;
  return a < b ? -1 : 1;
}

/** Approaches by their log, to be asked whether another debrief tells of the same moments. */
export class Moments {
  readonly #byLog = new Map<string, Moment[]>();

  add(moment: Moment): void {
    const others = this.#byLog.get(moment.logSha256);
    if (others) others.push(moment);
    else this.#byLog.set(moment.logSha256, [moment]);
  }

  /** Whether one of them tells of the same moments of one log, as at two versions of a facility. */
  has({ logSha256, startUtc, endUtc }: Moment): boolean {
    const others = this.#byLog.get(logSha256) ?? [];
    return others.some((other) => startUtc < other.endUtc && other.startUtc < endUtc);
  }
}
