import { EvidenceInputError } from '../errors/evidenceInputError.ts';
import type { InferenceProblem } from '../errors/inferenceError.ts';
import type { Network } from './network.ts';

/** What was seen, by variable name: a state's name (hard evidence) or a likelihood for every state in the author's order
 * (non-negative, any scale: P(what was seen | state) up to a factor). */
export type Evidence = Readonly<Record<string, string | readonly number[]>>;

/** One variable's evidence, checked. `state` >= 0 for hard evidence (and `weights` null); else -1 and `weights` divided by their
 * largest, whose logarithm is `logScale`. */
export interface Finding {
  readonly variable: number;
  readonly state: number;
  readonly weights: Float64Array | null;
  readonly logScale: number;
}

/** Checks evidence against a network.
 * @throws EvidenceInputError with every problem. A likelihood of zeros only is not an input error: it is impossible evidence, and
 * comes back with `logScale` -Infinity. */
export function readEvidence(network: Network, evidence: Evidence): Finding[] {
  const findings: Finding[] = [];
  const problems: InferenceProblem[] = [];
  for (const [name, seen] of Object.entries(evidence)) {
    const path = `/${name.replaceAll('~', '~0').replaceAll('/', '~1')}`;
    const report = (code: string, message: string, hint: string): void => {
      problems.push({ code, path, message, hint });
    };
    const variable = network.indexOf.get(name);
    if (variable === undefined) {
      report('evidence-variable-unknown', `the network has no variable '${name}'`, 'use the name as defined');
      continue;
    }
    const { states } = network.variables[variable]!;
    if (typeof seen === 'string') {
      const state = states.indexOf(seen);
      if (state < 0)
        report(
          'evidence-state-unknown',
          `'${name}' has no state '${seen}'`,
          `its states are ${states.map((s) => `'${s}'`).join(', ')}`,
        );
      else findings.push({ variable, state, weights: null, logScale: 0 });
    } else if (seen?.length !== states.length) {
      report(
        'evidence-likelihood-length',
        `the evidence on '${name}' is neither a state nor a list of ${states.length} numbers`,
        'give one likelihood per state, in order',
      );
    } else if (!Array.from(seen).every((value) => Number.isFinite(value) && value >= 0)) {
      report(
        'evidence-likelihood-invalid',
        `the likelihood of '${name}' holds a negative number or none`,
        'likelihoods are finite and not negative',
      );
    } else {
      const largest = Math.max(...seen);
      const weights = Float64Array.from(seen, (value) => (largest > 0 ? value / largest : 0));
      findings.push({ variable, state: -1, weights, logScale: Math.log(largest) });
    }
  }
  if (problems.length > 0) throw new EvidenceInputError(problems as [InferenceProblem, ...InferenceProblem[]]);
  return findings;
}
