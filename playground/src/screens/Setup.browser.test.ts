import { expect, test, vi } from 'vitest';
import { render } from 'vitest-browser-svelte';
import Setup from './Setup.svelte';

function setup() {
  const given = {
    prices: { currency: 'EUR', labourPerHour: 90, partsFactor: 1 },
    needlessDefault: '€300',
    equipment: [],
    theme: 'light' as const,
    ontheme: vi.fn(),
    language: 'en' as const,
    onlanguage: vi.fn(),
    onprices: vi.fn(),
    onequipment: vi.fn(),
  };
  return { given, screen: render(Setup, given) };
}

test('what a needless opening counts for: unsaid it is the judgement that stands beside it, said it goes with the prices', async () => {
  const { given, screen: pending } = setup();
  const screen = await pending;
  await expect.element(screen.getByText(/Empty: €300, a judgement/)).toBeVisible();
  const field = screen.getByLabelText('Needless opening');
  const apply = screen.getByRole('button', { name: 'Use these prices' });
  await apply.click();
  expect(given.onprices).toHaveBeenLastCalledWith(given.prices);
  await field.fill('0');
  await apply.click();
  expect(given.onprices).toHaveBeenLastCalledWith({ ...given.prices, needlessOpening: 0 });
});
