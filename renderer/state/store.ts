import { AT_START, reduce, type Action, type AppState } from './app-state.ts';

/** Holds the one state of the page, and tells who looks at it when it changes. */
export class Store {
  #state: AppState = AT_START;
  readonly #listeners = new Set<() => void>();

  readonly state = (): AppState => this.#state;

  readonly dispatch = (action: Action): void => {
    this.#state = reduce(this.#state, action);
    for (const listener of this.#listeners) listener();
  };

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };
}
