/**
 * What is written into forms and not said yet. It lives as long as the window and is saved nowhere, unlike `Drafts`.
 * Each goes by a path: first the id of what it belongs to, then the form, last its field. Whoever says a form, leaves it
 * or takes away what it belongs to forgets everything below that path.
 */
export class Unsaid {
  readonly #words = new Map<string, string>();
  readonly #listeners = new Set<() => void>();

  /** Null where nothing is written; a field that was emptied is written as well. */
  at(path: string): string | null {
    return this.#words.get(path) ?? null;
  }

  write(path: string, words: string): void {
    this.#words.set(path, words);
    this.#tell();
  }

  /** Forgets what is written at a path, and everything below it. */
  forget(path: string): void {
    for (const one of this.#words.keys())
      if (one === path || one.startsWith(`${path}/`)) this.#words.delete(one);
    this.#tell();
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  #tell(): void {
    for (const listener of this.#listeners) listener();
  }
}

/** By this path goes what is written about a lesson: with a student, it goes. */
export function lessonPath(lesson: { readonly id: string; readonly student_id: string | null }): string {
  return `${lesson.student_id ?? 'nobody'}/${lesson.id}`;
}
