import { contextEffects, questionsToAsk } from '@faultodds/core';
import { expect, test } from 'vitest';
import { work } from '../../fixtures/scriptPrompter.ts';
import { loadModel } from '../read/loadModel.ts';

const { model, compiled } = await loadModel();

test('intake questions come in the order of what they could do, and every answer says what it changed', async () => {
  const first = questionsToAsk(compiled, { context: {}, observations: [] });
  const [waiting, next] = first.map(({ feature }) => model.context.find(({ id }) => id === feature)!);
  const { out, questions } = await work(['', 'fitted', '#not-known', '#enough', 'leave', true]);
  expect(questions[1]).toContain(waiting!.question);
  expect(questions[1]).toMatch(/\(could change the ranking by \d.*needs? the answer\)$/);
  expect(questions[2]).toContain(next!.question);
  expect(questions[3]).not.toBe(questions[2]);
  const [effect] = contextEffects(compiled, { [waiting!.id]: 'fitted' });
  for (const cause of effect!.causesIn) {
    expect(out).toContain(`Now possible: “${model.causes.find(({ id }) => id === cause)!.label}”`);
  }
  expect(out).toContain('Can now be tested: ');
});

test('every intake question stands at “not known” first', async () => {
  const { questions, preselected } = await work(['', '#not-known', '#not-known', '#enough', 'leave', true].slice(0, 5));
  const asked = questions.filter((question) => question.includes('ranking'));
  expect(asked.length).toBeGreaterThan(2);
  for (const question of asked) expect(preselected.get(question), question).toEqual(['#not-known']);
});

test('a change of an answer stands at the one that is given', async () => {
  const plugAge = model.context.find(({ id }) => id === 'plug-age')!;
  const ways = ['', '#enough', 'intake', 'plug-age', 'overdue', 'leave', true];
  const first = await work(ways);
  expect(first.preselected.get(plugAge.question)).toEqual(['#not-known']);
  const again = await work(ways.toSpliced(5, 0, 'intake', 'plug-age', 'overdue'));
  expect(again.preselected.get(plugAge.question)).toEqual(['overdue']);
});

test('an answer that moves chances says which and how far', async () => {
  const { out } = await work(['', '#enough', 'intake', 'plug-age', 'overdue', 'leave', true]);
  expect(out).toMatch(/Before any result: “[^”]+” [\d.]+% to [\d.]+%/);
});
