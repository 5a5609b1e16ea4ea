import { expect, test, vi } from 'vitest';
import { render } from 'vitest-browser-svelte';
import type { NextStepsView, TestView } from '../views/nextStepsView.ts';
import NextSteps from './NextSteps.svelte';

// an invented machine: nothing of it is real
function testRow(id: string, changes: Partial<TestView> = {}): TestView {
  return {
    id,
    label: `Test ${id}`,
    price: '70 units',
    minutes: '42 min',
    opens: ['Hatch off'],
    cautions: ['Spinning wheels take fingers.'],
    how: 'Turn it by hand.',
    note: '',
    category: 'look',
    equipment: [{ id: 'mirror', label: 'Mirror' }],
    value: 'saves 96 units on average',
    besides: [],
    ifAsleep: undefined,
    visit: undefined,
    faultMustBeActive: true,
    outcomes: [
      {
        id: 'turns',
        label: 'It turns',
        chance: '26%',
        probability: 0.26,
        ranking: [{ label: 'Spindle bent', chance: '80%' }],
        cost: '235 units',
      },
      {
        id: 'stuck',
        label: 'It is stuck',
        chance: '74%',
        probability: 0.74,
        ranking: [{ label: 'Sprocket worn', chance: '28%' }],
        cost: '1,200 units',
      },
    ],
    ...changes,
  };
}

const view: NextStepsView = {
  tests: ['one', 'two', 'three', 'four', 'five'].map((id) => testRow(id)),
  repairs: [],
  best: 'one',
  isTest: true,
  differs: false,
  ahead: '',
  notHere: [{ test: 'Test six', missing: ['Oscilloscope'] }],
};

function setup(changes: Partial<NextStepsView> = {}) {
  const given = { view: { ...view, ...changes }, onrecord: vi.fn(), oncannot: vi.fn() };
  return { given, screen: render(NextSteps, given) };
}

test('price, time, access, equipment and caution stand in the row, before anything is opened', async () => {
  const screen = await setup().screen;
  const row = screen.getByRole('article', { name: 'Test two' });
  for (const words of ['70 units', '42 min', 'Hatch off', 'Mirror', 'Spinning wheels take fingers.'])
    await expect.element(row.getByText(words)).toBeVisible();
  await expect.element(row.getByText('It turns')).not.toBeInTheDocument();
});

test('the best step is open: its futures are read before it is done', async () => {
  const screen = await setup().screen;
  const row = screen.getByRole('article', { name: 'Test one' });
  await expect
    .element(row.getByRole('button', { name: /It turns/ }))
    .toHaveTextContent(/26%.*Spindle bent 80%.*235 units/s);
  await expect.element(row.getByRole('button', { name: /It is stuck/ })).toHaveTextContent(/74%.*Sprocket worn 28%/s);
});

test('an outcome is recorded in place, with the misfire taken as present unless said otherwise', async () => {
  const { given, screen: pending } = setup();
  const screen = await pending;
  await screen.getByRole('button', { name: /It turns/ }).click();
  expect(given.onrecord).toHaveBeenCalledWith('one', 'turns', 'yes');
  await screen.getByLabelText('Not sure').click();
  await screen.getByRole('button', { name: /It is stuck/ }).click();
  expect(given.onrecord).toHaveBeenLastCalledWith('one', 'stuck', 'unknown');
});

test('a test that does not need the misfire does not ask for it', async () => {
  const { given, screen: pending } = setup({ tests: [testRow('one', { faultMustBeActive: false })] });
  const screen = await pending;
  await expect.element(screen.getByLabelText('Not sure')).not.toBeInTheDocument();
  await screen.getByRole('button', { name: /It turns/ }).click();
  expect(given.onrecord).toHaveBeenCalledWith('one', 'turns', undefined);
});

test('opening another step closes the first', async () => {
  const screen = await setup().screen;
  await screen.getByRole('button', { name: 'Test three' }).click();
  await expect.element(screen.getByRole('article', { name: 'Test three' }).getByText('It turns')).toBeVisible();
  await expect.element(screen.getByRole('article', { name: 'Test one' }).getByText('It turns')).not.toBeInTheDocument();
});

test('the rest of a long list is one tap away, and what lacks equipment says which', async () => {
  const screen = await setup().screen;
  await expect.element(screen.getByRole('article', { name: 'Test five' })).not.toBeInTheDocument();
  await screen.getByRole('button', { name: '2 more tests' }).click();
  await expect.element(screen.getByRole('article', { name: 'Test five' })).toBeVisible();
  await screen.getByText('Needs equipment that is not at hand').click();
  await expect.element(screen.getByText('Test six: Oscilloscope')).toBeVisible();
});

test('what cannot be done here is said by naming the missing tool', async () => {
  const { given, screen: pending } = setup();
  const screen = await pending;
  await screen.getByText('Can’t do that here').click();
  await screen.getByRole('button', { name: 'No Mirror' }).click();
  expect(given.oncannot).toHaveBeenCalledWith('mirror');
});

test('until the step stands an outcome takes the focus and records nothing', async () => {
  const { given, screen: pending } = setup();
  const screen = await pending;
  await screen.rerender({ ...given, ready: false });
  const outcome = screen.getByRole('button', { name: /It turns/ });
  await expect.element(outcome).toHaveAttribute('aria-disabled', 'true');
  (outcome.element() as HTMLElement).focus();
  await expect.element(outcome).toHaveFocus();
  (outcome.element() as HTMLElement).click();
  expect(given.onrecord).not.toHaveBeenCalled();
  await screen.rerender({ ...given, ready: true });
  await expect.element(outcome).toHaveFocus();
  (outcome.element() as HTMLElement).click();
  expect(given.onrecord).toHaveBeenCalledWith('one', 'turns', 'yes');
});
