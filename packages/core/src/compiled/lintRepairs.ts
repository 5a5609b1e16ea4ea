import type { Model, Repair } from '../model/model.ts';
import type { Quantity } from '../model/quantity.ts';
import type { CompiledModel } from './compiledModel.ts';
import type { LintFinding } from './lintFinding.ts';

/** Repairs that are said to take fewer minutes than opening and closing what they need, with all that it requires, and the model's least
 * of work; or fewer parts than the gaskets of it. Looked at as the numbers stand, and under every intake answer that changes prices
 * (unless it rules out all that the repair cures). */
export function lintRepairs(compiled: CompiledModel): readonly LintFinding[] {
  const { model } = compiled;
  const answers = model.context.flatMap(({ id, values }) =>
    values.flatMap(({ id: value, costs, multipliers }): Setting[] =>
      costs === undefined ? [] : [{ name: ` with '${id}: ${value}'`, costs, multipliers }],
    ),
  );
  const asItStands: Setting = { name: '', costs: {}, multipliers: {} };
  return model.repairs.flatMap((repair, at): LintFinding[] => {
    const found = [asItStands, ...answers].flatMap(({ name, costs, multipliers }): LintFinding[] => {
      const exists = Object.keys(repair.cures).some((cause) => multipliers[cause]?.best !== 0);
      return exists ? belowAccess(compiled, repair, at, name, (id) => costs[id]?.best ?? 1) : [];
    });
    // what is wrong as it stands is wrong under every answer
    return found.filter(({ path }, place) => found.findIndex((one) => one.path === path) === place);
  });
}

/** Under which answer prices are looked at. */
interface Setting {
  readonly name: string;
  readonly costs: Readonly<Record<string, Quantity>>;
  readonly multipliers: Readonly<Record<string, Quantity>>;
}

function belowAccess(
  { model, accessClosure }: CompiledModel,
  { id, minutes, parts, access }: Repair,
  at: number,
  when: string,
  dearer: (id: string) => number,
): LintFinding[] {
  const bits = model.access.reduce(
    (all, one, index) => (access.includes(one.id) ? all | accessClosure[index]! : all),
    0,
  );
  const opened = model.access.filter((_, index) => (bits & (1 << index)) !== 0);
  const sumOf = (of: (access: Model['access'][number]) => number): number =>
    opened.reduce((sum, one) => sum + of(one) * dearer(one.id), 0);
  const opening = sumOf(({ openMinutes, closeMinutes }) => openMinutes.best + closeMinutes.best);
  const least = model.leastRepairMinutes.best;
  const gaskets = sumOf((one) => one.parts.best);
  const names = access.map((one) => `'${one}'`).join(' and ');

  const finding = (number: 'minutes' | 'parts', says: string): LintFinding => ({
    code: 'repair-below-access',
    path: `/repairs/${at}/${number}`,
    message: `'${id}' ${says}`,
  });
  const [whole, bought] = [minutes.best * dearer(id), parts.best * dearer(id)];
  const tooShort = `takes ${figure(whole)} minutes${when}, but opening and closing ${names} take ${figure(opening)}, and the work at least ${figure(least)}`;
  const tooCheap = `needs parts for ${figure(bought)}${when}, but the gaskets of ${names} cost ${figure(gaskets)}`;
  return [
    ...(opening > 0 && whole + SLACK < opening + least ? [finding('minutes', tooShort)] : []),
    ...(bought + SLACK < gaskets ? [finding('parts', tooCheap)] : []),
  ];
}

/** Sums of decimals are off by far less. */
const SLACK = 1e-6;

function figure(value: number): string {
  return String(Number(value.toFixed(1)));
}
