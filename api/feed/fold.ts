// Folds the lines of a calendar at 75 octets without breaking a character (RFC 5545 §3.1).

const MAX_OCTETS = 75;

/** How many octets a character of this code point takes in UTF-8. */
function octets(codePoint: number): number {
  if (codePoint < 0x80) return 1;
  if (codePoint < 0x800) return 2;
  return codePoint < 0x10000 ? 3 : 4;
}

function foldLine(line: string): string {
  if (line.length * 3 <= MAX_OCTETS || Buffer.byteLength(line) <= MAX_OCTETS) return line;
  const parts: string[] = [];
  let from = 0;
  let at = 0;
  let used = 0;
  while (at < line.length) {
    const codePoint = line.codePointAt(at) ?? 0;
    const size = octets(codePoint);
    if (used + size > MAX_OCTETS) {
      parts.push(line.slice(from, at));
      from = at;
      // a continued line begins with a blank, which counts
      used = 1;
    }
    used += size;
    at += codePoint > 0xffff ? 2 : 1;
  }
  parts.push(line.slice(from));
  return parts.join('\r\n ');
}

/** Folds every line of a text whose lines end in CRLF. */
export function foldLines(text: string): string {
  return text.split('\r\n').map(foldLine).join('\r\n');
}
