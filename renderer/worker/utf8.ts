import type { Utf8 } from '../../electron/bridge/text-decoding.ts';

// A mark at the beginning stays: the reader knows it.
const LENIENT = new TextDecoder('utf-8', { ignoreBOM: true });
const STRICT = new TextDecoder('utf-8', { ignoreBOM: true, fatal: true });

/** How a page tells UTF-8 and makes text of it. */
export const UTF8: Utf8 = {
  isUtf8(bytes) {
    try {
      STRICT.decode(bytes);
      return true;
    } catch {
      return false;
    }
  },
  textOf: (bytes) => LENIENT.decode(bytes),
};
