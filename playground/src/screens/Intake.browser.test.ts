import { questionsToAsk } from '@faultodds/core';
import { misfire } from '@faultodds/misfire';
import { expect, test, vi } from 'vitest';
import { render } from 'vitest-browser-svelte';
import { askNextView } from '../views/intakeView.ts';
import { loadKnowledge } from '../knowledge/knowledge.ts';
import Intake from './Intake.svelte';

const knowledge = loadKnowledge(misfire, []);
const engine = { cylinders: 4, suspect: 0, bank: 0 as const };
const answered = (feature: string) =>
  knowledge.model.context
    .find(({ id }) => id === feature)!
    .values.find(({ multipliers }) => Object.keys(multipliers).length > 0)!;

test('an answer says what it changed, with the numbers behind it, their ranges and their source', async () => {
  const value = answered('pattern');
  const screen = await render(Intake, {
    props: { knowledge, engine, context: { pattern: value.id }, onanswer: vi.fn() },
  });
  const question = screen.container.querySelector('[data-feature="pattern"]')!;
  expect(question.textContent).toMatch(/\d%\s*→\s*[\d.]+%/);
  const [summary] = [...question.querySelectorAll('summary')];
  summary!.click();
  await expect.poll(() => question.querySelector('.behind')!.textContent).toMatch(/odds × [\d.]+ \([\d.]+ to [\d.]+\)/);
  expect(question.querySelector('.behind')!.textContent).toMatch(/Judgement: |Published: |Common practice: /);
});

test('an answer that brings causes in or rules them out names them', async () => {
  const feature = knowledge.model.causes.flatMap(({ requires }) => Object.entries(requires ?? {}))[0]!;
  const screen = await render(Intake, {
    props: { knowledge, engine, context: { [feature[0]]: feature[1] }, onanswer: vi.fn() },
  });
  await expect.element(screen.getByText(/^Now possible: /)).toBeVisible();
});

test('the question most worth asking is named, and one press goes to it', async () => {
  const questions = questionsToAsk(knowledge.compiled, { context: {}, observations: [] });
  const askNext = askNextView(knowledge, questions.toReversed())!;
  const screen = await render(Intake, { props: { knowledge, engine, context: {}, askNext, onanswer: vi.fn() } });
  await screen.getByRole('button', { name: /^Most useful to ask now/ }).click();
  await expect.element(screen.getByLabelText(askNext.question)).toHaveFocus();
});

test('every question of the model is asked once', async () => {
  const screen = await render(Intake, { props: { knowledge, engine, context: {}, onanswer: vi.fn() } });
  expect(screen.container.querySelectorAll('[data-feature]')).toHaveLength(knowledge.model.context.length);
});
