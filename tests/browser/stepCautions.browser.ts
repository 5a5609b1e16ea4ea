// Every step that is drawn stands with what can hurt in it: walked over the built page, in both languages.
import { parseModel, textIn } from '@faultodds/core';
import { misfire } from '@faultodds/misfire';
import { stopAndTow } from '@faultodds/core/words/en';
import { stopAndTow as stopAndTowGerman } from '@faultodds/core/words/de';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Page } from 'playwright-core';
import { replay, servePlayground, type Playground } from './openPlayground.ts';

let playground: Playground;
beforeAll(async () => {
  playground = await servePlayground();
}, 120_000);
afterAll(() => playground?.close());

const { tests, repairs, cautions } = parseModel(misfire);
/** Label of a step -> its own cautions in English, whatever is open. */
const own = Object.fromEntries(
  [...tests, ...repairs].map(({ label, cautions: ids }) => [
    label,
    ids.map((id) => textIn(cautions.find((one) => one.id === id)!.text, 'en')),
  ]),
);

/** Steps drawn in `within`, and those whose cautions are not in their row. What may be recorded as done before is no step to do. */
async function drawn(page: Page, within: string): Promise<{ readonly steps: number; readonly bare: string[] }> {
  return page.evaluate(
    ([selector, known]) => {
      const bare: string[] = [];
      let steps = 0;
      const named = [...document.querySelectorAll(`${selector} :is(h3, strong, p.step, li, li > span)`)];
      for (const one of named) {
        const text = [...one.childNodes]
          .map((node) => (node.nodeType === 3 || (node as Element).children?.length === 0 ? node.textContent : ''))
          .join(' ')
          .trim();
        const label = Object.keys(known).find(
          (name) => text === name || one.querySelector('[id$=-label]')?.textContent === name,
        );
        if (label === undefined || one.querySelector(':scope > button.name') !== null) continue;
        steps += 1;
        const row = one.closest('article, .best, .step, li')?.textContent ?? '';
        if (known[label]!.some((caution) => !row.includes(caution))) bare.push(label);
      }
      return { steps, bare };
    },
    [within, own] as const,
  );
}

test('on the first screen, in the list of steps, and looking ahead; when to stop stands beside them', async () => {
  const { page } = await playground.open({ worksBeside: true });
  await replay(page, 7, 3);
  for (const place of ['#now', '#next']) {
    await page.locator(place).getByText(stopAndTow).waitFor();
    const { steps, bare } = await drawn(page, place);
    expect({ place, bare }).toEqual({ place, bare: [] });
    expect(steps, place).toBeGreaterThan(0);
  }
  await page.locator('#next button.ahead').click();
  await page.getByRole('button', { name: 'Compute the whole plan' }).click();
  await page.locator('.step .cautions').first().waitFor({ state: 'attached' });
  const { steps, bare } = await drawn(page, '[role=dialog], dialog');
  expect(bare).toEqual([]);
  expect(steps).toBeGreaterThan(1);
}, 120_000);

test('in German the cautions and when to stop are German', async () => {
  const { page } = await playground.open({ worksBeside: true, locale: 'de-DE' }, undefined, 'Am wahrscheinlichsten');
  await page.locator('#now').getByText(stopAndTowGerman).waitFor();
  const shown = await page.locator('#next .cautions').allTextContents();
  expect(shown.length).toBeGreaterThan(0);
  for (const { text } of cautions) for (const one of shown) expect(one).not.toContain(textIn(text, 'en'));
}, 120_000);
