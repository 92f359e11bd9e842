// How amounts and lists are written in tasks, changes and answers to news.

/** Rounded to so many decimals, without a trailing zero. */
export function rounded(value: number, decimals: number): number {
  const power = 10 ** decimals;
  return Math.round(value * power) / power;
}

/** Millilitres as a brewer reads them off: `184 mL`, from 2 L on `2.4 L`. */
export function sayMl(ml: number): string {
  return ml >= 2000 ? `${rounded(ml / 1000, 1)} L` : `${Math.round(ml)} mL`;
}

/** Litres: `20 L`, `1.5 L`, `0.75 L`. */
export function sayL(litres: number): string {
  return `${rounded(litres, litres < 1 ? 2 : 1)} L`;
}

/** Billion cells: `153 billion`. */
export function sayCells(billion: number): string {
  return `${billion < 10 ? rounded(billion, 1) : Math.round(billion)} billion`;
}

/** `86 %`. */
export function sayShare(share: number): string {
  return `${Math.round(share * 100)} %`;
}

/** Specific gravity as it is written on a recipe: `1.011`. */
export function saySg(sg: number): string {
  return sg.toFixed(3);
}

/** `1 jar`, `2 jars`. */
export function counted(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** `a`, `a and b`, `a, b and c`. */
export function listed(words: readonly string[]): string {
  if (words.length <= 1) return words[0] ?? '';
  return `${words.slice(0, -1).join(', ')} and ${words[words.length - 1]}`;
}

/** A sentence with a full stop, whatever it came with. */
export function asSentence(text: string): string {
  const trimmed = text.trim();
  return trimmed === '' || /[.!?]$/.test(trimmed) ? trimmed : `${trimmed}.`;
}
