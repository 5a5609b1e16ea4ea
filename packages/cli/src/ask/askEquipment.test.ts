import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { work } from '../../fixtures/scriptPrompter.ts';
import { loadModel } from '../read/loadModel.ts';

const folder = mkdtempSync(join(tmpdir(), 'faultodds-equipment-'));
afterAll(() => rmSync(folder, { recursive: true }));
const { model } = await loadModel();
const common = model.equipment.filter((one) => one.common).map(({ id }) => id);
const isAboutEquipment = (question: string): boolean => question.startsWith('Which equipment');
const eventsIn = (path: string): object[] => JSON.parse(readFileSync(path, 'utf8')).events;

test('a new case asks once what is at hand, with what most workshops have chosen already, and remembers it', async () => {
  const path = join(folder, 'new.json');
  const { out, questions, preselected } = await work(
    ['', new Set(['scan-tool', 'hand-tools']), '#enough', 'leave'],
    '--keep',
    path,
  );
  expect(questions.filter(isAboutEquipment)).toHaveLength(1);
  expect(preselected.get(questions.find(isAboutEquipment)!)).toEqual(common);
  expect(eventsIn(path)).toEqual([{ kind: 'equipment-set', equipment: ['scan-tool', 'hand-tools'] }]);
  expect(out).not.toContain('Leak-down');

  const again = await work(['leave'], path);
  expect(again.questions).toEqual(['What now?']);
});

test('left without an answer everything counts as at hand; the menu asks again and shows what is chosen', async () => {
  const path = join(folder, 'later.json');
  const { preselected } = await work([
    '',
    '#enough',
    'equipment',
    new Set(['lamp']),
    'equipment',
    new Set(['lamp']),
    'save',
    path,
    'leave',
  ]);
  expect([...preselected].find(([question]) => isAboutEquipment(question))?.[1]).toEqual(['lamp']);
  expect(eventsIn(path)).toEqual([{ kind: 'equipment-set', equipment: ['lamp'] }]);
});

test('given with the command it is not asked for, and not written into the case', async () => {
  const path = join(folder, 'given.json');
  const { preselected } = await work(
    ['', '#enough', 'intake', 'onset', 'sudden', 'leave'],
    '--equipment',
    'lamp,hand-tools',
    '--keep',
    path,
  );
  expect([...preselected.keys()].filter(isAboutEquipment)).toEqual([]);
  expect(eventsIn(path)).toEqual([{ kind: 'context-set', feature: 'onset', value: 'sudden' }]);
});
