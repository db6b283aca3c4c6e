/** Characters that the library keeps of a text; what is longer its host refuses. */
export const LONGEST = { name: 200, short: 100, words: 10_000 };
