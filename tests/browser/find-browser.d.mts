// Types of find-browser.mjs.
export const BROWSER_ARGS: string[];
export function findBrowser(): string | null;
export function findOrGetBrowser(): Promise<string>;
