import { AT_START, reduce, type Action, type AppState } from './app-state.ts';
import { Unsaid } from './unsaid.ts';

/** Holds the one state of the page, and tells who looks at it when it changes. */
export class Store {
  #state: AppState = AT_START;
  readonly #listeners = new Set<() => void>();
  /** It tells of itself alone: the page is not drawn anew at every letter. */
  readonly unsaid = new Unsaid();

  readonly state = (): AppState => this.#state;

  readonly dispatch = (action: Action): void => {
    this.#state = reduce(this.#state, action);
    if (action.do === 'close') this.unsaid.forget(action.id);
    for (const listener of this.#listeners) listener();
  };

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };
}
