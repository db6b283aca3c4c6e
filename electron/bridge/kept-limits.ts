/** So many logs are remembered, the newest first, and of no more a copy is kept. */
export const MOST_RECENTS = 20;

/** A larger log is not copied, bytes: as base64 in a call it still fits into the loopback host's largest body. */
export const LARGEST_KEPT_BYTES = 48_000_000;

/** The same as base64. */
export const LARGEST_BASE64 = Math.ceil(LARGEST_KEPT_BYTES / 3) * 4;
