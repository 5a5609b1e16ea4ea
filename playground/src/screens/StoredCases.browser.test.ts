import { misfire } from '@faultodds/misfire';
import { expect, test, vi } from 'vitest';
import { render } from 'vitest-browser-svelte';
import type { CaseSummary, Device } from '../device/device.ts';
import { loadKnowledge } from '../knowledge/knowledge.ts';
import { createCaseLibrary } from '../state/caseLibrary.svelte.ts';
import StoredCases from './StoredCases.svelte';

const knowledge = loadKnowledge(misfire, []);
const kept = Array.from({ length: 1000 }, (_, at): CaseSummary => ({
  id: `case-${at}`,
  title: `Invented ${at}`,
  changed: at * 60_000,
}));

test('a thousand kept cases: forty rows are drawn, the latest first, any is found by its name, and no case is opened', async () => {
  const find = vi.fn<Device['find']>();
  const device = { list: () => Promise.resolve(kept), find } as Partial<Device> as Device;
  const library = createCaseLibrary(knowledge, device, () => 'new');
  await library.read();
  const doNothing = (): void => undefined;
  const screen = await render(StoredCases, {
    kept: library.all,
    current: '',
    deleted: null,
    causeLabel: knowledge.causeLabel,
    onopen: doNothing,
    onrename: doNothing,
    onduplicate: doNothing,
    onremove: doNothing,
    onputback: doNothing,
  });
  const rows = () => screen.getByRole('listitem').elements();
  expect(rows()).toHaveLength(40);
  expect(rows()[0]!.textContent).toContain('Invented 999');
  await screen.getByRole('button', { name: /^Show 40 more/ }).click();
  await expect.poll(() => rows().length).toBe(80);
  await screen.getByRole('searchbox').fill('Invented 77');
  // 77 and 770 to 779
  await expect.poll(() => rows().length).toBe(11);
  expect(find).not.toHaveBeenCalled();
});
