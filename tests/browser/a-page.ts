// A page of a real Chromium that remembers every complaint: console errors, thrown errors, broken security policy.
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { type Browser, chromium, type Page } from 'playwright-core';
import { BROWSER_ARGS, findOrGetBrowser } from './find-browser.mjs';

const axeSource = readFileSync(
  createRequire(import.meta.url).resolve('axe-core/axe.min.js'),
  'utf8',
);

/** @param args what it is started with besides */
export async function openBrowser(args: readonly string[] = []): Promise<Browser> {
  return chromium.launch({
    executablePath: await findOrGetBrowser(),
    args: [...BROWSER_ARGS, ...args],
  });
}

export type Look = { scheme: 'light' | 'dark'; width: number; height: number; phone: boolean };
export const LAPTOP: Look = { scheme: 'light', width: 1440, height: 900, phone: false };
export const PHONE: Look = { scheme: 'light', width: 390, height: 844, phone: true };

/** A fresh page (nothing kept from before) and the list of its complaints, which a test expects to stay empty. */
export async function openPage(
  browser: Browser,
  look: Look,
): Promise<{ page: Page; complaints: string[]; close: () => Promise<void> }> {
  const context = await browser.newContext({
    viewport: { width: look.width, height: look.height },
    colorScheme: look.scheme,
    isMobile: look.phone,
    hasTouch: look.phone,
    reducedMotion: 'reduce',
  });
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error)));
  return { page, complaints, close: () => context.close() };
}

type Violation = { id: string; help: string; nodes: { html: string; failureSummary?: string }[] };

/** What axe-core finds wrong with the page as it stands, one line a finding. */
export async function axeFindings(page: Page): Promise<string[]> {
  await page.evaluate(axeSource);
  const violations = (await page.evaluate(
    'axe.run(document, { resultTypes: ["violations"] }).then((result) => result.violations)',
  )) as Violation[];
  return violations.flatMap((violation) =>
    violation.nodes.map(
      (node) =>
        `${violation.id}: ${violation.help}: ${node.html.slice(0, 200)} ${node.failureSummary}`,
    ),
  );
}
