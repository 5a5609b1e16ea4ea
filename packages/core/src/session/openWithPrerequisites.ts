import type { Access, Model } from '../model/model.ts';

/** `open` with one more access operation and everything it requires, prerequisites first.
 * Operations that cost neither time nor parts ("no dismantling") are nothing to open and are left out. */
export function openWithPrerequisites(model: Model, open: readonly string[], access: string): readonly string[] {
  const result = [...open];
  const visit = (id: string): void => {
    if (result.includes(id)) return;
    const operation = model.access.find((one) => one.id === id);
    if (operation === undefined || costsNothing(operation)) return;
    operation.requires.forEach(visit);
    result.push(id);
  };
  visit(access);
  return result.length === open.length ? open : result;
}

function costsNothing(access: Access): boolean {
  return access.openMinutes.best === 0 && access.closeMinutes.best === 0 && access.parts.best === 0;
}
