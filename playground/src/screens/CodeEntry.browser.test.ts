import { misfire } from '@faultodds/misfire';
import { expect, test, vi } from 'vitest';
import { render } from 'vitest-browser-svelte';
import { loadKnowledge } from '../knowledge/knowledge.ts';
import CodeEntry from './CodeEntry.svelte';
import DegreeEntry from './DegreeEntry.svelte';
import MonitorEntry from './MonitorEntry.svelte';

const knowledge = loadKnowledge(misfire, []);
const engine = { cylinders: 4, suspect: 3, bank: 0 as const };

test('codes become results for the suspect; what is no code and what says nothing are named', async () => {
  const onresults = vi.fn();
  const screen = await render(CodeEntry, { knowledge, engine, onRecord: new Set<string>(), onresults });
  await screen.getByLabelText(/^Trouble codes/).fill('P0303, p0353 pending P0420 P13O5');
  await expect.element(screen.getByText(/P13O5.*did you mean P1305/)).toBeVisible();
  await expect.element(screen.getByText(/^P0420 .*says nothing/)).toBeVisible();
  await screen.getByRole('button', { name: 'Record these 2 results' }).click();
  expect(onresults).toHaveBeenCalledWith([
    { test: 'read-misfire-codes', outcome: 'one-cylinder-only', note: 'P0303' },
    { test: 'read-circuit-codes', outcome: 'coil-circuit', note: 'P0353 pending' },
  ]);
});

test('a test on record already is not recorded again', async () => {
  const onRecord = new Set(['read-misfire-codes']);
  const screen = await render(CodeEntry, { knowledge, engine, onRecord, onresults: vi.fn() });
  await screen.getByLabelText(/^Trouble codes/).fill('P0303');
  await expect.element(screen.getByText('already recorded')).toBeVisible();
  await expect.element(screen.getByRole('button', { name: /^Record/ })).not.toBeInTheDocument();
});

test('raw counts of the control module are decoded per cylinder, and what cannot be read is pointed out', async () => {
  const onrecord = vi.fn();
  const screen = await render(MonitorEntry, { knowledge, test: 'misfire-counters', engine, onrecord });
  const hex = screen.getByLabelText(/hexadecimal/);
  await hex.fill('46 A2 0C 24 00 02 00 00 FF FF A4 0C 24 01 2C 00 00 FF FF');
  await expect.element(screen.getByText('Cylinder 3: 300')).toBeVisible();
  await screen.getByRole('button', { name: 'Record these numbers' }).click();
  expect(onrecord).toHaveBeenCalledWith({ reading: expect.objectContaining({ suspect: 3, counts: { 1: 2, 3: 300 } }) });
  await hex.fill('46 A2 0C 24 00 XX');
  await expect.element(screen.getByText(/found 'X'/)).toBeVisible();
  await expect.element(screen.getByRole('button', { name: 'Record these numbers' })).not.toBeInTheDocument();
});

test('"not sure" becomes relative likelihoods', async () => {
  const onrecord = vi.fn();
  const asked = knowledge.test('cranking-compression')!;
  const screen = await render(DegreeEntry, { test: asked, onrecord });
  await screen.getByLabelText('that it was').selectOptions('Compression marginal');
  await screen.getByLabelText('rather than').selectOptions('Compression low');
  await screen.getByRole('button', { name: 'Record this' }).click();
  const id = (label: string): string => asked.outcomes.find((one) => one.label === label)!.id;
  expect(onrecord).toHaveBeenCalledWith({
    likelihood: { [id('Compression marginal')]: 3, [id('Compression low')]: 1 },
  });
});
