/** Orders variables so that parents come first, ties in the given order; or finds a directed cycle.
 * @param variables each with the positions of its parents.
 * @returns `order` (complete when there is no cycle) and `cycle` (empty, or the positions along one, child before parent). */
export function topologicalOrder(variables: readonly { readonly parents: readonly number[] }[]): {
  order: number[];
  cycle: number[];
} {
  const order: number[] = [];
  const state = new Uint8Array(variables.length); // 0 new, 1 on the path, 2 done
  const next = new Int32Array(variables.length); // which parent to visit next
  for (let start = 0; start < variables.length; start += 1) {
    if (state[start] !== 0) continue;
    // an explicit stack: networks can be deeper than the call stack
    const path = [start];
    while (path.length > 0) {
      const at = path[path.length - 1]!;
      state[at] = 1;
      const parent = variables[at]!.parents[next[at]!];
      next[at]! += 1;
      if (parent === undefined) {
        state[at] = 2;
        order.push(at);
        path.pop();
      } else if (state[parent] === 1) return { order, cycle: path.slice(path.indexOf(parent)) };
      else if (state[parent] === 0) path.push(parent);
    }
  }
  return { order, cycle: [] };
}
