/** Characters that the library keeps of a text; what is longer its host refuses. */
export const LONGEST = { remark: 2000, name: 200, short: 100, words: 10_000 };
