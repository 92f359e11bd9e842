// A drawing that is no image but a group of links: named by a label, for a title would pop up over each of them.
import { createElement, type ReactNode } from 'react';

export function Drawing(props: {
  label: string;
  width: number;
  height: number;
  children: ReactNode;
}) {
  const { label, width, height, children } = props;
  return createElement(
    'svg',
    { className: 'weave', role: 'group', 'aria-label': label, width, height },
    children,
  );
}
