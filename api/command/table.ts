// Lays out text in columns for a terminal.

const segmenter = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** How many columns of a terminal a text takes; wide scripts count as one, which only frays the edge. */
const width = (text: string) => [...segmenter.segment(text)].length;

/** Names are data: they do not get to steer the terminal or to break a line. */
export const plain = (text: string) => text.replace(/[\p{Cc}\p{Cs}]/gu, ' ');

export type TableColumn = { head: string; right?: boolean };

/**
 * Rows under their heads, as wide as their widest cell, two spaces between.
 * @returns lines without trailing spaces
 */
export function table(
  columns: readonly TableColumn[],
  rows: readonly (readonly string[])[],
): string[] {
  const cells = [columns.map((column) => column.head), ...rows.map((row) => row.map(plain))];
  const widths = columns.map((_, at) => Math.max(...cells.map((row) => width(row[at] ?? ''))));
  return cells.map((row) =>
    columns
      .map((column, at) => {
        const cell = row[at] ?? '';
        const space = ' '.repeat((widths[at] ?? 0) - width(cell));
        return column.right ? space + cell : cell + space;
      })
      .join('  ')
      .trimEnd(),
  );
}

/** Breaks a sentence at spaces so that no line is longer, each line after the same indent. */
export function wrapped(text: string, indent: string, columns = 100): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of plain(text).split(' ')) {
    if (line !== '' && width(indent + line) + 1 + width(word) > columns) {
      lines.push(indent + line);
      line = word;
    } else {
      line = line === '' ? word : `${line} ${word}`;
    }
  }
  return [...lines, indent + line];
}
