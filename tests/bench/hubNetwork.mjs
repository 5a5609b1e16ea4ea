import { randomRows, createRandom } from './seeded.mjs';

/** An invented network of the shape a diagnosis has: one root of many states; variables each disturbed by a few root states (the others
 * share one "undisturbed" row); one variable with four of them as parents; children asked or observed, over small subsets of them.
 * All numbers are drawn from a seeded generator. */
export function hubNetwork(seed = 1, roots = 36) {
  const random = createRandom(seed);
  const cards = [3, 4, 4, 6, 6, 4, 2, 2, 2];
  const names = (prefix, n) => Array.from({ length: n }, (_, k) => `${prefix}${k}`);
  const variables = [{ name: 'root', states: names('r', roots), parents: [], table: randomRows(random, 1, roots) }];
  cards.forEach((card, m) => {
    const calm = randomRows(random, 1, card);
    const table = new Float64Array(roots * card);
    for (let r = 0; r < roots; r += 1) table.set(random() < 0.25 ? randomRows(random, 1, card) : calm, r * card);
    variables.push({ name: `m${m}`, states: names('s', card), parents: ['root'], table });
  });
  const four = ['m1', 'm3', 'm4', 'm5'];
  variables.push({ name: 'mixed', states: names('s', 4), parents: four, table: randomRows(random, 576, 4) });
  const cardOf = Object.fromEntries(variables.map((v) => [v.name, v.states.length]));
  const sizeOf = (list) => list.reduce((n, name) => n * cardOf[name], 1);
  const pick = (count) => {
    const rest = variables.slice(1).map((v) => v.name);
    return Array.from({ length: count }, () => rest.splice(Math.floor(random() * rest.length), 1)[0]);
  };
  const targets = Array.from({ length: 46 }, (_, k) => {
    let parents;
    if (k === 0) parents = ['m0', 'm1', 'm2', 'm3', 'm4', 'm6', 'm7', 'm8'];
    else if (k === 1) parents = ['m1', 'm3', 'm4', 'm5', 'root'];
    else parents = pick(1 + Math.floor(random() * 3));
    if (k > 1 && random() < 0.15) parents.push('root');
    const states = 2 + Math.floor(random() * 3);
    return { id: `t${k}`, parents, states, table: randomRows(random, sizeOf(parents), states) };
  });
  /** What observing state s of target k multiplies in. */
  const observe = (k, s) => {
    const { parents, states, table } = targets[k];
    return {
      variables: parents,
      values: Float64Array.from({ length: table.length / states }, (_, row) => table[row * states + s]),
    };
  };
  return { definition: { variables }, targets, observe, random };
}
