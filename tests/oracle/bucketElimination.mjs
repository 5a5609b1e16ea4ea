// The first, simple kernel of this project, kept as a baseline for benchmarks and as a second opinion: bucket elimination, one
// elimination per variable, evidence as indicator factors, tables rescaled and logarithms kept. Shares no code with the kernel.
// Source: Dechter 1999, Artificial Intelligence 113:41-85.

/** All posterior marginals and log P(evidence). `network` as made by defineNetwork; `findings` is a list of [position, state]. */
export function allPosteriors(network, findings) {
  const cardinalities = network.variables.map((variable) => variable.states.length);
  const marginals = network.variables.map(({ index }) => eliminateTo(network, cardinalities, findings, [index]).values);
  return { marginals, logProbability: eliminateTo(network, cardinalities, findings, []).logProbability };
}

function eliminateTo(network, cardinalities, findings, keep) {
  const relevant = new Set();
  const stack = [...keep, ...findings.map(([variable]) => variable)];
  while (stack.length > 0) {
    const at = stack.pop();
    if (relevant.has(at)) continue;
    relevant.add(at);
    stack.push(...network.variables[at].parents);
  }
  const factors = [...relevant].map((at) => ({
    variables: [...network.variables[at].parents, at],
    values: network.variables[at].table,
  }));
  for (const [variable, state] of findings) {
    factors.push({
      variables: [variable],
      values: Float64Array.from({ length: cardinalities[variable] }, (_, s) => (s === state ? 1 : 0)),
    });
  }
  const { values, logScale } = eliminate(factors, keep, cardinalities);
  let sum = 0;
  for (const value of values) sum += value;
  return { values: values.map((value) => value / sum), logProbability: logScale + Math.log(sum) };
}

function eliminate(factors, keep, cardinalities) {
  const kept = new Set(keep);
  let pool = [...factors];
  let logScale = 0;
  const open = new Set(pool.flatMap((factor) => factor.variables).filter((variable) => !kept.has(variable)));
  while (open.size > 0) {
    let best = -1;
    let bestSize = Infinity;
    let bestScope = [];
    for (const variable of open) {
      const scope = new Set();
      for (const factor of pool)
        if (factor.variables.includes(variable)) for (const other of factor.variables) scope.add(other);
      let size = 1;
      for (const other of scope) size *= cardinalities[other];
      if (size < bestSize) {
        best = variable;
        bestSize = size;
        bestScope = [...scope];
      }
    }
    const involved = pool.filter((factor) => factor.variables.includes(best));
    pool = pool.filter((factor) => !factor.variables.includes(best));
    const rest = bestScope.filter((variable) => variable !== best);
    const product = multiply(involved, [...rest, best], cardinalities);
    const states = cardinalities[best];
    const summed = new Float64Array(product.length / states);
    for (let at = 0; at < product.length; at += 1) summed[Math.floor(at / states)] += product[at];
    logScale += rescale(summed);
    pool.push({ variables: rest, values: summed });
    open.delete(best);
  }
  return { values: multiply(pool, keep, cardinalities), logScale };
}

function multiply(factors, variables, cardinalities) {
  const shape = variables.map((variable) => cardinalities[variable]);
  const product = new Float64Array(shape.reduce((size, n) => size * n, 1)).fill(1);
  for (const factor of factors) {
    const strides = variables.map(() => 0);
    let stride = 1;
    for (let k = factor.variables.length - 1; k >= 0; k -= 1) {
      strides[variables.indexOf(factor.variables[k])] = stride;
      stride *= cardinalities[factor.variables[k]];
    }
    const digits = new Int32Array(shape.length);
    let from = 0;
    for (let at = 0; at < product.length; at += 1) {
      product[at] *= factor.values[from];
      for (let d = shape.length - 1; d >= 0; d -= 1) {
        digits[d] += 1;
        from += strides[d];
        if (digits[d] < shape[d]) break;
        from -= strides[d] * shape[d];
        digits[d] = 0;
      }
    }
  }
  return product;
}

function rescale(values) {
  let largest = 0;
  for (const value of values) if (value > largest) largest = value;
  if (largest > 0) for (let at = 0; at < values.length; at += 1) values[at] /= largest;
  return Math.log(largest);
}
