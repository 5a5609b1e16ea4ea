import { addLogs } from '../factors/addLogs.ts';
import type { Factor } from '../factors/factor.ts';
import type { Propagation } from './propagation.ts';

/** Collects a clique's table by adding logarithms, scaled so that its largest entry is one: for messages that together leave the range
 * of doubles although their product need not.
 * @returns the logarithm taken out, and whether no positive entry (or earlier message) was lost. Sets `now.doubtful` for a message
 * that had already lost one. */
export function multiplyInLogs(propagation: Propagation, c: number): { log: number; whole: boolean } {
  const { compiled, findingsBelow, scalar, least, collected, ratios, states, soft, weights, now } = propagation;
  const { tree, prior, tableAt, separatorAt, marginAt } = compiled;
  const membersOf = (clique: number, skipped: number): number[] => [
    ...tree.members.subarray(tree.start[clique]! + skipped, tree.start[clique + 1]!),
  ];
  const at = tableAt[c]!;
  const variables = membersOf(c, 0);
  const factors: Factor[] = [{ variables, values: prior.subarray(at, at + tree.sizes[c]!) }];
  for (let d = tree.firstChild[c]!; d < tree.firstChild[c + 1]!; d += 1) {
    if (findingsBelow[d] === 0 || scalar[d] === 1) continue;
    if (least[d] === 0) now.doubtful = true;
    const from = separatorAt[d]! - separatorAt[0]!;
    const values = ratios.subarray(from, from + tree.separatorSizes[d]!);
    factors.push({ variables: membersOf(d, tree.residuals[d]!), values });
  }
  for (const v of variables) {
    const values = weights.slice(marginAt[v], marginAt[v + 1]);
    if (states[v]! >= 0) values.forEach((_, s) => (values[s] = Number(s === states[v])));
    else if (soft[v] === 0 || tree.home[v] !== c) continue;
    factors.push({ variables: [v], values });
  }
  const logs = addLogs(
    factors.map((factor) => ({ variables: factor.variables, values: factor.values.map(Math.log) })),
    variables,
    compiled.cardinalities,
  );
  let log = -Infinity;
  for (const value of logs) if (value > log) log = value;
  let whole = true;
  logs.forEach((value, k) => {
    const entry = log === -Infinity ? 0 : Math.exp(value - log);
    if (entry === 0 && value > -Infinity) whole = false;
    collected[at + k] = entry;
  });
  return { log: log === -Infinity ? 0 : log, whole };
}
