/**
 * As many standards of a user's own are kept, and each as long: one that says everything is 5,000 characters. Apart
 * from the contract, so that the page can say it before it asks, and need not carry the contract's checks.
 */
export const OWN_STANDARDS = { count: 100, characters: 50_000 } as const;
