import { fileName } from './file-name.ts';
import type { SavedFile } from '../worker/protocol.ts';

/** So long a browser may take to fetch what it is given, ms. */
const KEPT_MS = 60_000;

/** Saves a file under a name and its own ending, where the browser or the window puts what is saved. */
export function download(name: string, { ending, type, text }: SavedFile): void {
  const address = URL.createObjectURL(new Blob([text], { type: `${type};charset=utf-8` }));
  const link = document.createElement('a');
  link.href = address;
  link.download = `${fileName(name)}.${ending}`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), KEPT_MS);
}
