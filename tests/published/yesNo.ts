import { compileNetwork, defineNetwork, posterior, type CompiledNetwork, type Evidence } from '@faultodds/inference';

/** A network of variables that are true or false: `[name, parents, P(true | parents)]`, the table with the first parent slowest and
 * true before false. */
export function yesNoNetwork(
  variables: readonly (readonly [name: string, parents: readonly string[], yes: readonly number[]])[],
): CompiledNetwork {
  return compileNetwork(
    defineNetwork({
      variables: variables.map(([name, parents, yes]) => ({
        name,
        states: ['yes', 'no'],
        parents,
        table: yes.flatMap((p) => [p, 1 - p]),
      })),
    }),
  );
}

/** P(variable is true | evidence). */
export function chanceOf(network: CompiledNetwork, variable: string, evidence: Evidence = {}): number {
  return posterior(network, evidence).marginals[variable]!['yes']!;
}

/** P(evidence). */
export function chanceOfEvidence(network: CompiledNetwork, evidence: Evidence): number {
  return Math.exp(posterior(network, evidence).logProbabilityOfEvidence);
}
