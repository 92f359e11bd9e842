// The bytes of a file to text: byte-order marks, UTF-16 and old Windows encodings, and what is no text at all.

export type Decoded = {
  /** The text with line breaks as \n and no byte-order mark; null where the bytes are no text. */
  text: string | null;
  /** The encoding that had to be guessed, or null for plain UTF-8. */
  readAs: string | null;
};

/** Files that spreadsheets keep, and anything else with zero bytes, are no text. */
function isBinary(bytes: Uint8Array): boolean {
  const zip = bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 0x03;
  return zip || bytes.subarray(0, 4096).includes(0);
}

const lines = (text: string) => text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');

/** Decodes a file that a person or a spreadsheet wrote. */
export function decode(bytes: Uint8Array): Decoded {
  const mark = bytes.length >= 2 ? ((bytes[0] ?? 0) << 8) | (bytes[1] ?? 0) : 0;
  if (mark === 0xfffe || mark === 0xfeff) {
    const label = mark === 0xfffe ? 'utf-16le' : 'utf-16be';
    return { text: lines(new TextDecoder(label).decode(bytes)), readAs: 'UTF-16' };
  }
  if (isBinary(bytes)) return { text: null, readAs: null };
  try {
    return { text: lines(new TextDecoder('utf-8', { fatal: true }).decode(bytes)), readAs: null };
  } catch {
    return { text: lines(new TextDecoder('windows-1252').decode(bytes)), readAs: 'Windows-1252' };
  }
}
