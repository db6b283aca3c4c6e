import { TextDecoding } from '../../electron/bridge/text-decoding.ts';
import { UTF8 } from '../worker/utf8.ts';

/** The text of a file in whichever encoding its bytes are; null where it has more than `most` characters. */
export async function textOfFile(file: File, most: number): Promise<string | null> {
  // Four bytes a character at most: a log is not read only to be refused.
  if (file.size > 4 * most) return null;
  const decoding = new TextDecoding(UTF8);
  const text = decoding.decode(new Uint8Array(await file.arrayBuffer())) + decoding.end();
  return text.length <= most ? text : null;
}
