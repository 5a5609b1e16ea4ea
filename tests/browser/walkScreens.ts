import { AxeBuilder } from '@axe-core/playwright';
import type { Page, ViewportSize } from 'playwright-core';
import { opened, replay, type Playground } from './openPlayground.ts';

/** A screen, how it is reached from an invented case after eight results, the part of the page it is, and how it is left again. */
interface Screen {
  readonly name: string;
  readonly reach: (page: Page) => Promise<void>;
  readonly part: '#next' | 'dialog[open]' | 'body';
  readonly leave: 'Escape' | 'reload';
  /** It shows what is worked out beside the page. */
  readonly worksBeside?: true;
}

const sheet = (page: Page) => page.getByRole('dialog');
async function unfold(page: Page, within: string): Promise<void> {
  for (const summary of await page.locator(`${within} details:not([open]) > summary`).all())
    if (await summary.isVisible()) await summary.click();
}

const screens: readonly Screen[] = [
  {
    name: 'the case, everything unfolded',
    part: 'body',
    leave: 'reload',
    worksBeside: true,
    async reach(page) {
      await page
        .getByText(/^Same advice in/)
        .first()
        .waitFor({ state: 'attached' });
      await unfold(page, 'main');
    },
  },
  {
    name: 'entering numbers',
    part: '#next',
    leave: 'reload',
    async reach(page) {
      await page.getByText('Record something already done').first().click();
      await page.getByLabel('Find a test or repair').fill('leak-down');
      await page.locator('#next li button.name').first().click();
      const form = page.locator('#next details[open]').last();
      await form.getByRole('button', { name: 'Enter the numbers' }).first().click();
    },
  },
  {
    name: 'pasting codes',
    part: '#next',
    leave: 'reload',
    async reach(page) {
      await page.locator('#next summary', { hasText: 'Paste trouble codes' }).click();
      const form = page.locator('#next details[open]').last();
      await form.getByLabel('Misfires on').selectOption({ label: 'Cylinder 2' });
      await form.getByLabel(/^Trouble codes/).fill('P0302 P0352 pending, P0420 PO301');
    },
  },
  {
    name: 'set-up',
    part: 'dialog[open]',
    leave: 'Escape',
    reach: (page) => page.getByRole('button', { name: 'Settings' }).click(),
  },
  { name: 'keys', part: 'dialog[open]', leave: 'Escape', reach: (page) => page.keyboard.press('F1') },
  {
    name: 'the numbers behind',
    part: 'dialog[open]',
    leave: 'Escape',
    worksBeside: true,
    async reach(page) {
      await page.getByRole('button', { name: 'Check the numbers' }).click();
      const slider = sheet(page).getByRole('slider').first();
      await slider.waitFor();
      await slider.focus();
      await page.keyboard.press('ArrowRight');
    },
  },
  {
    name: 'further ahead',
    part: 'dialog[open]',
    leave: 'Escape',
    worksBeside: true,
    async reach(page) {
      await page.getByRole('button', { name: 'Look further ahead' }).click();
      await sheet(page).getByRole('button', { name: 'Compute the whole plan' }).click();
      await sheet(page)
        .getByText(/on average until the repair is confirmed$/)
        .waitFor();
      // the plan alone is stopped: what it would take is worked out beside it, with a button of its own
      const plan = sheet(page).locator('section', { hasText: 'The whole plan' });
      await plan.getByRole('button', { name: 'Stop', exact: true }).click();
      await sheet(page)
        .getByText(/now .*, worth it from /)
        .first()
        .waitFor();
      await sheet(page).getByRole('button', { name: 'Consider pairs of causes' }).click();
      await sheet(page).getByRole('table').last().waitFor();
      await unfold(page, 'dialog[open]');
    },
  },
  {
    name: 'cases',
    part: 'dialog[open]',
    leave: 'Escape',
    async reach(page) {
      // a case of one's own is kept
      await page.getByLabel('Name of this case').fill('Lift four');
      await page.keyboard.press('Tab');
      await page.getByRole('button', { name: 'Cases' }).click();
      await sheet(page)
        .getByRole('button', { name: /^Rename, duplicate or delete/ })
        .first()
        .click();
    },
  },
  {
    name: 'the report',
    part: 'body',
    leave: 'Escape',
    async reach(page) {
      await page.getByRole('button', { name: 'Cases' }).click();
      await sheet(page).getByRole('button', { name: 'Report of this case' }).click();
      await page.locator('.report').waitFor();
    },
  },
];

/** Rules that colours decide: all that the other theme can break, since the themes share everything else. */
const RULES_OF_COLOUR = ['color-contrast', 'link-in-text-block'];

/** What axe finds by all its rules (WCAG 2.0 to 2.2, levels A and AA, and good practice), or by some. */
async function violations(page: Page, part: string, rules: readonly string[] = []): Promise<string[]> {
  // bars that stay in sight while the page moves under them cover what the reader has yet to scroll to
  await page.evaluate(() => scrollTo(0, 0));
  const axe = new AxeBuilder({ page })
    .include(part)
    .options({ resultTypes: ['violations'] })
    .setLegacyMode(true);
  const { violations: found } = await (rules.length > 0 ? axe.withRules([...rules]) : axe).analyze();
  return found.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
}

/** What hangs over the edge, is too small to hit (44 px) or to read (16 px), or is cut off. */
function misfits(page: Page, part: string): Promise<string[]> {
  return page.evaluate((within) => {
    const root = document.querySelector(within)!;
    const shown = (one: Element): boolean =>
      one.getClientRects().length > 0 && !one.closest('.unseen') && getComputedStyle(one).visibility === 'visible';
    const all = [...root.querySelectorAll('*')].filter(shown);
    const named = (what: string) => (one: Element) => `${what}: ${one.tagName} ${one.textContent!.trim().slice(0, 40)}`;
    const over = all
      .filter((one) => !one.closest('.scroll, .drawing, svg'))
      .filter((one) => one.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5);
    const small = all
      .filter((one) => one.matches('button, select, summary, input:not([type=file]), textarea'))
      .filter((one) => {
        // a box or a dot is hit through its label
        const target = one.matches('[type=radio], [type=checkbox]') ? (one.closest('label') ?? one) : one;
        const { width, height } = target.getBoundingClientRect();
        return width < 43.99 || height < 43.99;
      });
    const fine = all
      .filter((one) => !one.closest('svg'))
      .filter((one) => [...one.childNodes].some((node) => node.nodeType === 3 && node.textContent!.trim() !== ''))
      .filter((one) => parseFloat(getComputedStyle(one).fontSize) < 16);
    const wide =
      document.documentElement.scrollWidth > document.documentElement.clientWidth ? ['scrolls sideways'] : [];
    return [...over.map(named('over')), ...small.map(named('small')), ...fine.map(named('fine')), ...wide];
  }, part);
}

/** Goes from screen to screen of an invented case after eight results: what axe finds, in the dark theme too where that is asked for, what hangs
 * over the edge, is too small or too fine, what is called certain, and what the page complains of. Empty when all is well.
 * @param worksBeside the screens that show what is worked out beside the page, or those that do not */
export async function walkScreens(
  playground: Playground,
  viewport: ViewportSize,
  dark: boolean,
  worksBeside: boolean,
): Promise<string[]> {
  const found: string[] = [];
  const { page, complaints } = await playground.open({ worksBeside, viewport, colorScheme: 'light' });
  await replay(page, 7, 8);
  for (const { name, reach, part, leave } of screens.filter((one) => (one.worksBeside ?? false) === worksBeside)) {
    await reach(page);
    await page.locator(part).waitFor();
    const here = [...(await misfits(page, part))];
    // nothing is certain: probabilities near the ends are written as what they are
    here.push(...((await page.locator(part).innerText()).match(/(?<![\d.])(0|100)\s?%/g) ?? []));
    here.push(...(await violations(page, part)));
    if (dark) {
      await page.emulateMedia({ colorScheme: 'dark' });
      here.push(...(await violations(page, part, RULES_OF_COLOUR)).map((one) => `dark: ${one}`));
      await page.emulateMedia({ colorScheme: 'light' });
    }
    found.push(...here.map((one) => `${name}: ${one}`));
    if (leave === 'Escape') {
      await page.keyboard.press('Escape');
    } else {
      await page.reload();
      await page.getByRole('heading', { name: 'Most likely now' }).waitFor();
      await opened(page);
    }
  }
  found.push(...complaints);
  return found;
}
