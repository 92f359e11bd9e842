// A mark that goes out of sight is hidden as it was, not taken down: it costs nothing there, and little when it comes back.
import { memo, type ReactNode, useRef } from 'react';

/** What was never in sight is not there at all; what left it stands as it last was seen, hidden. */
export const Kept = memo(function Kept(props: { shown: boolean; children: ReactNode }) {
  const last = useRef<ReactNode>(null);
  if (props.shown) last.current = props.children;
  if (last.current === null) return null;
  return <g display={props.shown ? undefined : 'none'}>{last.current}</g>;
}, bothHidden);

/** Of what is hidden before and after, nothing is asked anew. */
function bothHidden(before: { shown: boolean }, after: { shown: boolean }): boolean {
  return !before.shown && !after.shown;
}
