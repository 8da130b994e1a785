/**
 * Pages for the browser tests: one Chromium per test file, a fresh context (no storage, no cache) per page. Whatever the
 * page logs as an error, throws, or asks of another host is kept for `pageProblems`.
 */

import { type Browser, chromium, type Locator, type Page } from 'playwright';
import { afterAll, inject } from 'vitest';
import { chromiumArguments } from './chromium.ts';

export interface PageOptions {
  /** CSS pixels. */
  readonly width?: number;
  /** CSS pixels. */
  readonly height?: number;
  readonly colorScheme?: 'light' | 'dark';
  /** UTC (default), or that of the machine, which a test may then change while the page is open. */
  readonly timezone?: 'UTC' | 'machine';
  /** A finger in place of a mouse. */
  readonly touch?: boolean;
  readonly reducedMotion?: 'reduce' | 'no-preference';
  /**
   * What draws WebGL. processor (default): as it is here, so the app prefers the two-dimensional canvas; card: the
   * processor passes for a graphics card, so the app uses WebGL; none: WebGL is missing.
   */
  readonly graphics?: 'processor' | 'card' | 'none';
  /**
   * Whether the page may keep itself on the device: three seconds after it has opened it fetches all of the program once more,
   * which takes time of the machine and room of the storage. False (default) where a test is about something else.
   */
  readonly keepsItself?: boolean;
  /** What localStorage holds before the app looks there for the first time, by key; written as JSON. */
  readonly kept?: Readonly<Record<string, unknown>>;
  /** Path and hash below the app's address, such as `/#/`. */
  readonly path?: string;
}

/** Longer than any step takes on a busy machine, ms; vitest.config.ts has the same for what is asked again and again. */
const PATIENCE = 60_000;

let launched: Promise<Browser> | undefined;
const problemsOf = new WeakMap<Page, string[]>();

/** How Chromium is started; for tests that need a browser to themselves. */
export const launchOptions = () => ({
  ...inject('chromium'),
  args: chromiumArguments,
  // Chromium refuses its sandbox when run as root, which build machines often do.
  chromiumSandbox: process.getuid?.() !== 0,
});

const browser = (): Promise<Browser> => {
  launched ??= chromium.launch(launchOptions());
  return launched;
};

afterAll(async () => {
  const running = await launched;
  launched = undefined;
  await running?.close();
});

// These run in the page before the app.
const keepAtFirst = (kept: Readonly<Record<string, unknown>>): void => {
  for (const [key, value] of Object.entries(kept))
    if (localStorage.getItem(key) === null) localStorage.setItem(key, JSON.stringify(value));
};
const withoutWebGl = (): void => {
  const { getContext } = HTMLCanvasElement.prototype;
  HTMLCanvasElement.prototype.getContext = new Proxy(getContext, {
    apply: (target, canvas, [kind, ...rest]) =>
      String(kind).startsWith('webgl') ? null : Reflect.apply(target, canvas, [kind, ...rest]),
  });
};
const withGraphicsCard = (): void => {
  const unmaskedRenderer = 0x9246;
  const { getParameter } = WebGL2RenderingContext.prototype;
  WebGL2RenderingContext.prototype.getParameter = new Proxy(getParameter, {
    apply: (target, context, [name]) =>
      name === unmaskedRenderer ? 'a graphics card' : Reflect.apply(target, context, [name]),
  });
};

/** Opens the built app in a page of its own; closing the page closes its context too. */
export const openApp = async (options: PageOptions = {}): Promise<Page> => {
  const {
    width = 1280,
    height = 800,
    colorScheme = 'light',
    reducedMotion = 'reduce',
    path = '/',
    touch = false,
    timezone = 'UTC',
    keepsItself = false,
    kept = {},
    graphics,
  } = options;
  const baseURL = inject('baseURL');
  const context = await (await browser()).newContext({
    baseURL,
    viewport: { width, height },
    colorScheme,
    hasTouch: touch,
    reducedMotion,
    serviceWorkers: keepsItself ? 'allow' : 'block',
    locale: 'en-US',
    timezoneId: timezone === 'UTC' ? timezone : undefined,
  });
  context.setDefaultTimeout(PATIENCE);
  const page = await context.newPage();
  if (Object.keys(kept).length > 0) await page.addInitScript(keepAtFirst, kept);
  if (graphics === 'none') await page.addInitScript(withoutWebGl);
  if (graphics === 'card') await page.addInitScript(withGraphicsCard);
  const problems: string[] = [];
  problemsOf.set(page, problems);
  page.on('console', (message) => {
    if (message.type() === 'error') problems.push(message.text());
  });
  page.on('pageerror', (error) => problems.push(String(error)));
  page.on('request', (request) => {
    const url = request.url();
    if (!url.startsWith(baseURL) && !/^(data|blob):/.test(url)) problems.push(`asked for ${url}`);
  });
  // At the end of a file the browser may be gone before its contexts: nothing is left to close then.
  page.on('close', () => void context.close().catch(() => undefined));
  await page.goto(path);
  return page;
};

/** Errors the page logged or threw and foreign addresses it asked for; an empty list is a quiet page. */
export const pageProblems = (page: Page): readonly string[] => problemsOf.get(page) ?? [];

/** What is dragged on a map. */
export const handle = (on: Page, which: 'ball' | 'hole'): Locator => on.locator(`[data-handle=${which}]`);

/** To another screen by the navigation, unfolded first where it is folded. */
export const goTo = async (on: Page, name: string): Promise<void> => {
  const navigation = on.getByRole('navigation', { name: 'Screens' });
  const fold = navigation.getByRole('button');
  if ((await fold.count()) > 0) await fold.click();
  await navigation.getByRole('link', { name, exact: true }).click();
};

/** Where a pointer meets a thing, CSS pixels. */
export const middleOf = async (thing: Locator): Promise<{ x: number; y: number }> => {
  const box = await thing.boundingBox();
  if (box === null) throw new Error('not on the page');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
};
