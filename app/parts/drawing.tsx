// A drawing that is no image but a group of links: named by a label, for a title would pop up over each of them.
import { createElement, type DOMAttributes, type ReactNode } from 'react';

export function Drawing(props: {
  label: string;
  width: number;
  height: number;
  /** Class of the drawing; it then takes the width that there is. */
  scaled?: string;
  /** What is heard of all links within, in one place. */
  on?: DOMAttributes<SVGSVGElement>;
  children: ReactNode;
}) {
  const { label, width, height, scaled, on, children } = props;
  const size =
    scaled === undefined
      ? { className: 'weave', width, height }
      : { className: scaled, viewBox: `0 0 ${width} ${height}` };
  return createElement('svg', { ...size, role: 'group', 'aria-label': label, ...on }, children);
}
