import type { CompiledNetwork } from '../propagation/compileNetwork.ts';
import { derivatives } from './derivatives.ts';
import { readEvidence, type Evidence } from '../network/evidence.ts';
import { ImpossibleEvidenceError } from '../errors/impossibleEvidenceError.ts';
import { QueryError } from '../errors/queryError.ts';
import { variablePositions } from '../network/variablePositions.ts';

/** A number of the network: P(variable = state | given). */
export interface Parameter {
  readonly variable: string;
  readonly state: string;
  /** Parent -> state, all parents. */
  readonly given?: Readonly<Record<string, string>>;
}

interface Line {
  readonly slope: number;
  readonly intercept: number;
}

/** A posterior as a function of one number t of the network: (slope t + intercept) / (slope t + intercept), numerator over denominator,
 * both divided by P(evidence) at the present value. The other numbers of t's row keep their proportions. */
export interface SensitivityFunction {
  /** The present value of the number. */
  readonly at: number;
  readonly numerator: Line;
  readonly denominator: Line;
  /** The value in [0, 1] at which the posterior is `level`; null when there is none. */
  readonly valueForPosterior: (level: number) => number | null;
}

/** P(query | evidence) as a function of one number of the network.
 * @param query variable and state asked.
 * @throws QueryError `query-variable-unknown`, `query-state-unknown`; EvidenceInputError, ImpossibleEvidenceError
 * @example
 * ```ts
 * const rain = { variable: 'rain', state: 'yes' };
 * const answer = sensitivityFunction(compileNetwork(network), { wet: 'yes' }, rain, rain);
 * answer.at; // 0.2
 * answer.valueForPosterior(0.5); // 0.1
 * ```
 * Source: Laskey 1995, IEEE Trans. SMC 25:901-909; Kjaerulff & van der Gaag 2000, UAI 16. */
export function sensitivityFunction(
  compiled: CompiledNetwork,
  evidence: Evidence,
  query: { readonly variable: string; readonly state: string },
  parameter: Parameter,
): SensitivityFunction {
  const { network } = compiled;
  const asked = network.variables[variablePositions(network, [query.variable], '/query/variable')[0]!]!;
  const state = stateOf(asked.states, query.state, '/query/state');
  const own = network.variables[variablePositions(network, [parameter.variable], '/parameter/variable')[0]!]!;
  const moved = stateOf(own.states, parameter.state, '/parameter/state');
  let row = 0;
  for (const parent of own.parents) {
    const { name, states } = network.variables[parent]!;
    row = row * states.length + stateOf(states, parameter.given?.[name] ?? '', `/parameter/given/${name}`);
  }
  const whole = derivatives(compiled, evidence);
  const at = own.table[row * own.states.length + moved]!;
  const line = (relative: Float64Array, share: number): Line => {
    let slope = 0;
    own.states.forEach((_, s) => {
      const by = relative[row * own.states.length + s]!;
      const others = own.table[row * own.states.length + s]! / (1 - at);
      slope += s === moved ? by : -by * (at < 1 ? others : 1 / (own.states.length - 1));
    });
    return { slope: slope * share, intercept: (1 - slope * at) * share };
  };
  const denominator = line(whole.relative[own.name]!, 1);
  const seen = readEvidence(network, evidence).find((finding) => finding.variable === asked.index);
  // P(evidence) restricted to some states of the asked variable; null when that is zero at present
  const restricted = (holds: boolean): Line | null => {
    const weights = asked.states.map((_, s) => {
      const before = seen === undefined ? 1 : (seen.weights?.[s] ?? Number(seen.state === s));
      return (s === state) === holds ? before : 0;
    });
    try {
      const part = derivatives(compiled, { ...evidence, [asked.name]: weights });
      const logShare = part.logProbabilityOfEvidence + (seen?.logScale ?? 0) - whole.logProbabilityOfEvidence;
      return line(part.relative[own.name]!, Math.exp(logShare));
    } catch (error) {
      if (error instanceof ImpossibleEvidenceError) return null;
      throw error;
    }
  };
  const rest = { slope: 0, intercept: 0 };
  let numerator = restricted(true);
  if (numerator === null) {
    const { slope, intercept } = restricted(false) ?? rest;
    numerator = { slope: denominator.slope - slope, intercept: denominator.intercept - intercept };
  }
  const { slope: top, intercept: base } = numerator;
  const valueForPosterior = (level: number): number | null => {
    const value = (level * denominator.intercept - base) / (top - level * denominator.slope);
    return Number.isFinite(value) && value >= 0 && value <= 1 ? value : null;
  };
  return { at, numerator, denominator, valueForPosterior };
}

function stateOf(states: readonly string[], name: string, path: string): number {
  const state = states.indexOf(name);
  if (state < 0) {
    const hint = `the states are ${states.map((other) => `'${other}'`).join(', ')}`;
    throw new QueryError([{ code: 'query-state-unknown', path, message: `'${name}' is not a state here`, hint }]);
  }
  return state;
}
