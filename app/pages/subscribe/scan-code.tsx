// An address as a code that a phone's camera reads: always dark on light, whatever the page's colours.
import { encode } from 'uqr';

/** Light modules that a reader needs around the code (ISO/IEC 18004: four). */
const QUIET = 4;

/** The dark modules of a code as one path, a unit a module. */
export function codePath(modules: readonly (readonly boolean[])[]): string {
  return modules
    .flatMap((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : '')))
    .join('');
}

export default function ScanCode(props: { text: string; label: string }) {
  const { data, size } = encode(props.text, { ecc: 'M', border: QUIET });
  return (
    <svg
      className="scan-code"
      viewBox={`0 0 ${size} ${size}`}
      role="img"
      aria-label={props.label}
      shapeRendering="crispEdges"
    >
      <rect width={size} height={size} fill="#fff" />
      <path d={codePath(data)} fill="#000" />
    </svg>
  );
}
