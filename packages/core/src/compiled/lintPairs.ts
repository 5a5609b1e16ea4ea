import type { Model } from '../model/model.ts';
import type { LintFinding } from './lintFinding.ts';

/** Pairs of tests that are said to be `modelled`, and nothing of the model can account for what they share: no mechanism (those theirs
 * depend on included) that both read, no cause that both name. Then each counts as if the other said nothing of it. */
export function lintPairs(model: Model): readonly LintFinding[] {
  const rootsOf = new Map(model.tests.map((test) => [test.id, whatIsRead(model, test)]));
  return model.dependentPairs.flatMap(({ a, b, kind }, at): LintFinding[] => {
    const [first, second] = [rootsOf.get(a), rootsOf.get(b)];
    if (kind !== 'modelled' || first === undefined || second === undefined) return [];
    if ([...first].some((part) => second.has(part))) return [];
    const message = `'${a}' and '${b}' are said to be modelled, and read nothing in common`;
    return [{ code: 'pair-not-modelled', path: `/dependentPairs/${at}/kind`, message }];
  });
}

/** Mechanisms that a test reads and all that these depend on; causes it names, as `cause:<id>`. */
function whatIsRead(model: Model, { rows, readings = [] }: Model['tests'][number]): ReadonlySet<string> {
  const read = new Set<string>();
  const visit = (id: string): void => {
    if (read.has(id)) return;
    read.add(id);
    model.mechanisms.find((mechanism) => mechanism.id === id)?.parents?.forEach(visit);
  };
  const conditions = [...rows, ...readings.flatMap((one) => (one.kind === 'measured' ? one.rows : []))];
  for (const { when } of conditions) {
    for (const [parent, states] of Object.entries(when)) {
      if (parent === 'cause') for (const state of states) read.add(`cause:${state}`);
      else visit(parent);
    }
  }
  return read;
}
