import { misfire } from '@faultodds/misfire';
import { expect, test, vi } from 'vitest';
import { render } from 'vitest-browser-svelte';
import type { EngineStore } from '../state/engineStore.svelte.ts';
import { loadKnowledge } from '../knowledge/knowledge.ts';
import NumberEntry from './NumberEntry.svelte';

const knowledge = loadKnowledge(misfire, []);

function setup(id: string, engine: EngineStore = { cylinders: 4, suspect: 3, bank: 0 }) {
  const given = { knowledge, test: knowledge.test(id)!, engine, onrecord: vi.fn() };
  return { given, screen: render(NumberEntry, given) };
}

test('compression per cylinder becomes a reading in its unit, decimal comma or point alike', async () => {
  const { given, screen: pending } = setup('cranking-compression');
  const screen = await pending;
  for (const [cylinder, text] of [
    ['Cyl. 1', '12,4'],
    ['Cyl. 2', '12.1'],
    ['Cyl. 3', '4'],
    ['Cyl. 4', '12.5'],
  ] as const)
    await screen.getByLabelText(cylinder).fill(text);
  await expect.element(screen.getByText(/^Compared value: 0\.32$/)).toBeVisible();
  await expect.element(screen.getByText(/^leaking\s+fits well$/)).toBeVisible();
  await expect.element(screen.getByText(/^Not met\. Lowest at least 75 %/)).toBeVisible();
  await screen.getByRole('button', { name: 'Record these numbers' }).click();
  expect(given.onrecord).toHaveBeenCalledWith({
    reading: expect.objectContaining({
      kind: 'per-cylinder',
      unit: 'bar',
      suspect: 3,
      values: { 1: 12.4, 2: 12.1, 3: 4, 4: 12.5 },
    }),
  });
});

test('what is wrong is said at its field, and nothing is recorded', async () => {
  const { given, screen: pending } = setup('cranking-compression');
  const screen = await pending;
  await screen.getByLabelText('Cyl. 3').fill('9.2');
  await screen.getByLabelText('Cyl. 4').fill('125');
  await screen.getByRole('button', { name: 'Record these numbers' }).click();
  await expect.element(screen.getByLabelText('Cyl. 4')).toHaveAccessibleDescription(/psi instead of bar/);
  await expect.element(screen.getByLabelText('Cyl. 4')).toHaveFocus();
  await expect.element(screen.getByLabelText('Cyl. 3')).toHaveAccessibleDescription('');
  expect(given.onrecord).not.toHaveBeenCalled();
});

test('the suspect missing and words instead of numbers are pointed out', async () => {
  const { given, screen: pending } = setup('cranking-compression');
  const screen = await pending;
  await screen.getByLabelText('Cyl. 1').fill('twelve');
  await screen.getByRole('button', { name: 'Record these numbers' }).click();
  await expect.element(screen.getByLabelText('Cyl. 1')).toHaveAttribute('aria-invalid', 'true');
  await screen.getByLabelText('Cyl. 1').fill('12');
  await expect.element(screen.getByLabelText('Cyl. 3')).toHaveAccessibleDescription(/suspect/);
  expect(given.onrecord).not.toHaveBeenCalled();
});

test('without a suspect no comparison is asked for', async () => {
  const screen = await setup('cranking-compression', { cylinders: 4, suspect: 0, bank: 0 }).screen;
  await expect.element(screen.getByText('First choose which cylinder misfires.')).toBeVisible();
  await expect.element(screen.getByRole('button', { name: 'Record these numbers' })).not.toBeInTheDocument();
});

test('counts before and after a swap say whether the misfire followed', async () => {
  const { given, screen: pending } = setup('coil-swap');
  const screen = await pending;
  for (const [heading, own, partner] of [
    ['Before', '120', '0'],
    ['After', '2', '131'],
  ] as const) {
    const group = screen.getByRole('group', { name: heading, exact: true });
    await group.getByLabelText('This cylinder').fill(own);
    await group.getByLabelText('The cylinder it was swapped with').fill(partner);
    await group.getByRole('textbox', { name: 'Counted over' }).fill('1000');
  }
  await expect.element(screen.getByText(/^This counts as:/)).toBeVisible();
  await screen.getByRole('button', { name: 'Record these numbers' }).click();
  expect(given.onrecord).toHaveBeenCalledWith({
    reading: expect.objectContaining({
      kind: 'part-counts',
      after: { suspect: 2, partner: 131, exposure: { amount: 1000, unit: 'revolutions' } },
    }),
  });
});

test('every reading of every test can be typed in', async () => {
  for (const one of knowledge.model.tests.filter(({ readings = [] }) => readings.length > 0)) {
    const screen = await setup(one.id).screen;
    await expect.element(screen.getByRole('button', { name: 'Record these numbers' })).toBeVisible();
    expect(screen.getByRole('textbox').elements().length).toBeGreaterThan(0);
    screen.unmount();
  }
});
