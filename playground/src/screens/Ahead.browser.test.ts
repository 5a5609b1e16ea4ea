import { recordEvent, startCase } from '@faultodds/core';
import { repairOrTest, whatWouldItTake } from '@faultodds/core/planning';
import { formatMoney } from '@faultodds/core/words/en';
import { misfire } from '@faultodds/misfire';
import { expect, test } from 'vitest';
import { render } from 'vitest-browser-svelte';
import { createCaseStore } from '../state/caseStore.svelte.ts';
import { loadKnowledge } from '../knowledge/knowledge.ts';
import { shortChance } from '../words/shortChance.ts';
import Ahead from './Ahead.svelte';
import PlanTree from './PlanTree.svelte';

const knowledge = loadKnowledge(misfire, []);

function setup(opened = '') {
  let session = startCase({ id: 'invented', title: 'Invented' });
  for (const id of ['coil-replaced', 'plug-replaced', 'injector-replaced'])
    session = recordEvent(knowledge.compiled, session, {
      kind: 'result-recorded',
      id,
      test: id,
      outcome: knowledge.model.tests.find((one) => one.id === id)!.persistsAs ?? 'misfire-stays',
    });
  if (opened !== '') session = recordEvent(knowledge.compiled, session, { kind: 'access-opened', access: opened });
  const store = createCaseStore(knowledge, session, () => {});
  return { store, screen: render(Ahead, { knowledge, store }) };
}

test('repairing now and testing first stand beside each other with the figures core gives', async () => {
  const { store, screen: pending } = setup();
  const screen = await pending;
  const { repairNow, testFirst } = repairOrTest(knowledge.compiled, store.now.belief, store.now.circumstances);
  await expect.element(screen.getByText(formatMoney(repairNow.expectedCost)).first()).toBeVisible();
  await expect.element(screen.getByText(formatMoney(testFirst!.expectedCost)).first()).toBeVisible();
});

test('what is open shows what is worth a look behind it, cheaper than on another visit', async () => {
  const screen = await setup('valve-cover-off').screen;
  await expect.element(screen.getByText(/on another visit$/).first()).toBeInTheDocument();
  const [line] = screen.getByText(/on another visit$/).elements();
  const [now = 0, later = 0] = [...line!.textContent!.matchAll(/\d[\d,.]*/g)].map(([text]) =>
    Number(text.replace(',', '')),
  );
  expect(now).toBeLessThan(later);
});

test('a plan is shown while a better one is looked for; stopped, it stays; another result takes it away', async () => {
  const { store, screen: pending } = setup();
  const screen = await pending;
  await screen.getByRole('button', { name: 'Compute the whole plan' }).click();
  await expect.element(screen.getByText(/^Costs .* on average/)).toBeVisible();
  const examined = (): number =>
    Number(/(\d+) situations? examined/.exec(screen.container.textContent ?? '')?.[1] ?? 0);
  const first = examined();
  await expect.poll(examined).toBeGreaterThan(first);
  // what it would take works beside it and has a stop of its own
  const sections = [...screen.container.querySelectorAll('section')];
  const whole = sections.find((one) => one.querySelector('h3')?.textContent === 'The whole plan')!;
  [...whole.querySelectorAll('button')].find((one) => one.textContent === 'Stop')!.click();
  await expect.poll(() => whole.textContent).toMatch(/Stopped after/);
  await expect.element(screen.getByText(/^Costs .* on average/)).toBeVisible();
  const result = { kind: 'result-recorded', id: 'dry', test: 'cranking-compression', outcome: 'normal' } as const;
  expect(store.record(result)).toBe(true);
  await expect.element(screen.getByText(/^Costs .* on average/)).not.toBeInTheDocument();
  await expect.element(screen.getByRole('button', { name: 'Compute the whole plan' })).toBeVisible();
});

test('what it would take to open something arrives one by one, with the figures core gives', async () => {
  const { store, screen: pending } = setup();
  const screen = await pending;
  const { belief, circumstances } = store.now;
  const closed = knowledge.model.access.filter(({ openMinutes }) => openMinutes.best > 0);
  const reachable = closed
    .map(({ id }) => whatWouldItTake(knowledge.compiled, belief, circumstances, { kind: 'access', access: id }))
    .filter(({ status }) => status === 'reachable');
  expect(reachable.length).toBeGreaterThan(0);
  for (const { probability, threshold = 0 } of reachable) {
    const short = `now ${shortChance(probability)}, worth it from ${shortChance(threshold)}`;
    await expect.element(screen.getByText(short).first()).toBeVisible();
  }
  await expect.element(screen.getByText(/ of \d+ answered/)).not.toBeInTheDocument();
});

test('two causes at once are worked out on request', async () => {
  const screen = await setup().screen;
  await screen.getByRole('button', { name: 'Consider pairs of causes' }).click();
  await expect.element(screen.getByText(/^Most likely: /)).toBeVisible();
  await expect.element(screen.getByRole('table', { name: /pairs of causes/ })).toBeVisible();
});

test('a plan unfolds branch by branch and says how it ends', async () => {
  const money = (amount: number) => ({ amount, currency: 'unit' });
  const nothing = { accessToOpen: [], accessToClose: [], cautions: [] };
  const end = { kind: 'repair', id: 'mend', minutes: 5, ...nothing, reached: 0.2, folded: 3 } as const;
  const mend = {
    ...end,
    price: money(50),
    expectedCost: money(60),
    branches: [{ outcome: 'cured', probability: 0.9 }],
    examined: false,
  } as const;
  // oxlint-disable-next-line unicorn/no-thenable -- the plan's own word for what follows
  const followedBy = { then: mend };
  const step = {
    kind: 'test',
    id: 'look',
    price: money(10),
    minutes: 3,
    accessToOpen: [],
    accessToClose: [],
    cautions: ['hot', 'sharp'],
    reached: 1,
    expectedCost: money(90),
    folded: 0,
    branches: [
      { outcome: 'bad', probability: 0.2, ...followedBy },
      { outcome: 'good', probability: 0.8 },
    ],
  } as const;
  const labels = {
    step: ({ id }: { id: string }) => `step ${id}`,
    outcome: (_: unknown, outcome: string) => `seen ${outcome}`,
    caution: (id: string) => `mind what is ${id}`,
  };
  const screen = await render(PlanTree, { step, labels });
  await expect.element(screen.getByText('seen good')).toBeVisible();
  await expect.element(screen.getByText('mind what is hot')).toBeVisible();
  await expect.element(screen.getByText('mind what is sharp')).toBeInTheDocument();
  await expect.element(screen.getByText('step mend')).not.toBeVisible();
  await screen.getByText('seen bad').click();
  await expect.element(screen.getByText('step mend')).toBeVisible();
  await expect.element(screen.getByText(/^Not looked into yet/)).toBeVisible();
  await expect.element(screen.getByText('fixed: done')).toBeVisible();
  await expect.element(screen.getByText('3 more steps')).toBeVisible();
});
