// Where in a JSON text each value stands, and where a text stops being JSON: for messages with a line.

type Path = readonly (string | number)[];

/** The text is not JSON; `line` and `column` count from 1. */
export class JsonSyntaxError extends Error {
  readonly line: number;
  readonly column: number;
  constructor(says: string, text: string, at: number) {
    super(says);
    const before = text.slice(0, at).split('\n');
    this.line = before.length;
    this.column = (before.at(-1)?.length ?? 0) + 1;
  }
}

export type JsonLines = {
  value: unknown;
  /** The line of a value, counted from 1; of the nearest one around it where there is none. */
  lineOf: (path: Path) => number;
  /** Keys that stand twice in one object: only the last would count. */
  doubled: { path: Path; line: number }[];
};

const keyOf = (path: Path) => JSON.stringify(path);

/** A reader of JSON that remembers lines. Only the grammar: values come from JSON.parse. */
class Scanner {
  readonly lines = new Map<string, number>();
  readonly doubled: { path: Path; line: number }[] = [];
  readonly #text: string;
  #at = 0;
  #line = 1;

  constructor(text: string) {
    this.#text = text;
  }

  document(): void {
    this.#value([]);
    this.#space();
    if (this.#at < this.#text.length) this.#fail('Something stands after the end of the JSON.');
  }

  #fail(says: string): never {
    throw new JsonSyntaxError(says, this.#text, this.#at);
  }

  #space(): void {
    for (;;) {
      const letter = this.#text[this.#at];
      if (letter === '\n') this.#line++;
      else if (letter !== ' ' && letter !== '\t' && letter !== '\r') return;
      this.#at++;
    }
  }

  #take(letter: string): boolean {
    this.#space();
    if (this.#text[this.#at] !== letter) return false;
    this.#at++;
    return true;
  }

  #match(pattern: RegExp): string | null {
    pattern.lastIndex = this.#at;
    const found = pattern.exec(this.#text)?.[0] ?? null;
    if (found !== null) this.#at += found.length;
    return found;
  }

  #string(): string {
    const found = this.#match(/"(?:[^"\\\n]|\\.)*"/y);
    if (found === null)
      this.#fail('A text in double quotes should stand here, and end on its line.');
    try {
      return String(JSON.parse(found));
    } catch {
      this.#at -= found.length;
      return this.#fail('This text holds a character that JSON wants escaped.');
    }
  }

  #value(path: Path): void {
    this.#space();
    this.lines.set(keyOf(path), this.#line);
    const letter = this.#text[this.#at];
    if (letter === undefined) this.#fail('The file ends where a value should stand.');
    if (path.length > 100) this.#fail('The values lie more than 100 deep in each other.');
    if (letter === '{') this.#object(path);
    else if (letter === '[') this.#array(path);
    else if (letter === '"') this.#string();
    else if (this.#match(/true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y) === null) {
      this.#fail('Neither a number, a text in double quotes, true, false, null, { nor [.');
    }
  }

  #object(path: Path): void {
    this.#at++;
    if (this.#take('}')) return;
    const keys = new Set<string>();
    do {
      this.#space();
      if (this.#text[this.#at] === '}') this.#fail('There is a comma too many before this }.');
      const line = this.#line;
      const key = this.#string();
      if (keys.has(key)) this.doubled.push({ path: [...path, key], line });
      keys.add(key);
      if (!this.#take(':')) this.#fail('A colon should stand here.');
      this.#value([...path, key]);
    } while (this.#take(','));
    if (!this.#take('}')) this.#fail('A comma or } should stand here.');
  }

  #array(path: Path): void {
    this.#at++;
    if (this.#take(']')) return;
    let index = 0;
    do {
      this.#space();
      if (this.#text[this.#at] === ']') this.#fail('There is a comma too many before this ].');
      this.#value([...path, index++]);
    } while (this.#take(','));
    if (!this.#take(']')) this.#fail('A comma or ] should stand here.');
  }
}

/**
 * Parses JSON and remembers the line of every value.
 * @throws JsonSyntaxError with line and column where the text is no JSON
 */
export function parseJsonWithLines(text: string): JsonLines {
  const scanner = new Scanner(text);
  scanner.document();
  return {
    value: JSON.parse(text),
    doubled: scanner.doubled,
    lineOf: (path) => {
      for (let length = path.length; length > 0; length--) {
        const line = scanner.lines.get(keyOf(path.slice(0, length)));
        if (line !== undefined) return line;
      }
      return scanner.lines.get(keyOf([])) ?? 1;
    },
  };
}
