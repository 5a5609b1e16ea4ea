import type { Model } from '../model/model.ts';

/** `open` without one access operation and without everything that requires it, directly or not. */
export function closeWithDependents(model: Model, open: readonly string[], access: string): readonly string[] {
  const standsOn = (id: string): boolean =>
    id === access || (model.access.find((one) => one.id === id)?.requires.some(standsOn) ?? false);
  const left = open.filter((id) => !standsOn(id));
  return left.length === open.length ? open : left;
}
