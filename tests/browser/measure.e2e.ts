/**
 * The measuring screen in a real browser: forms by pointer and by keyboard, bad input, drafts that survive, the device's level with
 * faked events. Figures have their own tests; here only what a person meets.
 */
import type { Page } from 'playwright';
import { afterEach, describe, expect, it } from 'vitest';
import { goTo, openApp, type PageOptions, pageProblems } from '../support/browser.ts';
import { SIDES_IN_UNITS, seriousFindings, sidewaysScroll, soundOnEverySide } from '../support/findings.ts';
import { LITERAL_BACKUP } from '../support/literalBackup.ts';
import { pageRecords, setPageRecords } from '../support/pageRecords.ts';

let page: Page | undefined;
afterEach(async () => {
  await page?.close();
});

const open = async (options: PageOptions = {}): Promise<Page> => {
  page = await openApp({ width: 390, height: 844, path: '/#/measure', ...options });
  await page.getByTestId('measured').waitFor();
  return page;
};
const says = (on: Page): Promise<string> => on.getByTestId('measured').innerText();
const button = (on: Page, name: string) => on.getByRole('button', { name, exact: true });
const row = (on: Page, name: string) => on.getByRole('group', { name, exact: true });
const fill = (on: Page, name: string, label: RegExp, text: string): Promise<void> =>
  row(on, name).getByLabel(label).fill(text);
/** 8 ft in 2.8 s up and 9.5 ft in 3.6 s down read 8.8 and 12.3 ft: Brede's mean is 10.3 ft. */
const typeTwoRolls = async (on: Page): Promise<void> => {
  await fill(on, 'Roll 1', /^Mark to rest/, '8');
  await fill(on, 'Roll 1', /^Time/, '2.8');
  await fill(on, 'Roll 2', /^Mark to rest/, '9 ft 6 in');
  await fill(on, 'Roll 2', /^Time/, '3.6');
};

describe('measuring a green', () => {
  it('by pointer: rolls give a speed with its margin, which every screen then uses', async () => {
    const on = await open();
    await typeTwoRolls(on);
    await expect
      .poll(() => says(on))
      .toMatch(/This green runs .*10\.3 ft.*from 2 rolls; two more would bring/);
    expect(await says(on)).toMatch(/Along the line .*95%/);
    await button(on, 'Add another roll').click();
    // The new row has the focus, and the ways go on in turn.
    await expect
      .poll(() => on.evaluate(() => document.activeElement?.closest('li')?.innerText))
      .toContain('Roll 5');
    expect(await row(on, 'Roll 5').getByLabel('there').isChecked()).toBe(true);
    await button(on, 'Use this green speed').click();
    await on.getByText('Every screen now putts on 10.3 ft.').waitFor();
    await goTo(on, 'Decide');
    await expect.poll(() => on.locator('#green-speed').inputValue()).toBe('10.3');
    expect(pageProblems(on)).toEqual([]);
  });

  it('by keyboard alone', async () => {
    const on = await open();
    await on.getByRole('radio', { name: 'Green speed' }).focus();
    const tab = async (times: number): Promise<void> => {
      for (let i = 0; i < times; i++) await on.keyboard.press('Tab');
    };
    // How, ground, way, length.
    await tab(4);
    await on.keyboard.type('8');
    await tab(1);
    await on.keyboard.type('2.8');
    // Remove, way, length.
    await tab(3);
    await on.keyboard.type('9.5');
    await tab(1);
    await on.keyboard.type('3.6');
    await expect.poll(() => says(on)).toContain('10.3 ft');
    // An arrow turns the ramp on: its height is asked for before anything is said.
    await on.getByRole('radio', { name: 'timed rolls' }).focus();
    await on.keyboard.press('ArrowRight');
    await expect.poll(() => says(on)).toContain('the answer comes here');
    await on.getByLabel(/^Height of the ramp/).focus();
    await on.keyboard.type('9.4');
    await expect.poll(() => says(on)).toMatch(/from 2 rolls/);
  });

  it('explains bad input, loses nothing of it, and keeps all of it over other screens and a reload', async () => {
    const on = await open();
    await typeTwoRolls(on);
    await fill(on, 'Roll 3', /^Mark to rest/, '7');
    await fill(on, 'Roll 3', /^Time/, 'about three');
    await on
      .getByText('Got “about three”, expected a time from 0.5 to 15 s. Type a number such as 3.2.')
      .waitFor();
    expect(await says(on)).toContain('1 row not counted yet');
    expect(await says(on)).toContain('from 2 rolls');
    await goTo(on, 'Whole green');
    await goTo(on, 'Measure');
    const bad = row(on, 'Roll 3').getByLabel(/^Time/);
    await expect.poll(() => bad.inputValue()).toBe('about three');
    await on.reload();
    await expect.poll(() => bad.inputValue()).toBe('about three');
    expect(await bad.getAttribute('aria-invalid')).toBe('true');
    expect(await says(on)).toContain('from 2 rolls');
    await bad.fill('2.6');
    await expect.poll(() => says(on)).toContain('from 3 rolls');
    await button(on, 'Remove roll 3').click();
    await expect.poll(() => says(on)).toContain('from 2 rolls');
    await button(on, 'Undo: put back what was removed').click();
    await expect.poll(() => says(on)).toContain('from 3 rolls');
  });

  it('keeps what was typed in feet when the units change, and takes metres from then on', async () => {
    const on = await open();
    await typeTwoRolls(on);
    await on.getByLabel('m, cm').check();
    const length = row(on, 'Roll 1').getByLabel('Mark to rest (m)');
    // 8 ft are 2.4384 m.
    await expect.poll(() => length.inputValue()).toBe('2.44');
    expect(await says(on)).toContain('10.3 ft');
    await length.fill('2.5');
    await on.getByLabel('ft, in').check();
    await expect.poll(() => row(on, 'Roll 1').getByLabel('Mark to rest (ft)').inputValue()).toBe('8.2');
  });
});

describe('what was measured', () => {
  it('is kept once, listed with day, ground and margin, stays after a reload and in other tabs, and can be taken back', async () => {
    const on = await open();
    await on.getByText('Nothing kept yet').waitFor();
    await typeTwoRolls(on);
    await on.getByLabel('mat', { exact: true }).check();
    await button(on, 'Keep this').click();
    await on.getByText('Kept, with today’s date. Practise and The week now reckon with it').waitFor();
    await button(on, 'Keep this').click();
    await on.getByText('Kept already').waitFor();
    const kept = on.getByTestId('kept').getByRole('listitem');
    await expect
      .poll(() => kept.allInnerTexts())
      .toEqual([
        expect.stringMatching(/^Speed of the carpet: 10\.3 ft, give or take \d\.\d ft \(95%\), from 2 rolls/),
      ]);
    expect((await pageRecords(on)).measurements).toMatchObject([
      { by: 'timedRolls', ground: 'carpet', rolls: [{ way: 'there', seconds: 2.8 }, { way: 'back' }] },
    ]);
    const other = await on.context().newPage();
    await other.goto('/#/measure');
    await expect.poll(() => other.getByTestId('kept').getByRole('listitem').count()).toBe(1);

    // Used is kept too.
    await on.getByLabel('green', { exact: true }).check();
    await button(on, 'Use this green speed').click();
    await on.getByText('Every screen now putts on 10.3 ft. Kept, with today’s date.').waitFor();
    await on.reload();
    await expect.poll(() => kept.count()).toBe(2);
    await expect.poll(() => kept.first().innerText()).toMatch(/^Green speed, grass: /);
    await expect.poll(() => other.getByTestId('kept').getByRole('listitem').count()).toBe(2);
    await kept
      .first()
      .getByRole('button', { name: /^Delete Green speed, grass/ })
      .click();
    await kept.first().getByRole('button', { name: 'Delete', exact: true }).click();
    await expect.poll(() => other.getByTestId('kept').getByRole('listitem').count()).toBe(1);
    await expect.poll(() => kept.allInnerTexts()).toEqual([expect.stringMatching(/^Speed of the carpet/)]);
    await other.close();

    // Practise takes the carpet as it was measured, until it is set by hand.
    await goTo(on, 'Practise');
    await on.locator('.practice-list label', { hasText: 'Carpet gate' }).first().click();
    const speed = on.getByLabel('Speed of the carpet (ft)');
    await expect.poll(() => speed.inputValue()).toBe('10.3');
    await on.getByText(/^Measured on /).waitFor();
    await speed.fill('9');
    await on.getByText(/^As you set it\. On .* you measured 10\.3 ft\.$/).waitFor();
    await on.getByRole('button', { name: 'Take what was measured' }).click();
    await expect.poll(() => speed.inputValue()).toBe('10.3');
    await goTo(on, 'The week');
    await on.getByText(/^As a green speed\. Measured on /).waitFor();
    expect(await on.locator('output[for=carpet-speed]').innerText()).toBe('10.3 ft');
    expect(pageProblems(on)).toEqual([]);
  });

  it('is not said to be kept when the device refuses, and can be kept once it does not', async () => {
    const on = await open();
    await typeTwoRolls(on);
    await on.evaluate(() => {
      const store = IDBObjectStore.prototype;
      const { add } = store;
      Object.assign(window, { mend: () => Object.assign(store, { add }) });
      store.add = () => {
        throw new DOMException('full', 'QuotaExceededError');
      };
    });
    await button(on, 'Keep this').click();
    await on.getByText('Not kept: the device refused to write').waitFor();
    expect((await pageRecords(on)).measurements).toEqual([]);
    await on.evaluate(() => (window as unknown as { mend: () => void }).mend());
    await button(on, 'Keep this').click();
    await on.getByText('Kept, with today’s date.').waitFor();
    expect((await pageRecords(on)).measurements).toHaveLength(1);
  });

  it('has no sideways scroll and nothing serious for axe with every kind of it in the list', async () => {
    const on = await open({ width: 1440, height: 900 });
    await setPageRecords(on, {
      measurements: [
        ...LITERAL_BACKUP.tables.measurements,
        { ...LITERAL_BACKUP.tables.measurements[0], id: 'measured-on-grass', ground: 'grass' },
      ],
    });
    await on.reload();
    await expect.poll(() => on.getByTestId('kept').getByRole('listitem').count()).toBe(3);
    await on.getByRole('button', { name: /^Delete Start-line spread/ }).click();
    await soundOnEverySide(on, 'measure', 'serious');
  });
});

describe('measuring a player', () => {
  it('takes over pace and start line as the player’s own errors', async () => {
    const on = await open();
    await on.getByLabel('Pace', { exact: true }).check();
    await fill(on, 'Ball 1', /^Target at/, '20');
    for (const [ball, reach, off] of [
      ['Ball 1', 'past', '2'],
      ['Ball 2', 'short', '1'],
      ['Ball 3', 'short', '3'],
      ['Ball 4', 'past', '1'],
    ] as const) {
      await row(on, ball).getByLabel(reach).check();
      await fill(on, ball, /^Off by/, off);
    }
    // Errors 10, -5, -15, 5%: SD 11.1% (their mean is -1.25%).
    await expect
      .poll(() => says(on))
      .toMatch(/Your pace spread is 11% of the distance \(95%: 6\.\d% to 41%\), from 4 balls/);
    await button(on, 'Use this as my pace').click();
    await on.getByText('Your pace spread is now 11%; the habit is left').waitFor();
    await on.getByLabel('Start line', { exact: true }).check();
    await fill(on, 'Gate 1', /^Gate width/, '2.4');
    await fill(on, 'Gate 1', /^Ball to gate/, '24');
    await fill(on, 'Gate 1', /^Balls/, '10');
    await fill(on, 'Gate 1', /^Clean passes/, '12');
    await on.getByText('Got 12 clean passes of 10 balls').waitFor();
    await fill(on, 'Gate 1', /^Clean passes/, '10');
    await expect.poll(() => says(on)).toContain('No lower end is known');
    expect(await button(on, 'Use this as my start line').count()).toBe(0);
    await fill(on, 'Gate 1', /^Clean passes/, '7');
    await button(on, 'Use this as my start line').click();
    await goTo(on, 'Decide');
    // 0.859 degrees to either side and 70% within: 0.859/1.036 = 0.83.
    await expect.poll(() => on.locator('output[for=player-lineSd]').innerText()).toBe('0.83°');
    expect(await on.locator('output[for=player-paceSd]').innerText()).toBe('11.1%');
  });

  it('counts distances in the steps it has measured', async () => {
    const on = await open();
    await on.getByLabel('Pace', { exact: true }).check();
    await fill(on, 'Ball 1', /^Off by/, '1 step');
    await on.getByText('Got steps, but yours has no length yet.').waitFor();
    await on.getByLabel('Step', { exact: true }).check();
    await fill(on, 'Walk 1', /^Known length/, '60');
    await fill(on, 'Walk 1', /^Steps/, '24');
    await button(on, 'Use this as my step').click();
    await on.getByText('Your step is now 30 in').waitFor();
    await on.getByLabel('Pace', { exact: true }).check();
    await expect.poll(() => on.getByText('Got steps').count()).toBe(0);
  });
});

describe('the device’s own level', () => {
  /** What a telephone would send ten times a second. */
  const tilt = (on: Page, beta: number, wobble = 0): Promise<void> =>
    on.evaluate(
      async ([angle, shake]) => {
        for (let i = 0; i < 14; i++) {
          const off = i % 2 ? shake : -shake;
          window.dispatchEvent(
            new DeviceOrientationEvent('deviceorientation', { alpha: 0, beta: angle + off, gamma: 0.4 }),
          );
          await new Promise((done) => setTimeout(done, 90));
        }
      },
      [beta, wobble] as const,
    );
  const allow = (answer: 'granted' | 'denied') => `
    window.asked = 0;
    DeviceOrientationEvent.requestPermission = async () => { window.asked += 1; return '${answer}'; };`;
  const openSlope = async (answer: 'granted' | 'denied'): Promise<Page> => {
    const on = await open();
    await on.addInitScript(allow(answer));
    await on.reload();
    await on.getByLabel('Slope', { exact: true }).check();
    return on;
  };
  const asked = (on: Page): Promise<number> =>
    on.evaluate(() => (window as unknown as { asked: number }).asked);

  it('is asked for on request only, waits until it lies still, and fills pair after pair', async () => {
    const on = await openSlope('granted');
    expect(await asked(on)).toBe(0);
    await button(on, 'Use this device’s level').click();
    expect(await asked(on)).toBe(1);
    await tilt(on, 1.9, 1);
    // The mean of a second's looks at a device that rocks by a degree either way.
    expect(await on.getByTestId('tilt').innerText()).toMatch(/^(1\.[4-9]|2\.[0-4])°$/);
    expect(await button(on, 'Take this reading').isDisabled()).toBe(true);
    // Lying still it sends hardly anything: one event, and then silence.
    await on.evaluate(() =>
      window.dispatchEvent(
        new DeviceOrientationEvent('deviceorientation', { alpha: 0, beta: 1.9, gamma: 0.4 }),
      ),
    );
    await expect.poll(() => button(on, 'Take this reading').isDisabled()).toBe(false);
    expect(await on.getByTestId('tilt').innerText()).toBe('1.9°');
    await button(on, 'Take this reading').click();
    expect(
      await row(on, 'Pair of readings 1')
        .getByLabel(/^As laid/)
        .inputValue(),
    ).toBe('1.90');
    await tilt(on, -0.1);
    await button(on, 'Take this reading').click();
    // (1.9 + 0.1)/2 = 1 degree: 1.7%; the zero error is (1.9 - 0.1)/2.
    await expect.poll(() => says(on)).toMatch(/^The line climbs 1\.7% forwards/);
    expect(await says(on)).toContain('Your level shows 0.9° on level ground');
    await tilt(on, 60);
    await expect.poll(() => on.getByText('Lay the telephone on the board, face up.').count()).toBe(1);
    expect(await button(on, 'Take this reading').isDisabled()).toBe(true);
    await button(on, 'Switch it off').click();
    expect(await on.getByTestId('tilt').count()).toBe(0);
  });

  it('that is not allowed is not asked twice by itself, and readings can be typed', async () => {
    const on = await openSlope('denied');
    await button(on, 'Use this device’s level').click();
    await on.getByText('The sensor was not allowed.').waitFor();
    expect(await asked(on)).toBe(1);
    await fill(on, 'Pair of readings 1', /^As laid/, '1');
    await fill(on, 'Pair of readings 1', /^Turned/, '-1');
    await expect.poll(() => says(on)).toMatch(/^The line climbs 1\.7%/);
  });

  it('that is missing is said to be after a few seconds', async () => {
    const on = await open();
    await on.getByLabel('Slope', { exact: true }).check();
    await button(on, 'Use this device’s level').click();
    await on.getByText('This device or browser gives no tilt.').waitFor();
  });
});

const FORMS = ['Green speed', 'Slope', 'Pace', 'Start line', 'Step'];

describe('every form', () => {
  it.each(SIDES_IN_UNITS)(
    'has no sideways scroll and nothing serious for axe at %i px, %s, in %s',
    async (width, colorScheme, units) => {
      const on = await open({ width, colorScheme });
      await on.getByLabel(units).check();
      for (const form of FORMS) {
        await on.getByLabel(form, { exact: true }).check();
        if (form === 'Slope') await on.getByLabel('two, for the whole fall').check();
        if (form === 'Pace') await on.getByLabel('left and right too').check();
        // A complaint and a row of figures are the widest things there are.
        await on.locator('.measure-rows input[type=text]').first().fill('no number at all');
        await on.locator('.measure-rows input[type=text]').last().fill('9');
        const found = {
          serious: await seriousFindings(on),
          scroll: await sidewaysScroll(on),
          small: await on.evaluate(() =>
            [...document.querySelectorAll<HTMLElement>('main button, main input[type=text]')]
              .filter((element) => element.getBoundingClientRect().height < 44)
              .map((element) => element.outerHTML),
          ),
        };
        expect({ form, ...found }).toEqual({ form, serious: [], scroll: 0, small: [] });
        expect(await on.getByRole('note').innerText()).toContain('Rule 4.3a');
      }
      expect(pageProblems(on)).toEqual([]);
    },
  );
});
