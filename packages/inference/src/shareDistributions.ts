import { solveComponent } from './solveComponent.ts';
import { distributionOf, type SweepComponent } from './sweepComponent.ts';

/** Derives distributions over unions of what is wanted from a component, where the union is much smaller than the component itself:
 * the wanted ones are then summed from the unions, and the large tables are walked once per union instead of once per question. */
export function shareDistributions(
  component: SweepComponent,
  wanted: readonly (readonly number[])[],
  cardinalities: Int32Array,
): void {
  if (component.variables.length < 3 || wanted.length < 2) return;
  const { joint } = solveComponent(component, cardinalities);
  const whole = (joint instanceof Float64Array ? joint : joint.tables).length / component.firstOf.length;
  const sizeOf = (variables: readonly number[]): number =>
    variables.reduce((size, variable) => size * cardinalities[variable]!, 1);
  const missing = wanted.filter(
    (group) => !component.derived.some(({ variables }) => group.every((variable) => variables.includes(variable))),
  );
  missing.sort((a, b) => sizeOf(b) - sizeOf(a));
  // in a tree only what some clique covers: a union across cliques can be dearer than its parts
  const scopes =
    joint instanceof Float64Array
      ? [component.variables]
      : joint.at.map((_, c) =>
          [...joint.tree.members.subarray(joint.tree.start[c]!, joint.tree.start[c + 1]!)].map(
            (k) => joint.variables[k]!,
          ),
        );
  const fits = (group: readonly number[]): boolean =>
    sizeOf(group) * 8 <= whole && scopes.some((scope) => group.every((variable) => scope.includes(variable)));
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
