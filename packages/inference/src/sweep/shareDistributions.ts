import { distributionOf } from './distributionOf.ts';
import { solveComponent } from './solveComponent.ts';
import type { SweepComponent } from './sweepComponent.ts';

/** Largest union that a component is eliminated to when it is not multiplied out. */
const unionLimit = 1024;

/** Derives distributions over unions of what is wanted from a component, where the union is much smaller than the component itself:
 * the wanted ones are then summed from the unions, and the large tables are walked once per union instead of once per question. */
export function shareDistributions(
  component: SweepComponent,
  wanted: readonly (readonly number[])[],
  cardinalities: Int32Array,
): void {
  if (component.variables.length < 3 || wanted.length < 2) return;
  const { joint } = solveComponent(component, cardinalities);
  const sizeOf = (variables: readonly number[]): number =>
    variables.reduce((size, variable) => size * cardinalities[variable]!, 1);
  const limit = Math.min(sizeOf(component.variables) / 8, joint === null ? unionLimit : Infinity);
  const missing = wanted.filter(
    (group) => !component.derived.some(({ variables }) => group.every((variable) => variables.includes(variable))),
  );
  missing.sort((a, b) => sizeOf(b) - sizeOf(a));
  const fits = (group: readonly number[]): boolean => sizeOf(group) <= limit;
  const unions: number[][] = [];
  for (const group of missing) {
    if (!fits(group)) continue;
    let best: number[] | null = null;
    let bestAt = -1;
    unions.forEach((union, k) => {
      const both = [...union, ...group.filter((variable) => !union.includes(variable))];
      if (fits(both) && (best === null || sizeOf(both) < sizeOf(best))) {
        best = both;
        bestAt = k;
      }
    });
    if (best === null) unions.push([...group]);
    else unions[bestAt] = best;
  }
  for (const union of unions) {
    // in the component's own order, so that sums run over contiguous stretches
    distributionOf(
      component,
      component.variables.filter((variable) => union.includes(variable)),
      cardinalities,
    );
  }
}
