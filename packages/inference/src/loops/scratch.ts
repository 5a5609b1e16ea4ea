/** Memory for tables that nobody needs after a while: taken piece by piece, given back all at once, kept for the next time. A browser spends
 * longer on fresh memory than on filling it. */
export interface Scratch {
  chunk: Float64Array;
  used: number;
}

/** Larger tables are made anew, so that little memory is kept. */
const largestTable = 1 << 18;
const largestChunk = 1 << 20;

/** Memory that grows as it is asked for. */
export function createScratch(): Scratch {
  return { chunk: new Float64Array(0), used: 0 };
}

/** Zeros, to be used until the scratch is released. */
export function takeZeros(scratch: Scratch, length: number): Float64Array {
  if (length > largestTable) return new Float64Array(length);
  const from = scratch.used;
  scratch.used += length;
  if (scratch.used <= scratch.chunk.length) return scratch.chunk.subarray(from, scratch.used).fill(0);
  // what was taken before keeps its chunk
  const size = Math.min(largestChunk, Math.max(4096, 2 * scratch.chunk.length, 2 * length));
  scratch.chunk = new Float64Array(size);
  scratch.used = length;
  return scratch.chunk.subarray(0, length);
}

/** Gives back everything taken: whoever still reads it reads what comes next. */
export function release(scratch: Scratch): void {
  scratch.used = 0;
}
