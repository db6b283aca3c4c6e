import { bytesOf, call } from './host.ts';

interface Parts {
  readonly tell: (error: unknown) => void;
  readonly open: (name: string, bytes: ArrayBuffer) => void;
}

/** Opens the files that the host was started with, or was handed since, each once. */
export class GivenLogs {
  readonly #parts: Parts;
  readonly #opened = new Set<string>();

  constructor(parts: Parts) {
    this.#parts = parts;
  }

  async open(): Promise<void> {
    try {
      for (const { token } of await call('given', {})) {
        // Asked at each: another event may have opened it while this waited.
        if (this.#opened.has(token)) continue;
        this.#opened.add(token);
        await this.#openOne(token);
      }
    } catch (error) {
      this.#parts.tell(error);
    }
  }

  /** A file that cannot be read is told, and does not keep those after it from being opened. */
  async #openOne(token: string): Promise<void> {
    try {
      const { name, base64 } = await call('readGiven', { token });
      this.#parts.open(name, bytesOf(base64));
    } catch (error) {
      this.#parts.tell(error);
    }
  }
}
