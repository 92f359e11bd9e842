// The types of prepare.mjs, for the tests that start what it builds.
export const root: string;
export const serverDir: string;
export const pageDir: string;
export class PrepareError extends Error {}
export function buildServer(): Promise<void>;
export function buildPage(): Promise<void>;
export function installPackages(): Promise<void>;
