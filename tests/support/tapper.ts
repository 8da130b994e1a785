/**
 * A player who taps as fast as the page answers, for tests that kill the page meanwhile: runs inside the page, by its own seed.
 * It reports every putt that the page shows as saved, the moment it is shown. Leaves out: judging (nothing-lost.e2e.ts).
 */
import type { BrowserContext, Page } from 'playwright';

export interface ShownPutt {
  readonly id: string;
  /** As written beside the mark; empty where only the mark names it. */
  readonly words: string;
}

export interface Shown {
  /** Every putt the page has shown as saved, by id. */
  readonly saved: Map<string, string>;
  /** What the page said last of a write. */
  saving: boolean;
}

/** Lets pages of a context report; call once for each context. */
export const watchShown = async (context: BrowserContext): Promise<Shown> => {
  const shown: Shown = { saved: new Map(), saving: false };
  await context.exposeFunction('reportShown', (putts: readonly ShownPutt[], saving: boolean) => {
    shown.saving = saving;
    for (const { id, words } of putts) if (words !== '' || !shown.saved.has(id)) shown.saved.set(id, words);
  });
  await context.addInitScript(() => {
    const page = window as unknown as { reportShown(putts: ShownPutt[], saving: boolean): Promise<void> };
    let last = '';
    new MutationObserver(() => {
      const listed = [...document.querySelectorAll<HTMLElement>('[data-putt]')]
        .filter((item) => item.querySelector('[data-testid=saved]'))
        .map((item) => ({
          id: item.dataset.putt ?? '',
          words: (item.querySelector('button')?.textContent ?? '').replace(/^Correct putt \d+\. /, ''),
        }));
      const latest = document.querySelector<HTMLElement>('[data-last]:has([data-testid=saved])');
      const all = latest ? [...listed, { id: latest.dataset.last ?? '', words: '' }] : listed;
      const saving = document.querySelector('.rec-status')?.textContent === 'Saving…';
      const now = JSON.stringify([all, saving]);
      if (now === last) return;
      last = now;
      void page.reportShown(all, saving);
    }).observe(document, { childList: true, subtree: true, characterData: true, attributes: true });
  });
  return shown;
};

/** Begins to tap, and goes on until the page dies or `stopTapping`. @param onRefusal what to do about another tab's putt */
export const startTapping = (
  page: Page,
  seed: number,
  onRefusal: 'after' | 'drop' = 'after',
): Promise<void> =>
  page.evaluate(
    ([from, choice]) => {
      // Mulberry32, a public-domain generator by Tommy Ettinger: small, and the same everywhere.
      let state = Number(from);
      const chance = (): number => {
        state = (state + 0x6d2b79f5) | 0;
        let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
        mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
        return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
      };
      const all = (selector: string): HTMLButtonElement[] =>
        [...document.querySelectorAll<HTMLButtonElement>(selector)].filter((one) => !one.disabled);
      const any = (selector: string): boolean => {
        const found = all(selector);
        found[Math.floor(chance() * found.length)]?.click();
        return found.length > 0;
      };
      const named = (text: string): boolean => {
        const found = all('button').find((one) => one.textContent?.trim() === text);
        found?.click();
        return found !== undefined;
      };
      const tapPutt = (): void => {
        const [distance, climb, breaks] = document.querySelectorAll('.rec-pad .rec-picks');
        for (const row of [distance, climb, breaks])
          if (row && row.querySelector('[aria-pressed=true]') === null) {
            const buttons = row.querySelectorAll('button');
            buttons[Math.floor(chance() * buttons.length)]?.click();
            return;
          }
        named('Go on');
      };
      const tap = (): void => {
        if (document.querySelector('[data-testid=refused]'))
          if (choice === 'drop' ? named('Drop mine') : named('Save mine after these') || named('Drop mine'))
            return;
        const pad = document.querySelector<HTMLElement>('.rec-pad')?.dataset.pad;
        if (pad === 'putt') tapPutt();
        else if (pad === 'result') any(chance() < 0.6 ? '.rec-bar > .main' : '.rec-place');
        else if (pad === 'leave') any('.rec-grid button');
        else if (pad === 'check') named('Save');
        else if (pad === 'finished')
          any('.rec-bar > .main') || named('Yes, end it') || named('End the round');
        else named('Start 18 holes');
      };
      const page = window as unknown as { tapping?: ReturnType<typeof setInterval> };
      page.tapping = setInterval(tap, 0);
    },
    [seed, onRefusal] as const,
  );

export const stopTapping = (page: Page): Promise<void> =>
  page.evaluate(() =>
    clearInterval((window as unknown as { tapping?: ReturnType<typeof setInterval> }).tapping),
  );
