import type { CompiledModel } from '../compiled/compiledModel.ts';
import { closedForTest } from '../compiled/closedForTest.ts';
import { openWithPrerequisites } from './openWithPrerequisites.ts';

/** What is open after a test: what it opens, with all that requires, less what has to be closed for it. */
export function openAfterResult(
  { model, tests, structure }: CompiledModel,
  open: readonly string[],
  test: string,
): readonly string[] {
  const compiled = tests.get(test);
  if (compiled === undefined) return open;
  return without(
    model,
    openWithPrerequisites(model, open, compiled.test.access),
    structure.closedForTest[compiled.index]!.closes,
  );
}

/** What is open after a drive: nothing that the engine cannot be driven with. */
export function openAfterDrive({ model, accessClosure }: CompiledModel, open: readonly string[]): readonly string[] {
  return without(model, open, closedForTest(model, accessClosure, { engine: 'driven' }, 0).closes);
}

function without({ access }: CompiledModel['model'], open: readonly string[], closed: number): readonly string[] {
  const left = open.filter((id) => (closed & (1 << access.findIndex((one) => one.id === id))) === 0);
  return left.length === open.length ? open : left;
}
