// A drawing that is no image but a group of links: named by a label, for a title would pop up over each of them.
import { createElement, type DOMAttributes, type ReactNode } from 'react';

export function Drawing(props: {
  label: string;
  width: number;
  height: number;
  /** What is heard of all links within, in one place. */
  on?: DOMAttributes<SVGSVGElement>;
  children: ReactNode;
}) {
  const { label, width, height, on, children } = props;
  return createElement(
    'svg',
    { className: 'weave', role: 'group', 'aria-label': label, width, height, ...on },
    children,
  );
}
