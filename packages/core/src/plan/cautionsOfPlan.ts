import type { PlanStep } from './plan.ts';

/** Ids of all cautions of the steps of a plan that are written out, each once, in the order of the steps. The position in this list, from
 * 1, is its number in text and drawings.
 * @example cautionsOfPlan({ ...plan.root, cautions: ['road-test', 'hot-parts'] }) // ['road-test', 'hot-parts'] */
export function cautionsOfPlan(root: PlanStep): readonly string[] {
  const found = new Set<string>();
  const walk = ({ cautions, branches }: PlanStep): void => {
    for (const id of cautions) found.add(id);
    for (const { then } of branches) if (then !== undefined) walk(then);
  };
  walk(root);
  return [...found];
}
