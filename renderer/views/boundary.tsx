import { Component, type ReactNode } from 'react';
import { Button } from 'react-aria-components';
import { NotFetched } from '../later-views.ts';

interface Props {
  /** Loads the page anew. */
  readonly reload: () => void;
  readonly children: ReactNode;
}

interface State {
  readonly problem: { readonly error: unknown } | null;
}

/** Says in place of a view that it cannot be shown, so that the rest of the page, and what is open in it, stays. */
export class Boundary extends Component<Props, State> {
  override readonly state: State = { problem: null };

  static getDerivedStateFromError(error: unknown): State {
    return { problem: { error } };
  }

  override render(): ReactNode {
    const { problem } = this.state;
    if (problem === null) return this.props.children;
    return (
      <section className="failed" role="alert">
        <h1>This cannot be shown</h1>
        <p>
          {problem.error instanceof NotFetched
            ? 'A part of the page could not be fetched. Load the page anew.'
            : 'This is a fault of Halfdot, not of your file. Load the page anew, or go elsewhere above.'}
        </p>
        <p>What you stated about your logs is kept: you find them under Flights.</p>
        <Button className="button" onPress={this.props.reload}>
          Load the page anew
        </Button>
      </section>
    );
  }
}
