/** The page kept on the device: used without a network from the first visit on, and newer versions that wait to be let in. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright';
import { type PreviewServer, preview } from 'vite';
import { afterEach, describe, expect, inject, it } from 'vitest';
import { goTo, openApp, pageProblems } from '../support/browser.ts';
import { holeWords, pick, putts, recordHole, startRound } from '../support/recording.ts';

let page: Page | undefined;
afterEach(async () => {
  await page?.close();
  page = undefined;
});

/** Fetching all of the program on a busy machine. */
const INSTALL = { timeout: 120_000 };

const untilKept = async (on: Page): Promise<void> => {
  await on.getByText('Ready to use without a network.').waitFor(INSTALL);
};

describe('without a network', () => {
  it('opens, records a round and decides, after one visit to one screen', async () => {
    page = await openApp({ keepsItself: true, width: 390, height: 844, path: '/#/record' });
    const on = page;
    await untilKept(on);
    await pick(on, 'Good');
    expect(await on.getByText('Ready to use without a network.').count()).toBe(0);
    await on.context().setOffline(true);
    await on.reload();
    await startRound(on);
    await recordHole(on);
    await on.reload();
    await on.getByText('Putt 1: How far').waitFor();
    expect(await holeWords(on, 1)).toBe('Hole 1: 2 putts');
    await on.locator('[data-hole="1"]').click();
    expect((await putts(on)).every((words) => words.endsWith('saved'))).toBe(true);
    await pick(on, 'End the round', 'Yes, end it');
    await on.getByTestId('ended').waitFor();
    // Screens never opened before, with their workers, map and chart.
    await goTo(on, 'Decide');
    await expect
      .poll(() => on.locator('main').innerText(), INSTALL)
      .toMatch(/putts better|no difference|It turns on your errors/);
    await goTo(on, 'Whole green');
    await on.getByText('Opening “Whole green”…').waitFor({ state: 'detached' });
    await goTo(on, 'Read it yourself');
    await on.locator('[data-drill=pin-high-sidehill]').click();
    await on.getByRole('heading', { name: 'Putt 1 of 10' }).waitFor();
    // Ready was said once.
    expect(await on.getByText('Ready to use without a network.').count()).toBe(0);
    expect(pageProblems(on)).toEqual([]);
  });

  it('can be installed: name, start, scope and icons of the sizes hosts ask for, all there', async () => {
    page = await openApp({ keepsItself: true, path: '/#/record' });
    const on = page;
    const session = await on.context().newCDPSession(on);
    const { errors, data } = await session.send('Page.getAppManifest');
    expect(errors).toEqual([]);
    const manifest = JSON.parse(data ?? '') as {
      display: string;
      start_url: string;
      scope: string;
      icons: { src: string; sizes: string; purpose?: string }[];
    };
    expect(manifest).toMatchObject({ display: 'standalone', start_url: './', scope: './' });
    // Sizes: W3C manifest, and what Chromium asks of an installable page (from memory: 192 and 512).
    expect(manifest.icons.map(({ sizes, purpose }) => `${sizes} ${purpose ?? 'any'}`)).toEqual([
      '192x192 any',
      '512x512 any',
      '512x512 maskable',
    ]);
    for (const { src, sizes } of manifest.icons) {
      const side = await on.evaluate(async (address) => {
        const image = new Image();
        image.src = address;
        await image.decode();
        return `${image.naturalWidth}x${image.naturalHeight}`;
      }, `./${src}`);
      expect(side).toBe(sizes);
    }
  });
});

describe('a newer version', () => {
  let server: PreviewServer | undefined;
  let folder: string | undefined;
  afterEach(async () => {
    await page?.close();
    page = undefined;
    await server?.close();
    if (folder) rmSync(folder, { recursive: true, force: true });
  });

  /** A host of its own, so that the build can change under the page. */
  const host = async (): Promise<string> => {
    folder = mkdtempSync(join(tmpdir(), 'borrow-update-'));
    cpSync(inject('buildFolder'), folder, { recursive: true });
    server = await preview({
      logLevel: 'warn',
      build: { outDir: folder },
      preview: { host: '127.0.0.1', port: 0, open: false },
    });
    const address = server.httpServer.address();
    if (address === null || typeof address === 'string') throw new Error('The preview server has no port.');
    return `http://127.0.0.1:${address.port}/`;
  };
  /** The same program with another title, as a later build would be: page and list of what is kept differ. */
  const publish = (title: string): void => {
    if (folder === undefined) throw new Error('no host');
    const html = join(folder, 'index.html');
    writeFileSync(
      html,
      readFileSync(html, 'utf8').replace(/<html lang="en"[^>]*>/, `<html lang="en" data-build="${title}">`),
    );
    const worker = join(folder, 'sw.js');
    const before = readFileSync(worker, 'utf8');
    const after = before.replace(/(url:"index\.html",revision:")[^"]*/, `$1${title}`);
    if (after === before) throw new Error('The list of what is kept has another form than this test knows.');
    writeFileSync(worker, after);
  };
  const build = (on: Page): Promise<string | undefined> =>
    on.evaluate(() => document.documentElement.dataset.build);
  const lookForNewer = (on: Page): Promise<unknown> =>
    on.evaluate(async () => (await navigator.serviceWorker.ready).update());

  it('waits to be let in, not while a putt is entered, and reloads only the tab that asked', async () => {
    const address = await host();
    page = await openApp({ keepsItself: true, width: 390, height: 844, path: `${address}#/record` });
    const on = page;
    await untilKept(on);
    const other = await on.context().newPage();
    await other.goto(`${address}#/record`);
    await startRound(on);
    await pick(on, '12 ft');
    // Marks of this very page: gone with any reload.
    for (const tab of [on, other]) await tab.evaluate(() => Object.assign(window, { same: true }));
    const isSame = (tab: Page): Promise<boolean> => tab.evaluate(() => 'same' in window);
    const offered = (tab: Page): Promise<number> => tab.getByText('A newer version is ready.').count();

    publish('second');
    await other.waitForTimeout(4000);
    await lookForNewer(on);
    await expect.poll(() => offered(other), INSTALL).toBe(1);
    expect(await offered(on)).toBe(0);
    await pick(on, 'uphill', 'left to right', 'Holed');
    await expect.poll(() => offered(on)).toBe(1);
    await pick(on, 'Later');
    expect(await offered(on)).toBe(0);
    expect(await isSame(on)).toBe(true);

    await other.getByRole('button', { name: 'Load it now' }).click();
    await expect.poll(() => build(other)).toBe('second');
    // The first tab goes on where it was, and is told again: its late parts are gone from the device.
    await expect.poll(() => offered(on)).toBe(1);
    expect(await isSame(on)).toBe(true);
    expect(await build(on)).toBeUndefined();
    await pick(on, 'Load it now');
    await expect.poll(() => build(on)).toBe('second');
    await on.getByText('Putt 1: How far').waitFor();
    expect(await holeWords(on, 1)).toBe('Hole 1: 1 putt');
  });
});
