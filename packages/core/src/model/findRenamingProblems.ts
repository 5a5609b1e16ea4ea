import { problemFor } from '../validation/problemFor.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import { findCycle } from './findCycle.ts';
import { findPartProblems } from './findPartProblems.ts';
import type { Model } from './model.ts';
import { makeNamesToday } from './makeNamesToday.ts';
import { keyOfName, makeNextNames } from './makeNextNames.ts';
import type { PartName, Renaming } from './renaming.ts';

/** Earlier names that are in use again, given twice, lead in a circle or to a part the model does not have. */
export function findRenamingProblems(model: Model): Problem[] {
  const { renamed = [] } = model;
  const circle = findCycle(stepsFrom(renamed));
  if (circle !== undefined) {
    const at = renamed.findIndex(({ was }) => circle.includes(keyOfName(was)));
    return [problemFor('renamed-circle', `/renamed/${Math.max(0, at)}/is`, { circle })];
  }
  const today = makeNamesToday(model);
  const seen = new Set<string>();
  return renamed.flatMap(({ was }, at): Problem[] => {
    const path = `/renamed/${at}`;
    const name = keyOfName(was);
    if (seen.has(name)) return [problemFor('renamed-twice', `${path}/was`, { name })];
    seen.add(name);
    if (findPartProblems(model, was, '').length === 0) return [problemFor('renamed-in-use', `${path}/was`, { name })];
    return today(was).flatMap((end) => findPartProblems(model, end, `${path}/is`));
  });
}

/** Every name that renamings lead to, with the names one step further. */
function stepsFrom(renamed: readonly Renaming[]): Map<string, readonly string[]> {
  const next = makeNextNames(renamed);
  const steps = new Map<string, readonly string[]>();
  const waiting: PartName[] = renamed.map(({ was }) => was);
  for (let name = waiting.pop(); name !== undefined; name = waiting.pop()) {
    if (steps.has(keyOfName(name))) continue;
    const names = next(name) ?? [];
    steps.set(keyOfName(name), names.map(keyOfName));
    waiting.push(...names);
  }
  return steps;
}
