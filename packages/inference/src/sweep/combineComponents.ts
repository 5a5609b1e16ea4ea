import { oneClass, refineClasses, type RootClasses } from './rootClasses.ts';
import type { SweepComponent } from './sweepComponent.ts';
import type { SweepFactor } from './sweepFactor.ts';

/** Joins components by a factor over some of their variables. A factor may bring one new variable: that of a family.
 * Nothing is multiplied yet. @param isFamily whether the factor is P(variable | parents) rather than a likelihood. */
export function combineComponents(
  components: readonly SweepComponent[],
  factor: SweepFactor,
  isFamily: boolean,
): SweepComponent {
  const variables = components.flatMap((component) => component.variables);
  for (const variable of factor.variables) if (!variables.includes(variable)) variables.push(variable);
  let classes: RootClasses = oneClass(factor.classOf.length);
  for (const component of components) classes = refineClasses(classes, component);
  const { classOf, firstOf } = refineClasses(classes, factor);
  return {
    variables,
    classOf,
    firstOf,
    parts: [...components.flatMap((component) => component.parts), factor],
    from: components,
    by: factor,
    isObserved: !isFamily || components.some((component) => component.isObserved),
    solution: null,
    derived: [],
  };
}
