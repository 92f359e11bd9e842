// A region that scrolls sideways and is reached by keyboard, so that all of it can be read.
import { createElement, type ReactNode } from 'react';

export function Scroller(props: { label: string; className: string; children: ReactNode }) {
  const { label, className, children } = props;
  return createElement(
    'div',
    { role: 'region', tabIndex: 0, 'aria-label': label, className },
    children,
  );
}
