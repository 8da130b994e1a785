/** What a player does on the recording screen, for the browser tests of it. */
import type { Page } from 'playwright';
import { openApp, type PageOptions } from './browser.ts';

export const openRecord = async (options: PageOptions = {}): Promise<Page> => {
  const page = await openApp({ path: '/#/record', ...options });
  await page.getByRole('heading', { name: 'Record putts' }).waitFor();
  return page;
};

/** Presses buttons by their names, one after the other. */
export const pick = async (on: Page, ...names: readonly string[]): Promise<void> => {
  for (const name of names) await on.getByRole('button', { name, exact: true }).click();
};

export const startRound = async (on: Page): Promise<void> => {
  await pick(on, 'Start 18 holes');
  await on.getByText('Putt 1: How far').waitFor();
};

/** Twelve feet, missed, two feet, holed: six taps; done when the last is shown as saved. */
export const recordHole = async (on: Page): Promise<void> => {
  await pick(on, '12 ft', 'uphill', 'left to right', 'Missed low, past', '2 ft', 'Holed the next');
  await on.getByText('Putt 1: How far').waitFor();
};

/** The putts of the hole that is shown, as written there, each with its mark. */
export const putts = async (on: Page): Promise<string[]> =>
  (await on.getByTestId('putts').locator('li').allInnerTexts()).map((text) =>
    text
      .replace(/\s+/g, ' ')
      .replace(/^Correct putt /, '')
      .trim(),
  );

/** What the strip of holes says of one. */
export const holeWords = (on: Page, hole: number): Promise<string> =>
  on.locator(`[data-hole="${hole}"] .unseen`).innerText();
