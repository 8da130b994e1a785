/**
 * The data screen in a real browser, over the real database: backup out and in, imports that write all or nothing, spoilt files,
 * full storage, two tabs, the invented player. Formats have their own tests; here what a person meets and what is kept.
 */
import { readFileSync } from 'node:fs';
import type { Download, FileChooser, Page } from 'playwright';
import { afterEach, describe, expect, inject, it } from 'vitest';
import { readImportFile } from '../../src/store/fileText.ts';
import { planImport } from '../../src/store/importPlan.ts';
import { judgeRecords } from '../../src/store/recordsNow.ts';
import { perTable } from '../../src/store/tables.ts';
import { atOnce } from '../../src/store/work.ts';
import { bigBackup } from '../support/bigBackup.ts';
import { openApp, type PageOptions, pageProblems } from '../support/browser.ts';
import { SIDES, seriousFindings, sidewaysScroll } from '../support/findings.ts';
import { afterPlan, contents, inUtc } from '../support/imports.ts';
import { LITERAL_BACKUP, literalBackup } from '../support/literalBackup.ts';
import { mutatedFile } from '../support/mutationFiles.ts';
import { pageRecords, setPageRecords } from '../support/pageRecords.ts';
import { brokenLaws } from '../support/recordLaws.ts';
import { sized } from '../support/size.ts';

let page: Page | undefined;
afterEach(async () => {
  await page?.close();
});

const open = async (options: PageOptions = {}): Promise<Page> => {
  page = await openApp({ width: 1440, height: 900, path: '/#/data', ...options });
  await page.getByText('Nothing is recorded on this device yet.').waitFor();
  return page;
};
const TEXT = JSON.stringify(LITERAL_BACKUP);
const button = (on: Page, name: string | RegExp) => on.getByRole('button', { name });
const choose = (on: Page, name: string, content: string | Uint8Array): Promise<void> =>
  on.locator('input[type=file]').setInputFiles({ name, mimeType: '', buffer: Buffer.from(content) });
const preview = (on: Page) => on.getByTestId('preview');
const said = (on: Page) => on.getByTestId('said');
const importAll = async (on: Page, content = TEXT): Promise<void> => {
  await choose(on, 'first.json', content);
  await button(on, /^Import \d/).click();
  await said(on)
    .getByText(/imported from first\.json/)
    .waitFor();
};
const found = async (on: Page) => contents(await pageRecords(on));
const textOf = async (download: Download): Promise<string> => readFileSync(await download.path(), 'utf8');
const saved = async (on: Page, name: string): Promise<{ name: string; text: string }> => {
  const [download] = await Promise.all([on.waitForEvent('download'), button(on, name).click()]);
  return { name: download.suggestedFilename(), text: await textOf(download) };
};
const NOTHING = perTable(() => []);

/** Some 200 bytes each: the quota of the test below has no room for them. Whole rounds of 18. */
const PUTTS_TOO_MANY = sized(2_700, 9_000);
/** Enough to read and write for a cancellation to come in between. */
const PUTTS_AT_LENGTH = sized(20_000, 40_000);
/** Of the first 80 some 40 are refused as a whole, 30 line by line, and 10 are imported. */
const SPOILT = sized(80, 1000);

describe('the data of the player', () => {
  it('comes back from a backup, goes out in one, and is still there after a reload', async () => {
    const on = await open({ width: 390, height: 844 });
    await choose(on, 'backup.json', TEXT);
    await preview(on).getByRole('heading', { name: 'This file adds 11 records.' }).waitFor();
    expect(await preview(on).innerText()).toContain(
      'Nov 22, 2025, Nonesuch Heath, hole 1, putt 1: 16 ft, left 24 in',
    );
    expect(await found(on)).toEqual(NOTHING);
    await button(on, 'Import 11 records').click();
    await said(on).getByText('11 records imported from backup.json.').waitFor();
    expect(await found(on)).toEqual(LITERAL_BACKUP.tables);

    await on.reload();
    await on
      .getByText(
        '3 putts of 1 round, 1 practice set, 1 reading set, 2 drill scores, 2 measurements and 1 plan of a week are on this device, and nowhere else: make a backup.',
      )
      .waitFor();
    const backup = await saved(on, 'Make a backup');
    expect(backup.name).toMatch(/^borrow-backup-\d{4}-\d{2}-\d{2}\.json$/);
    const file = JSON.parse(backup.text) as typeof LITERAL_BACKUP;
    expect(contents(file.tables)).toEqual(LITERAL_BACKUP.tables);
    await on.getByText('on this device; the last backup is of today.').waitFor();
    await on.reload();
    await on.getByText('on this device; the last backup is of today.').waitFor();

    await choose(on, backup.name, backup.text);
    await preview(on).getByRole('heading', { name: 'This file finds 11 here already.' }).waitFor();
    expect(await button(on, /^Import/).count()).toBe(0);
    expect(pageProblems(on)).toEqual([]);
  });

  it('is brought in by keyboard alone', async () => {
    const on = await open();
    // Listened for before anything is pressed: a driver that begins to catch file dialogs only as the key goes out may be too late.
    const choosers: FileChooser[] = [];
    on.on('filechooser', (chooser) => choosers.push(chooser));
    // Asked again until it holds: what the screen finds out as it opens may still take the focus from a key this early.
    await expect
      .poll(async () => {
        await button(on, 'Make a backup').focus();
        await on.keyboard.press('Tab');
        return on.evaluate(() => document.activeElement?.getAttribute('type'));
      })
      .toBe('file');
    await on.keyboard.press('Enter');
    await expect.poll(() => choosers.length).toBe(1);
    const [chooser] = choosers;
    await chooser.setFiles({ name: 'backup.json', mimeType: '', buffer: Buffer.from(TEXT) });
    await preview(on).waitFor();
    // The preview takes the focus a moment after it is there: a key pressed before that belongs to the page it covers.
    await expect.poll(() => preview(on).evaluate((card) => card.contains(document.activeElement))).toBe(true);
    await on.keyboard.press('Tab');
    await on.keyboard.press('Enter');
    await said(on).getByText('11 records imported').waitFor();
    expect(await on.evaluate(() => document.activeElement?.getAttribute('data-testid'))).toBe('said');
    expect(await found(on)).toEqual(LITERAL_BACKUP.tables);
  });

  it('is brought in by a file dropped on the page', async () => {
    const on = await open();
    const dropped = await on.evaluateHandle((text) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([text], 'dropped.json'));
      return transfer;
    }, TEXT);
    await on.getByRole('region', { name: 'Open a file' }).dispatchEvent('drop', { dataTransfer: dropped });
    await preview(on).getByText('dropped.json').waitFor();
  });

  it('goes out as CSV for putts and for practice, and such files change nothing when they come back', async () => {
    const on = await open();
    await importAll(on);
    for (const [name, file, sentence] of [
      ['Putts as CSV', /^borrow-putts-.*\.csv$/, 'This file finds 4 here already.'],
      ['Practice as CSV', /^borrow-practice-.*\.csv$/, 'This file finds 1 here already.'],
    ] as const) {
      const csv = await saved(on, name);
      expect(csv.name).toMatch(file);
      await choose(on, csv.name, csv.text);
      await preview(on).getByRole('heading', { name: sentence }).waitFor();
    }
  });

  it('is not touched by a file with refusals until they are left out on purpose', async () => {
    const on = await open();
    const file = literalBackup();
    file.tables.putts[2].distance = 99;
    file.tables.practice[0].note = '=1+1';
    await choose(on, 'wrong.json', JSON.stringify(file));
    await preview(on).getByText('Got “99” for distance, expected at most 61 m.').waitFor();
    expect(await button(on, /^Import/).isDisabled()).toBe(true);
    expect(await found(on)).toEqual(NOTHING);
    await on.getByLabel('Leave out the 1 refused record and import the rest').check();
    await button(on, 'Import the other 10 records').click();
    await said(on).getByText('10 records imported from wrong.json; 1 refused one left out.').waitFor();
    expect((await found(on)).putts).toEqual(LITERAL_BACKUP.tables.putts.slice(0, 2));
  });

  it('shows what changes, from what to what, and keeps its own when the person says so', async () => {
    const on = await open();
    await importAll(on);
    const file = literalBackup();
    file.tables.putts[1].distance = 0.9144;
    await choose(on, 'changed.json', JSON.stringify(file));
    await preview(on)
      .getByText('distance: 24 in here, 3 ft in the file')
      .or(preview(on).getByText('distance: 2 ft here, 3 ft in the file'))
      .waitFor();
    await on.getByLabel('Keep the one here').check();
    await preview(on)
      .getByRole('heading', { name: /leaves 1 that differ as they are here/ })
      .waitFor();
    expect(await button(on, /^Import/).count()).toBe(0);
    await on.getByLabel('Take it from the file').check();
    await button(on, 'Import 1 record').click();
    await said(on).getByText('1 record imported').waitFor();
    expect((await found(on)).putts).toEqual(file.tables.putts);
  });

  it('is never half written over in two tabs: a plan for other records is made anew', async () => {
    const on = await open();
    await choose(on, 'backup.json', TEXT);
    await preview(on).waitFor();
    const other = await on.context().newPage();
    await other.goto(on.url());
    await setPageRecords(other, { rounds: [{ ...LITERAL_BACKUP.tables.rounds[0], course: 'Elsewhere' }] });
    await button(on, 'Import 11 records').click();
    await preview(on)
      .getByText(/changed meanwhile, in another tab perhaps\. Nothing was imported/)
      .waitFor();
    expect((await found(on)).putts).toEqual([]);
    await preview(on).getByRole('heading', { name: 'This file adds 10 records and changes 1.' }).waitFor();
    await button(on, 'Import 11 records').click();
    await said(on).getByText('11 records imported').waitFor();
    expect(await found(on)).toEqual(LITERAL_BACKUP.tables);
  });

  it('that is an open round is not followed by another: an import opens none', async () => {
    const on = await open();
    const file = literalBackup() as unknown as { tables: { rounds: { endedAt?: number }[] } };
    delete file.tables.rounds[0].endedAt;
    await importAll(on, JSON.stringify(file));
    expect((await found(on)).rounds).toMatchObject([{ endedAt: 1763801400000 }]);
  });

  it('stays as it was when storage is full, and the import works once there is room', async () => {
    const on = await open();
    const session = await on.context().newCDPSession(on);
    const origin = new URL(inject('baseURL')).origin;
    // Before the first write: Chromium remembers for half a minute how much room it found.
    await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 300_000 });
    await importAll(on);
    const before = await found(on);
    await choose(on, 'big.json', bigBackup(PUTTS_TOO_MANY));
    const refused = preview(on).getByText(
      /The device refused to write \(full or forbidden storage\)\. Nothing was/,
    );
    const records = (PUTTS_TOO_MANY + PUTTS_TOO_MANY / 18).toLocaleString('en-US');
    const go = button(on, `Import ${records} records`);
    await go.click();
    await refused.waitFor();
    expect(await found(on)).toEqual(before);
    await session.send('Storage.overrideQuotaForOrigin', { origin });
    const done = said(on).getByText(`${records} records imported from big.json.`);
    // For the same reason more room is noticed late: the person tries again until it is.
    for (let again = 0; again < 60 && (await done.count()) === 0; again += 1) {
      await on.waitForTimeout(1000);
      await go.click();
      await refused.or(done).waitFor();
    }
    await done.waitFor();
    expect((await pageRecords(on)).putts).toHaveLength(PUTTS_TOO_MANY + 3);
    // Half a minute until room is noticed, and all putts written a few times on a busy machine.
  });

  it('is not touched when reading or writing a large file is cancelled, and the page answers meanwhile', async () => {
    const on = await open();
    const text = bigBackup(PUTTS_AT_LENGTH);
    await choose(on, 'big.json', text);
    await button(on, 'Cancel').click();
    await said(on).getByText('Cancelled: nothing was imported.').waitFor();
    await choose(on, 'big.json', text);
    await preview(on).waitFor();
    // Pressed one after the other within the page: by the time a test could see the button, all may be written.
    await on.evaluate(() => {
      const named = (word: string): HTMLButtonElement | undefined =>
        [...document.querySelectorAll('button')].find(({ innerText }) => innerText.startsWith(word));
      named('Import')?.click();
      const watch = setInterval(() => {
        const share = document.querySelector('progress')?.value ?? 0;
        if (share < 0.2) return;
        named('Cancel')?.click();
        clearInterval(watch);
      }, 1);
    });
    await said(on).waitFor();
    expect(await said(on).innerText()).toBe('Cancelled: nothing was imported.');
    expect(await found(on)).toEqual(NOTHING);
    // Reading and half writing many putts on a busy machine.
  });

  it('says which records it cannot read, leaves them, and hands them out as they are', async () => {
    const on = await open();
    const later = { ...LITERAL_BACKUP.tables.rounds[0], id: 'of-a-later-version', wind: 3 };
    await setPageRecords(on, { rounds: [later] });
    await on.reload();
    await on.getByText('1 record cannot be read, perhaps made by a later version').waitFor();
    const raw = await saved(on, 'Save it as found');
    expect(JSON.parse(raw.text)).toMatchObject({ rounds: [later] });
    await importAll(on);
    expect((await found(on)).rounds).toEqual([LITERAL_BACKUP.tables.rounds[0], later]);
  });

  it('has names with markup as text', async () => {
    const on = await open();
    const file = literalBackup();
    const name = '<img src=x onerror="window.ran=1"><b>Heath</b>';
    file.tables.rounds[0].course = name;
    file.tables.putts[2].distance = 99;
    file.tables.practice[0] = { ...file.tables.practice[0], [name]: name } as never;
    await choose(on, `${name}.json`.replaceAll('/', '-'), JSON.stringify(file));
    await on.getByLabel(/^All/).check();
    expect(await preview(on).innerText()).toContain(name);
    expect(await preview(on).locator('img, b').count()).toBe(0);
    expect(await on.evaluate(() => 'ran' in window)).toBe(false);
    expect(pageProblems(on)).toEqual([]);
  });

  it('is never mixed with the invented player, who comes and goes by choice', async () => {
    const on = await open();
    await importAll(on);
    const before = await found(on);
    await button(on, 'Load the invented player').click();
    await on.getByText('On this device.', { exact: true }).waitFor();
    expect((await pageRecords(on, 'borrow-demo')).rounds).toHaveLength(24);
    expect(await found(on)).toEqual(before);
    const backup = await saved(on, 'Make a backup');
    expect(backup.text).not.toContain('invented');
    await on.reload();
    await button(on, 'Remove the invented player').click();
    await button(on, 'Load the invented player').waitFor();
    expect(await on.evaluate(async () => (await indexedDB.databases()).map(({ name }) => name))).toEqual([
      'borrow',
    ]);
    expect(await found(on)).toEqual(before);
  });

  it('is shown and asked for where the browser tells whether it keeps it', async () => {
    const on = await open();
    await on.addInitScript(() => {
      let granted = false;
      Object.assign(navigator.storage, {
        persisted: async () => granted,
        persist: async () => {
          granted = true;
          return granted;
        },
        estimate: async () => ({ usage: 1_234_567, quota: 2_000_000_000 }),
      });
    });
    await on.reload();
    const storage = on.getByTestId('storage');
    await storage.getByText('The browser may clear these records away').waitFor();
    await storage.getByText('In use by this page: 1.2 MB of 2.0 GB.').waitFor();
    // Asked for at the first backup.
    await saved(on, 'Make a backup');
    await storage.getByText('The browser keeps these records until you remove them.').waitFor();
  });

  it(`survives ${SPOILT} spoilt files, one after the other: each refused with a reason or imported right`, async () => {
    const on = await open({ width: 390, height: 844 });
    const outcomes = { file: 0, lines: 0, written: 0, nothing: 0 };
    for (let number = 0; number < SPOILT; number += 1) {
      const { bytes, name } = mutatedFile(5000 + number);
      if (number % 10 !== 0) await setPageRecords(on);
      const before = await pageRecords(on);
      await choose(on, name, bytes);
      const outcome = preview(on).getByText(name).or(said(on).getByText(name)).first();
      await outcome.waitFor();
      expect(contents(await pageRecords(on)), name).toEqual(contents(before));
      const read = atOnce(readImportFile(bytes, inUtc));
      if ((await preview(on).count()) === 0) {
        expect(await said(on).innerText(), name).toMatch(
          /Got [\s\S]+ expected [\s\S]+Nothing was imported\.$/,
        );
        expect(read.ok, name).toBe(false);
        outcomes.file += 1;
        continue;
      }
      if (!read.ok) throw new Error(`${name} is read in the browser alone`);
      const plan = atOnce(planImport(read.file, atOnce(judgeRecords(before))));
      const go = button(on, /^Import/);
      if (plan.counts.refuse > 0) {
        expect((await go.count()) === 0 || (await go.isDisabled()), name).toBe(true);
        outcomes.lines += 1;
      }
      if ((await go.count()) > 0) {
        if (plan.counts.refuse > 0) await on.getByLabel(/^Leave out/).check();
        else outcomes.written += 1;
        await go.click();
        await said(on)
          .getByText(/imported from/)
          .waitFor();
      } else if (plan.counts.refuse === 0) outcomes.nothing += 1;
      const after = await pageRecords(on);
      expect(contents(after), name).toEqual(afterPlan(plan));
      expect(brokenLaws(after), name).toEqual([]);
    }
    expect(Math.min(outcomes.file, outcomes.lines, outcomes.written)).toBeGreaterThan(SPOILT / 50);
    expect(await on.evaluate(() => 'ran' in window || 'wind' in {})).toBe(false);
    expect(pageProblems(on)).toEqual([]);
    // Each file is chosen, shown, perhaps imported, and the database read three times: half a second on a busy machine.
  }, 900_000);

  it.each(SIDES)(
    'has no sideways scroll and nothing serious for axe at %i px, %s',
    async (width, colorScheme) => {
      const on = await open({ width, height: 844, colorScheme });
      const fine = async (): Promise<void> => {
        expect(await seriousFindings(on)).toEqual([]);
        expect(await sidewaysScroll(on)).toBeLessThanOrEqual(0);
      };
      await fine();
      await importAll(on);
      const file = literalBackup();
      file.tables.putts[2].distance = 99;
      file.tables.rounds[0].course = 'W'.repeat(80);
      file.tables.practice.push({ ...file.tables.practice[0], id: 'another-practice' });
      await choose(
        on,
        'a-file-with-a-very-long-name-that-somebody-gave-it-in-a-hurry-before-the-round.json',
        JSON.stringify(file),
      );
      await on.getByLabel(/^All/).check();
      await fine();
      await choose(on, 'broken.json', '{');
      await said(on).waitFor();
      await on.getByText('What may a CSV file look like?').click();
      await fine();
    },
  );
});
