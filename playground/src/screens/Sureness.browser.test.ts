import { beliefOf } from '@faultodds/core';
import { credibleRanking, adviceStability } from '@faultodds/core/doubt';
import { misfire } from '@faultodds/misfire';
import { expect, test, vi } from 'vitest';
import { render } from 'vitest-browser-svelte';
import { loadKnowledge } from '../knowledge/knowledge.ts';
import { surenessView } from '../views/surenessView.ts';
import Sureness from './Sureness.svelte';

const knowledge = loadKnowledge(misfire, []);
const facts = { context: {}, observations: [] };
const belief = beliefOf(knowledge.compiled, facts);

test('before anything is worked out the probabilities stand there without a range', async () => {
  const view = surenessView(knowledge, belief, {}, false);
  const screen = await render(Sureness, { view, onnumbers: vi.fn() });
  await expect.element(screen.getByText('Computing …').first()).toBeVisible();
  expect(screen.container.querySelectorAll('li svg circle').length).toBe(view.rows.length);
  expect(screen.container.querySelectorAll('li svg .span').length).toBe(0);
});

test('every range holds what core says, is drawn with its ends, and judgement is hatched', async () => {
  const ranking = credibleRanking(knowledge.compiled, facts, { draws: 20 });
  const advice = adviceStability(knowledge.compiled, facts, {}, { draws: 3 });
  const view = surenessView(knowledge, belief, { ranking, advice }, true);
  for (const row of view.rows) {
    const known = ranking.causes.find(({ cause }) => cause === row.id)!;
    expect([row.low, row.high]).toEqual([known.low, known.high]);
    const source = knowledge.cause(row.id)!.weight.source;
    expect(row.judged).toBe(knowledge.sourceKind(source) === 'judgement');
  }
  const onnumbers = vi.fn();
  const screen = await render(Sureness, { view, onnumbers });
  await expect.element(screen.getByText(/^Same advice in (every|\d+|fewer than 1)/)).toBeVisible();
  await expect.element(screen.getByText('From 20 plausible models.')).toBeVisible();
  const hatched = screen.container.querySelectorAll('li svg .judged').length;
  expect(hatched).toBe(view.rows.filter(({ judged }) => judged).length);
  await screen.getByRole('button', { name: 'Check the numbers' }).click();
  expect(onnumbers).toHaveBeenCalledOnce();
});
