import type { Model, PlanStep } from '@faultodds/core';

/** Everything to be careful of in a plan as it is written out, what it opens included, each once, in the order of the steps. */
export function cautionsOfPlan(model: Model, root: PlanStep): readonly string[] {
  const found = new Set<string>();
  const addAccess = (id: string): void => {
    const access = model.access.find((one) => one.id === id);
    for (const below of access?.requires ?? []) addAccess(below);
    for (const caution of access?.cautions ?? []) found.add(caution);
  };
  const walk = ({ kind, id, branches }: PlanStep): void => {
    const test = kind === 'test' ? model.tests.find((one) => one.id === id) : undefined;
    const repair = kind === 'test' ? undefined : model.repairs.find((one) => one.id === id);
    for (const access of test === undefined ? (repair?.access ?? []) : [test.access]) addAccess(access);
    for (const caution of (test ?? repair)?.cautions ?? []) found.add(caution);
    for (const { then } of branches) if (then !== undefined) walk(then);
  };
  walk(root);
  return [...found];
}
