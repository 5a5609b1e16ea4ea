import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { render } from 'vitest-browser-svelte';
import RankShift from './RankShift.svelte';
import type { RankShiftColumn, RankShiftLine } from './rankShift.ts';

// an invented machine: nothing of it is real
const lines: readonly RankShiftLine[] = [
  { cause: 'spindle', letter: 'A', label: 'Spindle bent' },
  {
    cause: 'sprocket',
    letter: 'B',
    label: 'Sprocket worn, with a name that is long enough to need a second and a third line',
  },
  { cause: 'wedge', letter: 'C', label: 'Wedge lost' },
];

function column(id: string, chances: Record<string, number>): RankShiftColumn {
  return { id, mark: id, label: `after ${id}`, spoken: `moment ${id}`, chances, ceilingOfOthers: 0.05 };
}

const columns = [
  column('car', { spindle: 0.1, sprocket: 0.6, wedge: 0.2 }),
  column('1', { spindle: 0.3, sprocket: 0.4, wedge: 0.2 }),
  column('2', { spindle: 0.7, sprocket: 0.1, wedge: 0.1 }),
];

function props(changes: Partial<Parameters<typeof RankShift>[1]> = {}) {
  return {
    columns,
    lines,
    others: 'Grey: 5 other causes, none above 5%',
    scale: 'even' as const,
    focusedCause: 'spindle',
    focusedColumn: '2',
    chanceInWords: (probability: number) => `${Math.round(probability * 100)}%`,
    onfocuscolumn: vi.fn(),
    onfocuscause: vi.fn(),
    ...changes,
  };
}

beforeEach(() => page.viewport(1000, 800));
afterEach(() => page.viewport(414, 896));

test('every line is labelled at both ends with its letter and its probability there', async () => {
  const screen = await render(RankShift, props());
  await expect.element(screen.getByRole('button', { name: 'A 70% Spindle bent' })).toBeVisible();
  await expect.element(screen.getByText('60% B')).toBeVisible();
  await expect.element(screen.getByText('10% A')).toBeVisible();
  await expect.element(screen.getByText('Grey: 5 other causes, none above 5%')).toBeVisible();
});

test('height is probability: the higher of two values lies nearer the top', async () => {
  const { container } = await render(RankShift, props());
  const focused = [...container.querySelectorAll('circle.focused')].map((dot) => Number(dot.getAttribute('cy')));
  expect(focused).toHaveLength(3);
  expect(focused[0]).toBeGreaterThan(focused[1]!);
  expect(focused[1]).toBeGreaterThan(focused[2]!);
  const height = Number(container.querySelector('svg[width]:not([width="16"])')!.getAttribute('height'));
  expect(focused[2]).toBeCloseTo(height * 0.3, 6);
});

test('labels at the end of the lines do not overlap, however long a name is', async () => {
  const { container } = await render(RankShift, props());
  const boxes = [...container.querySelectorAll('button.end')].map((label) => label.getBoundingClientRect());
  expect(boxes).toHaveLength(3);
  boxes.sort((a, b) => a.top - b.top);
  boxes.slice(1).forEach((box, at) => expect(box.top).toBeGreaterThanOrEqual(boxes[at]!.bottom - 0.5));
});

test('a column is chosen by touch', async () => {
  const given = props();
  const screen = await render(RankShift, given);
  await screen.getByRole('button', { name: 'moment 1' }).click();
  expect(given.onfocuscolumn).toHaveBeenCalledWith('1', true);
});

test('arrows walk columns and lines, Escape leaves, and the point is said once', async () => {
  const given = props();
  const screen = await render(RankShift, given);
  const here = screen.getByRole('button', { name: 'moment 2' });
  (here.element() as HTMLElement).focus();
  await userEvent.keyboard('{ArrowLeft}');
  expect(given.onfocuscolumn).toHaveBeenCalledWith('1', false);
  await userEvent.keyboard('{ArrowDown}');
  expect(given.onfocuscause).toHaveBeenCalledWith('sprocket');
  await userEvent.keyboard('{Escape}');
  expect(given.onfocuscolumn).toHaveBeenLastCalledWith(null, true);
});

test('all columns share one tab stop', async () => {
  const { container } = await render(RankShift, props());
  const stops = [...container.querySelectorAll('[role="toolbar"] button')].filter(
    (button) => (button as HTMLElement).tabIndex === 0,
  );
  expect(stops).toHaveLength(1);
});

test('lines differ by more than colour: each has a dash or a width of its own', async () => {
  const { container } = await render(RankShift, props());
  const looks = [...container.querySelectorAll('path.line')].map(
    (line) => `${line.getAttribute('stroke-dasharray')} ${getComputedStyle(line).strokeWidth}`,
  );
  expect(new Set(looks).size).toBe(3);
});

test('on a phone the newest columns are shown, the earlier ones a tap away, and names stand below', async () => {
  await page.viewport(360, 740);
  const many = Array.from({ length: 9 }, (_, at) => column(String(at), { spindle: 0.3, sprocket: 0.3, wedge: 0.3 }));
  const screen = await render(RankShift, props({ columns: many, focusedColumn: '8' }));
  await expect.element(screen.getByRole('button', { name: 'moment 8' })).toBeVisible();
  await expect.element(screen.getByRole('button', { name: 'moment 0' })).not.toBeInTheDocument();
  await expect.element(screen.getByRole('button', { name: 'A Spindle bent 30%' })).toBeVisible();
  await screen.getByRole('button', { name: '5 earlier' }).click();
  await screen.getByRole('button', { name: '2 earlier' }).click();
  await expect.element(screen.getByRole('button', { name: 'moment 0' })).toBeVisible();
  const narrow = [...screen.container.querySelectorAll('[role="toolbar"] button')].map(
    (button) => button.getBoundingClientRect().width,
  );
  for (const width of narrow) expect(width).toBeGreaterThanOrEqual(44);
});
