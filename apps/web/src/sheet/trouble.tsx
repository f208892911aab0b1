import { Component, type ErrorInfo, type ReactNode } from 'react';
import { Button } from './button.tsx';
import { Empty, Sheet } from './sheet.tsx';

interface BoundaryProps {
  readonly title: string;
  /** Another sheet gets another try. */
  readonly at: string;
  readonly children: ReactNode;
}

/** Keeps the sheet when its page fails: says what happened, and what to do next. */
export class Trouble extends Component<BoundaryProps, { readonly error?: unknown; readonly at?: string }> {
  override state: { readonly error?: unknown; readonly at?: string } = {};

  static getDerivedStateFromError(error: unknown): { readonly error: unknown } {
    return { error };
  }

  static getDerivedStateFromProps(props: BoundaryProps, state: { readonly at?: string }): { readonly error?: unknown; readonly at: string } | null {
    return state.at === props.at ? null : { error: undefined, at: props.at };
  }

  override componentDidCatch(error: unknown, info: ErrorInfo): void {
    console.error(error, info.componentStack);
  }

  override render(): ReactNode {
    const { error } = this.state;
    if (error === undefined) return this.props.children;
    return (
      <Sheet title={this.props.title}>
        <Empty title="This sheet could not be drawn" next={<><Button kind="ink" onClick={() => this.setState({ error: undefined })}>Draw it again</Button><Button onClick={() => location.reload()}>Load the page again</Button></>}>
          <p>Nothing that you signed or saved is lost. The program stopped here:</p>
          <p><code>{error instanceof Error ? `${error.name}: ${error.message}` : String(error)}</code></p>
        </Empty>
      </Sheet>
    );
  }
}
