/** What the sheet is printed on: half a page of the standard, or half a letter. */
export const PAPERS = ['a5', 'half-letter'] as const;
export type Paper = (typeof PAPERS)[number];
