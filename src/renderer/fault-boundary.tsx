/**
 * A fault in one page must not take the window with it: what is recorded is on the medium, the other pages still
 * work, and the page says what to pass on.
 */
import { Component, type ReactNode } from 'react';

interface Props {
  readonly children: ReactNode;
}

export class FaultBoundary extends Component<Props, { readonly fault: string | undefined }> {
  override state = { fault: undefined };

  static getDerivedStateFromError(error: unknown): { fault: string } {
    return { fault: error instanceof Error ? error.message : String(error) };
  }

  override render(): ReactNode {
    const { fault } = this.state;
    if (fault === undefined) return this.props.children;
    return (
      <div className="notices" role="alert">
        <p>
          <strong>This page cannot be drawn.</strong> It is a fault of the program; what you recorded is kept.
          Turn to another page, or try again. To be passed on with a report of the fault: <code>{fault}</code>
        </p>
        <button type="button" className="button" onClick={() => this.setState({ fault: undefined })}>
          Try again
        </button>
      </div>
    );
  }
}
