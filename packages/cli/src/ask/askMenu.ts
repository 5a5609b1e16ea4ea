import { canRedo, canUndo, caseState, type Model, type Session } from '@faultodds/core';
import { isFilledByCodes } from '@faultodds/core/codes';
import { labelOf } from '../print/labelOf.ts';
import type { CaseReview } from '../print/printCase.ts';
import type { Choice, Prompter } from '../terminal/prompter.ts';

/** What can be done with a case from the menu. */
export type MenuEntry =
  | 'best-test'
  | 'best-repair'
  | 'test'
  | 'repair'
  | 'codes'
  | 'monitors'
  | 'intake'
  | 'access'
  | 'equipment'
  | 'steps'
  | 'why'
  | 'retract'
  | 'undo'
  | 'redo'
  | 'save'
  | 'leave';

function reads({ tests }: Model, how: (test: Model['tests'][number]) => boolean): boolean {
  return tests.some(how);
}

/** Asks what to do with the case; only what is possible now is offered. No answer means leaving. */
export async function askMenu(
  prompter: Prompter,
  model: Model,
  session: Session,
  { advice: { best } }: CaseReview,
): Promise<MenuEntry> {
  const some = caseState(session).observations.length > 0;
  const entries: readonly (readonly [MenuEntry, string, boolean])[] = [
    [
      'best-test',
      `I have done this: ${best.kind === 'test' ? labelOf(model.tests, best.test) : ''}`,
      best.kind === 'test',
    ],
    [
      'best-repair',
      `I have done this: ${best.kind === 'repair' ? labelOf(model.repairs, best.repair) : ''}`,
      best.kind === 'repair',
    ],
    ['test', 'Another test was done', true],
    ['repair', 'A repair was tried', true],
    ['codes', 'Trouble codes were read', reads(model, ({ id }) => isFilledByCodes(id))],
    [
      'monitors',
      'Misfire monitors were read as raw bytes',
      reads(model, ({ readings = [] }) => readings.some(({ kind }) => kind === 'counts')),
    ],
    ['steps', 'Other possible steps and their prices', true],
    ['why', 'Why the causes are ranked this way', true],
    ['intake', 'Intake facts', true],
    ['access', 'Open or close something', true],
    ['equipment', 'Equipment at hand', model.equipment.length > 0],
    ['retract', 'Take a result back', some],
    ['undo', 'Undo', canUndo(session)],
    ['redo', 'Redo', canRedo(session)],
    ['save', 'Save the case', session.content.events.length > 0],
    ['leave', 'Leave', true],
  ];
  const choices: Choice[] = entries.flatMap(([value, label, isPossible]) => (isPossible ? [{ value, label }] : []));
  const chosen = await prompter.choose('What now?', choices);
  return entries.find(([value]) => value === chosen)?.[0] ?? 'leave';
}
