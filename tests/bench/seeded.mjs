/** Seeded generator of numbers in [0, 1) (mulberry32, a public-domain 32-bit mixer). */
export function createRandom(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** `rows` random distributions over `own` states. */
export function randomRows(random, rows, own) {
  const table = new Float64Array(rows * own);
  for (let row = 0; row < rows; row += 1) {
    let sum = 0;
    for (let state = 0; state < own; state += 1) sum += table[row * own + state] = 0.01 + random();
    for (let state = 0; state < own; state += 1) table[row * own + state] /= sum;
  }
  return table;
}
