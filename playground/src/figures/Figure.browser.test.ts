import { createRawSnippet } from 'svelte';
import { expect, test } from 'vitest';
import { render } from 'vitest-browser-svelte';
import Figure from './Figure.svelte';

const picture = createRawSnippet(() => ({ render: () => '<p>the picture</p>' }));
const props = {
  title: 'The sprocket leads with 60%',
  summary: 'One sentence about it.',
  table: {
    caption: 'Chances',
    heads: ['Cause', 'now'],
    rows: [
      ['Sprocket', '60%'],
      ['Spindle', '40%'],
    ],
  },
  children: picture,
};

test('a figure states its finding, shows its picture, says one sentence, and is named by its title', async () => {
  const screen = await render(Figure, props);
  await expect.element(screen.getByRole('heading', { name: 'The sprocket leads with 60%' })).toBeVisible();
  await expect.element(screen.getByRole('figure', { name: 'The sprocket leads with 60%' })).toBeVisible();
  await expect.element(screen.getByText('the picture')).toBeVisible();
  await expect.element(screen.getByRole('figure')).toHaveAccessibleDescription('One sentence about it.');
});

test('the same data is there as a table, one tap away', async () => {
  const screen = await render(Figure, props);
  const details = screen.container.querySelector('details')!;
  expect(details.open).toBe(false);
  await screen.getByText('Show as a table').click();
  expect(details.open).toBe(true);
  const table = screen.getByRole('table', { name: 'Chances' });
  await expect.element(table).toBeVisible();
  await expect.element(table.getByRole('rowheader', { name: 'Spindle' })).toBeVisible();
  await expect.element(table.getByRole('cell', { name: '40%' })).toBeVisible();
});
