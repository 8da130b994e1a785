/** The page as a host would serve it: within its own content policy, and without asking anybody else for anything. */
import type { Page } from 'playwright';
import { afterEach, expect, it } from 'vitest';
import { openApp, pageProblems } from '../support/browser.ts';

let page: Page | undefined;
afterEach(async () => {
  await page?.close();
});

it('opens without an error in the log and without asking another host', async () => {
  page = await openApp({ keepsItself: true, path: '/#/' });
  await page.locator('#app > *').first().waitFor();
  await page.waitForLoadState('networkidle');
  expect(pageProblems(page)).toEqual([]);
});

it('refuses scripts written into the page', async () => {
  page = await openApp({ keepsItself: true, path: '/#/' });
  await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'window.ranInline = true;';
    document.head.append(script);
  });
  expect(await page.evaluate(() => 'ranInline' in window)).toBe(false);
  expect(pageProblems(page).join()).toMatch(/Content Security Policy/);
});
