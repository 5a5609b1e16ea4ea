/** Root states grouped by what they make of a table: states whose blocks are equal entry by entry are one class, computed once. */
export interface RootClasses {
  /** Root state -> class. */
  readonly classOf: Int32Array;
  /** Class -> its first root state; length = number of classes. */
  readonly firstOf: Int32Array;
}

/** All root states in one class. */
export function oneClass(roots: number): RootClasses {
  return { classOf: new Int32Array(roots), firstOf: new Int32Array(1) };
}

/** Groups root states by equal blocks. @param blocks [root state][entry], `size` entries each. */
export function classesByBlock(blocks: Float64Array, size: number, roots: number): RootClasses {
  const classOf = new Int32Array(roots);
  const firsts: number[] = [];
  for (let r = 0; r < roots; r += 1) {
    const found = firsts.findIndex((first) => {
      for (let k = 0; k < size; k += 1) if (blocks[first * size + k] !== blocks[r * size + k]) return false;
      return true;
    });
    classOf[r] = found >= 0 ? found : firsts.push(r) - 1;
  }
  return { classOf, firstOf: Int32Array.from(firsts) };
}

/** The coarsest grouping that refines both. */
export function refineClasses(a: RootClasses, b: RootClasses): RootClasses {
  if (a.firstOf.length === 1) return b;
  if (b.firstOf.length === 1) return a;
  const roots = a.classOf.length;
  const width = b.firstOf.length;
  const classOf = new Int32Array(roots);
  const seen = new Int32Array(a.firstOf.length * width);
  const first = new Int32Array(roots);
  let count = 0;
  for (let r = 0; r < roots; r += 1) {
    const key = a.classOf[r]! * width + b.classOf[r]!;
    if (seen[key] === 0) {
      first[count] = r;
      count += 1;
      seen[key] = count;
    }
    classOf[r] = seen[key]! - 1;
  }
  return { classOf, firstOf: first.subarray(0, count) };
}
