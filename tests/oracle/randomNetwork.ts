import type { VariableDefinition } from '@faultodds/inference';

/** Seeded generator of numbers in [0, 1) (mulberry32, a public-domain 32-bit mixer). */
export function createRandom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** A random network: up to `maxParents` parents each, 1 to 4 states; about one entry in `1 / zeros` is exactly zero. */
export function randomNetwork(
  random: () => number,
  count: number,
  maxParents = 3,
  zeros = 0,
): { variables: VariableDefinition[] } {
  const variables: VariableDefinition[] = [];
  for (let index = 0; index < count; index += 1) {
    const parents: string[] = [];
    const wanted = Math.floor(random() * (maxParents + 1));
    for (let k = 0; k < wanted && index > 0; k += 1) {
      const name = variables[Math.floor(random() * index)]!.name;
      if (!parents.includes(name)) parents.push(name);
    }
    const own = random() < 0.05 ? 1 : 2 + Math.floor(random() * 3);
    const rows = parents.reduce((size, name) => size * variables.find((v) => v.name === name)!.states.length, 1);
    variables.push({
      name: `v${index}`,
      states: Array.from({ length: own }, (_, s) => `s${s}`),
      parents,
      table: randomRows(random, rows, own, zeros),
    });
  }
  // shuffled, so that parents need not come first
  for (let k = variables.length - 1; k > 0; k -= 1) {
    const other = Math.floor(random() * (k + 1));
    [variables[k], variables[other]] = [variables[other]!, variables[k]!];
  }
  return { variables };
}

/** `rows` random distributions over `own` states. */
export function randomRows(random: () => number, rows: number, own: number, zeros = 0): Float64Array {
  const table = new Float64Array(rows * own);
  for (let row = 0; row < rows; row += 1) {
    let sum = 0;
    for (let state = 0; state < own; state += 1) {
      const value = random() < zeros ? 0 : 0.01 + random();
      table[row * own + state] = value;
      sum += value;
    }
    if (sum === 0) {
      table[row * own] = 1;
      sum = 1;
    }
    for (let state = 0; state < own; state += 1) table[row * own + state]! /= sum;
  }
  return table;
}
