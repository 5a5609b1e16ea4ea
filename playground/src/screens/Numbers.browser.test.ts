import { startCase } from '@faultodds/core';
import { modelNumbers } from '@faultodds/core/doubt';
import { describeNumber } from '@faultodds/core/words';
import { english } from '@faultodds/core/words/en';
import { misfire } from '@faultodds/misfire';
import { expect, test } from 'vitest';
import { render } from 'vitest-browser-svelte';
import { createCaseStore } from '../state/caseStore.svelte.ts';
import { loadKnowledge } from '../knowledge/knowledge.ts';
import { createTrial } from '../state/trial.svelte.ts';
import Numbers from './Numbers.svelte';

const knowledge = loadKnowledge(misfire, []);

function setup() {
  const store = createCaseStore(knowledge, startCase({ id: 'invented', title: 'Invented' }), () => {});
  const trial = createTrial(
    () => knowledge,
    () => store,
  );
  return { store, trial, screen: render(Numbers, { knowledge, store, trial }) };
}

test('every number has a range and a source', () => {
  const numbers = modelNumbers(knowledge.model);
  expect(new Set(numbers.map(({ path }) => path)).size).toBe(numbers.length);
  for (const { value, low, high, source } of numbers) {
    expect(value).toBeGreaterThan(0);
    // of a rare thing worth few cases even the 95 % point may lie below the mean
    expect(low).toBeLessThanOrEqual(high);
    expect(knowledge.model.sources.map(({ id }) => id)).toContain(source);
  }
});

test('the numbers that matter most come with what they would do, each one in the list of all numbers', async () => {
  const screen = await setup().screen;
  await expect.element(screen.getByRole('slider').first()).toBeVisible();
  expect(screen.getByRole('slider').elements().length).toBeGreaterThan(3);
  await expect.element(screen.getByText(/at the low end of its range/).first()).toBeVisible();
});

test('a changed number moves the ranking at once, is listed, and goes back to its own', async () => {
  const { trial, store, screen: pending } = setup();
  const screen = await pending;
  const cause = store.now.belief.ranking[3]!.cause;
  const at = knowledge.model.causes.findIndex(({ id }) => id === cause);
  const path = `/causes/${at}/weight/best`;
  const own = knowledge.model.causes[at]!.weight.best;
  await screen.getByLabelText(/^Find a number/).fill(`how common “${knowledge.causeLabel(cause)}” is`);
  const slider = screen
    .getByRole('slider', { name: `Value of: How common “${knowledge.causeLabel(cause)}” is` })
    .last();
  const before = trial.ranking.find((one) => one.cause === cause)!.probability;
  const input = slider.element() as HTMLInputElement;
  input.value = '1';
  input.dispatchEvent(new Event('input', { bubbles: true }));
  expect(trial.valueAt(path)).toBeGreaterThan(2 * own);
  const probability = (): number => trial.ranking.find((one) => one.cause === cause)!.probability;
  await expect.poll(probability).toBeGreaterThan(before);
  expect(store.now.belief.ranking[3]!.probability).toBe(before);
  await screen.getByRole('button', { name: /^Reset:/ }).click();
  expect(trial.valueAt(path)).toBe(own);
  expect(trial.changes).toEqual([]);
});

test('numbers of one row move together, so that it still sums to one', async () => {
  const { trial } = setup();
  const row = modelNumbers(knowledge.model).filter(({ path }) => path.startsWith('/tests/0/rows/0/p/'));
  expect(row.length).toBeGreaterThan(1);
  trial.set(row[0]!.path, 0.5);
  const sum = row.reduce((all, { path }) => all + trial.valueAt(path)!, 0);
  expect(sum).toBeCloseTo(1, 10);
});

test('another step is another advice, whatever both are called', async () => {
  const named = { ...knowledge.model, tests: knowledge.model.tests.map((one) => ({ ...one, label: 'Look' })) };
  const alike = loadKnowledge(named, []);
  const store = createCaseStore(alike, startCase({ id: 'invented', title: 'Invented' }), () => {});
  const [best, second] = store.now.advice.tests.map((one) => ({ ...one, kind: 'test' as const }));
  const own = createTrial(
    () => alike,
    () => store,
  );
  const screen = await render(Numbers, { knowledge: alike, store, trial: { ...own, best: second! } });
  await expect.element(screen.getByText('Look, instead of Look')).toBeVisible();
  await screen.rerender({ trial: { ...own, best: best! } });
  await expect.element(screen.getByText('Look, as before')).toBeVisible();
});

test('the share that goes without a cure, the least time of a repair and a needless opening have a source and a slider', async () => {
  const { trial, screen: pending } = setup();
  const screen = await pending;
  for (const [words, path] of [
    ['fault goes repair did not cure', '/goneWithoutCure/best'],
    ['minutes a repair takes at least', '/leastRepairMinutes/best'],
    ['opening engine for nothing', '/needlessOpening/best'],
  ] as const) {
    const number = modelNumbers(knowledge.model).find((one) => one.path === path)!;
    expect(knowledge.sourceKind(number.source)).toBe('judgement');
    expect(number.high).toBeGreaterThan(number.low);
    await screen.getByLabelText(/^Find a number/).fill(words);
    const slider = screen.getByRole('slider', { name: `Value of: ${describeNumber(knowledge.model, path, english)}` });
    const input = slider.element() as HTMLInputElement;
    input.value = '0.9';
    input.dispatchEvent(new Event('input', { bubbles: true }));
    expect(trial.valueAt(path)).toBeGreaterThan(number.value);
  }
  expect(trial.refused).toBe('');
});
