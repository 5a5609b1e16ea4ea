import { readFileSync } from 'node:fs';

/** @param {string} file under tests/bench/results */
const stored = (file) => JSON.parse(readFileSync(new URL(`results/${file}.json`, import.meta.url), 'utf8'));
/** @param {number} share */
const percent = (share) => Math.round(100 * share);
/** @param {number[]} ratios */
const geometricMean = (ratios) => Math.exp(ratios.reduce((sum, ratio) => sum + Math.log(ratio), 0) / ratios.length);
/** Thousands apart. @param {number} value @param {number} [digits] */
const figure = (value, digits = 0) => value.toFixed(digits).replace(/\B(?=(\d{3})+(?!\d))/, value >= 1000 ? ' ' : '');

function simulation() {
  /** @typedef {{ mean: number, low: number, high: number }} Difference */
  /** @typedef {{ meanCost: number, medianCost: number, ninetiethPercentileCost: number, needlessOpeningsPerCase: number, referredShare: number,
   * againstOneStep: { cost: Difference } }} Summary */
  /** @type {{ cases: number, needlessOpening: number, policies: { policy: string, allCases: Summary }[] }} */
  const { cases, needlessOpening, policies } = stored('simulation');
  const of = (/** @type {string} */ name) => {
    const found = policies.find(({ policy }) => policy === name)?.allCases;
    if (found === undefined) throw new TypeError(`the simulation has no policy "${name}"`);
    return found;
  };
  const row = (/** @type {string} */ name, /** @type {string} */ label) => {
    const { meanCost, medianCost, ninetiethPercentileCost, needlessOpeningsPerCase, referredShare } = of(name);
    const costs = [meanCost, medianCost, ninetiethPercentileCost].map((cost) => figure(cost));
    return `| ${[label, ...costs, (100 * needlessOpeningsPerCase).toFixed(1), percent(referredShare)].join(' | ')} |`;
  };
  const { mean, low, high } = of('settled').againstOneStep.cost;
  return [
    `Simulated on ${figure(cases)} invented engines`,
    row('parts-swapping', 'the usual parts in the usual order'),
    row('one-step', 'the best next step, one step ahead'),
    row('settled', 'the best next step, several steps ahead'),
    `Several steps ahead cost ${figure(Math.abs(mean))} units ${mean < 0 ? 'less' : 'more'} than one step on the same engines (95 % interval of the difference: ${low.toFixed(0)} to ${high.toFixed(0)})`,
    `an opening that proves needless counts for ${needlessOpening} units`,
  ];
}

function search() {
  /** @type {{ search: { results: number, gapAt: Record<string, number> }[], smallProblems: { count: number, bounds: Record<string, number> } }} */
  const { search, smallProblems } = stored('decision');
  const gaps = (/** @type {number} */ results) =>
    search.filter((row) => row.results === results).map(({ gapAt }) => gapAt['2 s'] ?? NaN);
  const later = gaps(3);
  const under = (/** @type {number} */ most) => later.filter((gap) => gap <= most).length;
  const [pairs, perfect] = [smallProblems.bounds['pairs'] ?? NaN, smallProblems.bounds['perfectInformation'] ?? NaN];
  return [
    `at most 5 % in ${under(0.05)} of the ${later.length} worked cases, at most 10 % in ${under(0.1)}, ${(100 * Math.min(...later)).toFixed(1)} % to ${percent(Math.max(...later))} % in all; ${percent(Math.min(...gaps(0)))} to ${percent(Math.max(...gaps(0)))} % from intake`,
    `On ${smallProblems.count} small problems the search equals exact dynamic programming and the bound is ${pairs.toFixed(3)} of the optimum (perfect information ${perfect.toFixed(3)})`,
  ];
}

function kernel() {
  /** @type {{ networks: Record<string, any>, targets: Record<string, { name: string, ratio: number }[]> }} */
  const { networks, targets } = stored('inference');
  const time = (
    /** @type {{ median: number, best: number }} */ of,
    /** @type {'median' | 'best'} */ which = 'median',
  ) => figure(of[which], of[which] < 1 ? 2 : of[which] < 100 ? 1 : 0);
  const rows = Object.entries(networks).map(([name, row]) => {
    const times = (/** @type {number | undefined} */ ratio) => (ratio === undefined ? '–' : figure(ratio));
    return `| ${name} | ${time(row.warm)} | ${time(row.warm, 'best')} | ${time(row.cold)} | ${row.entriesRatio.toFixed(3)} | ${times(row.bayesjsTimes)} | ${times(row.firstKernelTimes)} |`;
  });
  const ratios = (/** @type {string} */ row) => (targets[row] ?? []).map(({ ratio }) => ratio);
  const warm = ratios('warm / libDAI, six');
  return [
    ...rows,
    `| warm / libDAI, six networks, geometric mean | ${geometricMean(warm).toFixed(3)} |`,
    `| – worst of them | ${Math.max(...warm).toFixed(2)} |`,
    `| cold / libDAI, six, geometric mean | ${geometricMean(ratios('cold / libDAI cold, six')).toFixed(3)} |`,
    `| – worst of them | ${Math.max(...ratios('cold / libDAI cold, six')).toFixed(2)} |`,
    `| andes, pigs warm / libDAI | ${geometricMean(ratios('andes, pigs warm / libDAI')).toFixed(3)} |`,
    `| water warm / aGrUM | ${geometricMean(ratios('water warm / aGrUM')).toFixed(3)} |`,
  ];
}

/** @param {string} file */
function times(file) {
  const { machine: _, ...places } = stored(file);
  return Object.entries(places).flatMap(([where, { milliseconds }]) =>
    Object.entries(milliseconds).map(
      ([what, { median, ninetyFive }]) =>
        `| ${where}, ${what} | ${median.toFixed(1)} ms | ${ninetyFive.toFixed(1)} ms |`,
    ),
  );
}

function bounds() {
  /** @type {{ search: { results: number, lowerBound: number, plan: number }[] }} */
  const { search } = stored('decision');
  const share = (/** @type {number} */ results) => {
    const shares = search
      .filter((row) => row.results === results)
      .map(({ lowerBound, plan }) => lowerBound / plan)
      .sort((a, b) => a - b);
    const [low, mid, high] = [0, shares.length >> 1, shares.length - 1].map((at) => (shares[at] ?? NaN).toFixed(2));
    return `${mid} (${low} to ${high})`;
  };
  return [`the bound is ${share(0)} of the plan at intake and ${share(3)} after three results`];
}

function page() {
  /** @typedef {{ longest: number, slowest: number }} Seen */
  /** @type {{ sizes: Record<string, { usable: number[], recording: Seen, moving: Seen }> }} */
  const { sizes } = stored('playground');
  const [phone, desk] = [sizes['phone'], sizes['desk']];
  if (phone === undefined || desk === undefined) throw new TypeError('the page was not measured at both sizes');
  const usable = (/** @type {number[]} */ times) => ((times[times.length >> 1] ?? NaN) / 1000).toFixed(2);
  const most = (/** @type {'recording' | 'moving'} */ doing) => {
    const longest = Math.max(phone[doing].longest, desk[doing].longest);
    const slowest = Math.max(phone[doing].slowest, desk[doing].slowest);
    return `longest task ${longest === 0 ? 'below 50' : longest.toFixed(0)} ms, slowest answer ${slowest.toFixed(0)} ms`;
  };
  return [
    `a ranking with a control that works after ${usable(phone.usable)} s on a phone's screen and ${usable(desk.usable)} s at a desk`,
    `Recording results: ${most('recording')}`,
    `Typing, dragging and scrolling: ${most('moving')}`,
  ];
}

/** What documents have to say of what was measured, by document: made from the stored results of the benches, word for word. */
export const figures = {
  'README.md': simulation(),
  'CHANGELOG.md': search(),
  'packages/core/decisions/0001-bounds-of-the-search.md': bounds(),
  'playground/README.md': page(),
  'packages/inference/decisions/0002-measured.md': [...kernel(), ...times('oneStep'), ...times('explanation')],
};
