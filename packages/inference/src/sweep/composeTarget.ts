import { addAlong } from '../loops/addAlong.ts';
import { nestOf } from '../loops/loopNest.ts';
import { multiplyAlong } from '../loops/multiplyAlong.ts';
import { refineClasses } from './rootClasses.ts';
import type { CompiledSweep } from './sweep.ts';
import type { TargetRecord } from './targetRecord.ts';

/** Composed tables of more entries than this are not made: the parent's family is taken into the state instead. */
const largestTable = 1 << 17;

/** The target with parents about which nothing is known summed out of its table: P(child | the others, their parents). The table then
 * speaks of variables that what was observed has not tied together, and needs no joint distribution of theirs. Made once.
 * @param isKnown 1 for variables that have a component. @returns null when the table would be too large. */
export function composeTarget(
  sweep: CompiledSweep,
  target: TargetRecord,
  isKnown: (variable: number) => boolean,
): TargetRecord | null {
  const open = target.variables.filter((variable) => !isKnown(variable));
  if (open.length === 0) return target;
  // children before parents: a family brings its parents along
  const rank = sweep.network.topologicalOrder;
  const barren = open.reduce((last, variable) => (rank.indexOf(variable) > rank.indexOf(last) ? variable : last));
  const known = target.composed.get(barren);
  const made = known === undefined ? compose(sweep, target, barren) : known;
  target.composed.set(barren, made);
  return made === null ? null : composeTarget(sweep, made, isKnown);
}

function compose(sweep: CompiledSweep, target: TargetRecord, barren: number): TargetRecord | null {
  const family = sweep.families[barren]!;
  const variables = target.variables.filter((variable) => variable !== barren);
  for (const variable of family.variables)
    if (variable !== barren && !variables.includes(variable)) variables.push(variable);
  const { states } = target;
  const child = sweep.cardinalities.length;
  const sizes = [...sweep.cardinalities, states];
  const size = variables.reduce((product, variable) => product * sizes[variable]!, states);
  const { classOf, firstOf } = refineClasses(target, family);
  if (size * firstOf.length > largestTable) return null;
  const all = [...variables, barren, child];
  const product = new Float64Array(size * sizes[barren]!);
  const blocks = new Float64Array(size * firstOf.length);
  const byTarget = nestOf(all, [...target.variables, child], sizes);
  const byFamily = nestOf(all, family.variables, sizes);
  const toBlock = nestOf(all, [...variables, child], sizes);
  firstOf.forEach((first, c) => {
    product.fill(1);
    const from = target.classOf[first]! * target.size;
    multiplyAlong(product, 0, product, 0, target.blocks, from, byTarget.n, byTarget.a, byTarget.b, 0, byTarget.count);
    const row = family.classOf[first]! * family.size;
    multiplyAlong(product, 0, product, 0, family.blocks, row, byFamily.n, byFamily.a, byFamily.b, 0, byFamily.count);
    addAlong(product, 0, blocks, c * size, toBlock.n, toBlock.a, toBlock.b, 0, toBlock.count);
  });
  const isParent = new Uint8Array(sweep.cardinalities.length);
  for (const variable of variables) isParent[variable] = 1;
  return {
    ...target,
    variables,
    classOf,
    firstOf,
    blocks,
    size,
    isParent,
    arrangements: new Map(),
    composed: new Map(),
  };
}
