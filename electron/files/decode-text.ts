import { isUtf8 } from 'node:buffer';
import { TextDecoding as Decoding } from '../bridge/text-decoding.ts';

/** Bytes of a file to text, by Node's own means. */
export class TextDecoding extends Decoding {
  constructor() {
    super({ isUtf8, textOf });
  }
}

/** UTF-8 as text. Not by a TextDecoder, which makes two bytes of every ASCII character: twice the memory to read. */
function textOf({ buffer, byteOffset, length }: Uint8Array): string {
  return Buffer.from(buffer, byteOffset, length).toString('utf8');
}
