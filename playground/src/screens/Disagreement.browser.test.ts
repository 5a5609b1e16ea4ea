import { beliefOf, type Observation } from '@faultodds/core';
import { evidenceConflict } from '@faultodds/core/doubt';
import { misfire } from '@faultodds/misfire';
import { expect, test, vi } from 'vitest';
import { render } from 'vitest-browser-svelte';
import { conflictView } from '../views/conflictView.ts';
import { loadKnowledge } from '../knowledge/knowledge.ts';
import Disagreement from './Disagreement.svelte';

const knowledge = loadKnowledge(misfire, []);
const result = (id: string, of: string, outcome: string): Observation => ({ kind: 'result', id, test: of, outcome });

function viewOf(observations: readonly Observation[]) {
  const facts = { context: {}, observations };
  return conflictView(knowledge, beliefOf(knowledge.compiled, facts), evidenceConflict(knowledge.compiled, facts));
}

test('results that agree are passed over in silence', () => {
  expect(viewOf([])).toBeNull();
  expect(viewOf([result('r1', 'coil-swap', 'stays')])).toBeNull();
});

test('results that disagree name each other, the one to doubt, and the ranking without it', async () => {
  // the misfire goes with the coil and, all the same, with the plug
  const view = viewOf([result('r1', 'coil-swap', 'follows'), result('r2', 'plug-swap', 'follows')]);
  expect(view).not.toBeNull();
  const onretract = vi.fn();
  const screen = await render(Disagreement, { view: view!, onretract });
  await expect.element(screen.getByText(/disagree\.$/)).toBeVisible();
  await screen.getByText('Show the ranking without it').click();
  const rows = screen.getByRole('table').getByRole('row').elements();
  expect(rows.length).toBeGreaterThan(3);
  for (const row of view!.helps!.rows) expect(row.with).not.toBe('');
  expect(view!.helps!.rows.some((row) => row.with !== row.without)).toBe(true);
  await screen.getByRole('button', { name: 'Take it back' }).click();
  expect(onretract).toHaveBeenCalledWith(view!.helps!.id);
});
