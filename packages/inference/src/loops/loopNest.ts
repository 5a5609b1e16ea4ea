/** Nested loops over two tables at once, innermost loop first: loop k runs `n[k]` times and steps `a[k]` in the one table and
 * `b[k]` in the other. Neighbouring loops that step alike in both tables are merged when a nest is built, so that most nests have
 * two or three loops whatever the number of variables. */
export interface LoopNest {
  readonly n: Int32Array;
  readonly a: Int32Array;
  readonly b: Int32Array;
  count: number;
}

/** An empty nest with room for `depth` loops. */
function createLoopNest(depth: number): LoopNest {
  const room = Math.max(depth, 2);
  return { n: new Int32Array(room), a: new Int32Array(room), b: new Int32Array(room), count: 0 };
}

/** Adds a loop outside the others; a loop of one round adds nothing. Call from the innermost outwards. */
export function addLoop(nest: LoopNest, n: number, a: number, b: number): void {
  if (n === 1) return;
  const last = nest.count - 1;
  if (last >= 0 && a === nest.a[last]! * nest.n[last]! && b === nest.b[last]! * nest.n[last]!) {
    nest.n[last]! *= n;
    return;
  }
  nest.n[nest.count] = n;
  nest.a[nest.count] = a;
  nest.b[nest.count] = b;
  nest.count += 1;
}

/** The nest that walks a dense table over `variables` (last fastest) beside a dense table over some of them.
 * @param other variables of the second table, in any order. @param cardinalities by position. @param spare room for further
 * loops that the caller adds outside. */
export function nestOf(
  variables: ArrayLike<number>,
  other: readonly number[],
  cardinalities: ArrayLike<number>,
  spare = 0,
): LoopNest {
  const nest = createLoopNest(variables.length + spare);
  let step = 1;
  for (let k = variables.length - 1; k >= 0; k -= 1) {
    const variable = variables[k]!;
    let otherStep = 0;
    const at = other.indexOf(variable);
    if (at >= 0) {
      otherStep = 1;
      for (let j = other.length - 1; j > at; j -= 1) otherStep *= cardinalities[other[j]!]!;
    }
    addLoop(nest, cardinalities[variable]!, step, otherStep);
    step *= cardinalities[variable]!;
  }
  return nest;
}
