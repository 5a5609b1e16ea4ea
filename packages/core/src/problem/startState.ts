import type { DecisionState, EvidenceSet, Limits, StepCost } from './decisionProblem.ts';

const NOTHING: StepCost = { money: 0, minutes: 0 };

/** The state a decision problem starts from: nothing spent, no result known beyond the posterior. */
export function startState(parts: {
  readonly evidence: EvidenceSet;
  readonly posterior: Float64Array;
  readonly open: number;
  readonly tests: number;
  readonly tried?: readonly number[];
}): DecisionState {
  const { evidence, posterior, open, tests, tried = [] } = parts;
  return {
    key: stateKey(evidence, open, tried, NOTHING, {}),
    evidence,
    posterior,
    open,
    tried,
    closedTests: new Uint8Array(tests),
    spent: NOTHING,
    chance: 1,
  };
}

/** Key of a state: what is spent counts only where it is limited. */
export function stateKey(
  evidence: EvidenceSet,
  open: number,
  tried: readonly number[],
  spent: StepCost,
  limits: Limits,
): string {
  const money = limits.money === undefined ? '' : spent.money.toFixed(6);
  const minutes = limits.minutes === undefined ? '' : spent.minutes.toFixed(6);
  return `${evidence.key}/${tried.join('.')}/${open}/${money}/${minutes}`;
}
