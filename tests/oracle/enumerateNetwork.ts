import type { NetworkDefinition } from '@faultodds/inference';

/** Unnormalised joint over all variables, last variable fastest, by plain enumeration. Shares no code with the kernel.
 * @param weights extra non-negative tables, each over named variables, last fastest. */
export function enumerateNetwork(
  definition: NetworkDefinition,
  weights: readonly { variables: readonly string[]; values: ArrayLike<number> }[] = [],
): Float64Array {
  const { variables } = definition;
  const at = new Map(variables.map((variable, index) => [variable.name, index]));
  const joint = new Float64Array(variables.reduce((size, variable) => size * variable.states.length, 1));
  const states = variables.map(() => 0);
  const lookUp = (names: readonly string[], table: ArrayLike<number>): number => {
    let index = 0;
    for (const name of names) index = index * variables[at.get(name)!]!.states.length + states[at.get(name)!]!;
    return table[index]!;
  };
  for (let entry = 0; entry < joint.length; entry += 1) {
    let rest = entry;
    for (let k = variables.length - 1; k >= 0; k -= 1) {
      states[k] = rest % variables[k]!.states.length;
      rest = Math.floor(rest / variables[k]!.states.length);
    }
    let product = 1;
    for (const variable of variables) product *= lookUp([...(variable.parents ?? []), variable.name], variable.table);
    for (const weight of weights) product *= lookUp(weight.variables, weight.values);
    joint[entry] = product;
  }
  return joint;
}

/** Sums a table made by `enumerateNetwork` down to the named variables, in that order, last fastest. */
export function sumTo(definition: NetworkDefinition, joint: Float64Array, names: readonly string[]): Float64Array {
  const { variables } = definition;
  const kept = names.map((name) => variables.findIndex((variable) => variable.name === name));
  const result = new Float64Array(kept.reduce((size, k) => size * variables[k]!.states.length, 1));
  for (let entry = 0; entry < joint.length; entry += 1) {
    let rest = entry;
    const states = variables.map(() => 0);
    for (let k = variables.length - 1; k >= 0; k -= 1) {
      states[k] = rest % variables[k]!.states.length;
      rest = Math.floor(rest / variables[k]!.states.length);
    }
    let index = 0;
    for (const k of kept) index = index * variables[k]!.states.length + states[k]!;
    result[index]! += joint[entry]!;
  }
  return result;
}
