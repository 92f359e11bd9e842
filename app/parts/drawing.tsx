// A drawing that is no image but a group of links: named by a label, for a title would pop up over each of them.
import { createElement, type DOMAttributes, type ReactNode } from 'react';

export function Drawing(props: {
  label: string;
  width: number;
  height: number;
  /** Class of the drawing; it then takes the width that there is. */
  scaled?: string;
  /** Class of a drawing that keeps its size. */
  className?: string;
  /** What is heard of all links within, in one place. */
  on?: DOMAttributes<SVGSVGElement>;
  children: ReactNode;
}) {
  const { label, width, height, scaled, className = 'weave', on, children } = props;
  const size =
    scaled === undefined
      ? { className, width, height }
      : { className: scaled, viewBox: `0 0 ${width} ${height}` };
  return createElement('svg', { ...size, role: 'group', 'aria-label': label, ...on }, children);
}
