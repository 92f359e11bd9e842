// What a page shows when it could not be made: the server's own words, and a way to try again.
import { Component, type ReactNode } from 'react';
import { Button } from 'react-aria-components';
import { Refused } from '../client.ts';

export class FailedBoundary extends Component<
  { again: () => void; children: ReactNode },
  { error: unknown }
> {
  override state = { error: null as unknown };

  static getDerivedStateFromError(error: unknown) {
    return { error };
  }

  override render() {
    if (this.state.error === null) return this.props.children;
    return (
      <div className="failed">
        <ErrorNotice error={this.state.error} />
        <Button
          className="button"
          onPress={() => {
            this.props.again();
            this.setState({ error: null });
          }}
        >
          Try again
        </Button>
      </div>
    );
  }
}

/** Whatever went wrong, in the server's words where it was the server that refused. */
export function ErrorNotice(props: { error: unknown }) {
  const { error } = props;
  const says = error instanceof Refused ? error.message : 'Something went wrong on this page.';
  const problems = error instanceof Refused ? error.problems : [];
  return (
    <div className="notice" role="alert">
      <p>{says}</p>
      {problems.length > 0 && (
        <ul>
          {problems.map((problem) => (
            <li key={`${problem.code} ${problem.path} ${problem.message}`}>
              {problem.message} <span className="quiet">{problem.remedy}</span>
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}
