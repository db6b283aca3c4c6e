/**
 * As many facilities of a user's own are kept, and each as long: their files have one or two thousand characters.
 * Apart from the contract, so that the page can say it before it asks, and need not carry the contract's checks.
 */
export const OWN_FACILITIES = { count: 500, characters: 100_000 } as const;
