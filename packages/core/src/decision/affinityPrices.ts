import type { DecisionProblem } from './decisionProblem.ts';
import { accessShares, shareAccess } from './shareAccess.ts';
import { perfectInformation } from './perfectInformation.ts';

/** Prices of confusion, chosen for one belief and valid for all: see `affinityBound`. Arrays run over configurations or pairs of them. */
export interface AffinityPrices {
  /** Pairs of configurations of different causes, and what their confusion is worth times the root of both probabilities. */
  readonly first: Int32Array;
  readonly second: Int32Array;
  readonly worth: Float64Array;
  /** test -> what a configuration pays back as long as the test is not done (each can be done once only). */
  readonly testSurcharge: ReadonlyMap<number, Float64Array>;
  /** The same, as long as the test is not done and the access (by bit position) stands open, not before. */
  readonly openSurcharge: readonly { readonly test: number; readonly access: number; readonly of: Float64Array }[];
  readonly repairSurcharge: ReadonlyMap<number, Float64Array>;
  /** What a configuration pays back always. */
  readonly surcharge: Float64Array;
}

const PARTNERS = 12;
const ROUNDS = 40;
const EVERYTHING_OPEN = -1;
const LEAST_ROOT = 1e-9;
const LEAST_LOAD = 1e-12;
const LEANING = 0.1;
const SPREADS = [1, 2, 4, 8, 16, 32, 64];

/** Chooses prices of confusion that make the bound large at the start of a problem, by multiplicative steps along the subgradient of the
 * (concave) bound; any prices are admissible, the best found are returned with the value of the bound's extra part. */
export function affinityPrices(problem: DecisionProblem): { readonly prices: AffinityPrices; readonly extra: number } {
  const { tests, repairs, repairFacts, start } = problem;
  const { cause, weight, outcomeGiven } = problem.configurations();
  const count = weight.length;
  const root = weight.map((w) => Math.sqrt(Math.max(w, LEAST_ROOT ** 2)));
  const asked = tests.map((_, test) => test).filter((test) => start.closedTests[test] === 0);
  const testCost = asked.map((test) => problem.testCost(test, EVERYTHING_OPEN).money);
  const likelihoodRoot = asked.map((test) => outcomeGiven(test).map(Math.sqrt));
  const distance = (at: number, a: number, b: number): number => {
    const outcomes = tests[asked[at]!]!.outcomes.length;
    const rows = likelihoodRoot[at]!;
    let affinity = 0;
    for (let o = 0; o < outcomes; o += 1) affinity += rows[a * outcomes + o]! * rows[b * outcomes + o]!;
    return Math.max(0, 1 - affinity);
  };

  const { first, second } = choosePairs(count, cause, root, (a, b) => {
    let dearness = Infinity;
    for (let at = 0; at < asked.length; at += 1)
      dearness = Math.min(dearness, testCost[at]! / (distance(at, a, b) + 1e-6));
    return Math.min(dearness, 1e4);
  });
  const pairs = first.length;
  const distances = asked.map((_, at) => Float64Array.from(first, (a, p) => distance(at, a, second[p]!)));

  const knowing = perfectInformation(problem)(0, start.tried);
  const referSlack = Float64Array.from(
    cause,
    (c, h) => weight[h]! * Math.max(0, repairFacts.referralCost[c]! - knowing[c]!),
  );
  const work = repairs
    .map((_, repair) => repair)
    .filter((repair) => !start.tried.includes(repair))
    .map((repair) => {
      const cured = new Uint8Array(problem.causes.length);
      for (const cure of repairFacts.cures[repair]!) cured[cure.cause] = 1;
      return {
        repair,
        cost: repairFacts.costFrom(repair, EVERYTHING_OPEN),
        cured: Uint8Array.from(cause, (c) => cured[c]!),
      };
    })
    .filter(({ cured }) => cured.includes(1));

  const access = accessShares(problem, asked, cause);
  /** What every configuration has to bear of the pairs' flows, as far as a test tells them apart, when leaning by `lean`: half each
   * where the leans are equal. */
  const loadOf = (flow: Float64Array, apart?: Float64Array, lean?: Float64Array): Float64Array => {
    const load = new Float64Array(count);
    for (let p = 0; p < pairs; p += 1) {
      const half = 0.5 * flow[p]! * (apart === undefined ? 1 : apart[p]!);
      const [a, b] = [first[p]!, second[p]!];
      const ratio = lean === undefined ? 1 : lean[b]! / lean[a]!;
      load[a]! += half * ratio;
      load[b]! += half / ratio;
    }
    return load;
  };
  const leans = asked.map(() => new Float64Array(count).fill(1));

  /** Value of the extra part at the start for flows `worth root root`, its subgradient, and the surcharges. */
  const evaluate = (flow: Float64Array, gradient: Float64Array) => {
    let value = 0;
    for (let p = 0; p < pairs; p += 1) value += flow[p]!;
    gradient.fill(1);
    const loads = asked.map((_, at) => loadOf(flow, distances[at]!, leans[at]!));
    const testOver = loads.map((row, at) => row.map((x, h) => Math.max(0, x - testCost[at]! * weight[h]!)));
    const openOver = shareAccess(access, testOver, weight);
    testOver.forEach((over, at) => {
      const apart = distances[at]!;
      const lean = leans[at]!;
      for (const x of over) value -= x;
      for (let p = 0; p < pairs; p += 1) {
        const [a, b] = [first[p]!, second[p]!];
        if (over[a]! > 0) gradient[p]! -= (0.5 * apart[p]! * lean[b]!) / lean[a]!;
        if (over[b]! > 0) gradient[p]! -= (0.5 * apart[p]! * lean[a]!) / lean[b]!;
      }
    });
    const repairOver = work.map(({ cost, cured }) => {
      const outside = new Float64Array(count);
      const inside = new Float64Array(count);
      for (let p = 0; p < pairs; p += 1) {
        const [a, b] = [first[p]!, second[p]!];
        if (cured[a] === 0 && cured[b] === 0) continue;
        const into = cured[a] === 1 && cured[b] === 1 ? inside : outside;
        into[a]! += 0.5 * flow[p]!;
        into[b]! += 0.5 * flow[p]!;
      }
      // any positive scaling of the cured against the others is admissible: the cheapest of a few is taken
      let best: Float64Array | undefined;
      let least = Infinity;
      let bestSpread = 1;
      for (const spread of SPREADS) {
        let total = 0;
        const over = outside.map((x, h) => {
          const paid = cured[h] === 1 ? inside[h]! + x / spread : Math.max(0, x * spread - cost * weight[h]!);
          total += paid;
          return paid;
        });
        if (total < least) [least, best, bestSpread] = [total, over, spread];
      }
      value -= least;
      for (let p = 0; p < pairs; p += 1) {
        const [a, b] = [first[p]!, second[p]!];
        for (const h of [a, b]) {
          const isBoth = cured[a] === 1 && cured[b] === 1;
          if (isBoth) gradient[p]! -= 0.5;
          else if (cured[a] === 0 && cured[b] === 0) break;
          else if (cured[h] === 1) gradient[p]! -= 0.5 / bestSpread;
          else if (best![h]! > 0) gradient[p]! -= 0.5 * bestSpread;
        }
      }
      return best!;
    });
    const over = loadOf(flow).map((x, h) => Math.max(0, x - referSlack[h]!));
    for (const x of over) value -= x;
    for (let p = 0; p < pairs; p += 1) {
      gradient[p]! -= 0.5 * (Number(over[first[p]!]! > 0) + Number(over[second[p]!]! > 0));
    }
    return { value, loads, testOver, openOver, repairOver, over };
  };

  const flow = Float64Array.from(first, (a, p) => {
    let room = Infinity;
    for (let at = 0; at < asked.length; at += 1) {
      room = Math.min(room, (testCost[at]! * Math.min(weight[a]!, weight[second[p]!]!)) / (distances[at]![p]! + 1e-3));
    }
    return Number.isFinite(room) ? (0.5 * room) / PARTNERS : 0;
  });
  const gradient = new Float64Array(pairs);
  let best = { value: 0, flow: new Float64Array(pairs), leans: leans.map((lean) => lean.slice()) };
  for (let round = 0; round < ROUNDS; round += 1) {
    const { value, loads } = evaluate(flow, gradient);
    if (value > best.value) best = { value, flow: flow.slice(), leans: leans.map((lean) => lean.slice()) };
    // whoever bears too much leans away, as far as those who take over have room
    leans.forEach((lean, at) => {
      const push = new Float64Array(count);
      const apart = distances[at]!;
      const tooMuch = (h: number): number => Number(loads[at]![h]! > testCost[at]! * weight[h]!);
      for (let p = 0; p < pairs; p += 1) {
        const [a, b] = [first[p]!, second[p]!];
        const half = 0.5 * flow[p]! * apart[p]!;
        const moved = (tooMuch(a) * half * lean[b]!) / lean[a]! - (tooMuch(b) * half * lean[a]!) / lean[b]!;
        push[a]! += moved;
        push[b]! -= moved;
      }
      for (let h = 0; h < count; h += 1) {
        const scale = loads[at]![h]! + testCost[at]! * weight[h]! + LEAST_LOAD;
        lean[h]! *= Math.exp(LEANING * Math.max(-1, Math.min(1, push[h]! / scale)));
      }
    });
    const step = 0.5 / Math.sqrt(1 + round / 4);
    for (let p = 0; p < pairs; p += 1) flow[p]! *= Math.exp(step * Math.max(-1, Math.min(1, gradient[p]!)));
  }
  best.leans.forEach((lean, at) => leans[at]!.set(lean));
  const { value, testOver, openOver, repairOver, over } = evaluate(best.flow, gradient);
  const perWeight = (of: Float64Array): Float64Array => of.map((x, h) => (x > 0 ? x / root[h]! ** 2 : 0));
  const priced = (list: readonly Float64Array[], ids: readonly number[]): Map<number, Float64Array> =>
    new Map(list.flatMap((row, at) => (row.some((x) => x > 0) ? [[ids[at]!, perWeight(row)] as const] : [])));
  return {
    extra: value,
    prices: {
      first,
      second,
      worth: best.flow.map((x, p) => x / (root[first[p]!]! * root[second[p]!]!)),
      testSurcharge: priced(testOver, asked),
      openSurcharge: openOver.map(({ at, bit, of }) => ({ test: asked[at]!, access: bit, of: perWeight(of) })),
      repairSurcharge: priced(
        repairOver,
        work.map(({ repair }) => repair),
      ),
      surcharge: perWeight(over),
    },
  };
}

/** For every configuration the partners of other causes whose confusion is dearest. */
function choosePairs(
  count: number,
  cause: Int32Array,
  root: Float64Array,
  dearness: (a: number, b: number) => number,
): { readonly first: Int32Array; readonly second: Int32Array } {
  const chosen = new Set<number>();
  const score = new Float64Array(count * count);
  for (let a = 0; a < count; a += 1) {
    for (let b = a + 1; b < count; b += 1) {
      if (cause[a] !== cause[b]) score[a * count + b] = score[b * count + a] = dearness(a, b);
    }
  }
  for (let a = 0; a < count; a += 1) {
    const partners = Array.from({ length: count }, (_, b) => b).filter((b) => score[a * count + b]! > 0);
    const rank = (b: number): number => score[a * count + b]! * root[b]!;
    partners.sort((b, c) => rank(c) - rank(b));
    for (const b of partners.slice(0, PARTNERS)) chosen.add(Math.min(a, b) * count + Math.max(a, b));
  }
  const list = [...chosen].sort((a, b) => a - b);
  return {
    first: Int32Array.from(list, (code) => Math.floor(code / count)),
    second: Int32Array.from(list, (code) => code % count),
  };
}
