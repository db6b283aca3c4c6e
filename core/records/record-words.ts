/** Where values come from, in words for the user. */
export interface RecordWords {
  /** A field of a record, as it stands there: "official record, cycle 2609: runway 17R". */
  from(what: string): string;
  /** Worked out of several: "computed from the two thresholds (official records, cycle 2609)". */
  computed(what: string): string;
}

/** Whether a value comes from records of a cycle, by where it is said to come from. */
export function isOfCycle(origin: string, cycle: string): boolean {
  return origin.includes(`cycle ${cycle}`);
}

export function recordWords(cycle: string | null): RecordWords {
  const of = cycle === null ? 'cycle not known' : `cycle ${cycle}`;
  return {
    from: (what) => `official record, ${of}: ${what}`,
    computed: (what) => `computed from ${what} (official records, ${of})`,
  };
}
