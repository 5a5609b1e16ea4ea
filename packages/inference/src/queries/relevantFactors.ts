import { addAlong } from '../loops/addAlong.ts';
import { ancestorsOf } from '../network/ancestorsOf.ts';
import type { CompiledNetwork } from '../propagation/compileNetwork.ts';
import { factorOfFinding } from './eliminateTo.ts';
import type { Finding } from '../network/evidence.ts';
import type { Factor } from '../factors/factor.ts';
import { nestOf } from '../loops/loopNest.ts';

/** The factors that a question about some variables needs: families of ancestors of what is asked or seen (others are barren), with
 * observed states sliced out, and likelihoods. Asked variables that are observed keep their place, with zeros elsewhere. */
export function relevantFactors(
  compiled: CompiledNetwork,
  findings: readonly Finding[],
  asked: readonly number[],
): Factor[] {
  const { cardinalities, families, network } = compiled;
  const relevant = ancestorsOf(network, [...asked, ...findings.map((finding) => finding.variable)]);
  const states = new Int32Array(cardinalities.length).fill(-1);
  const factors: Factor[] = [];
  for (const finding of findings) {
    if (finding.weights !== null || asked.includes(finding.variable))
      factors.push(factorOfFinding(finding, cardinalities));
    else states[finding.variable] = finding.state;
  }
  families.forEach((family, position) => {
    if (relevant[position] === 1) factors.push(sliceFactor(family, states, cardinalities));
  });
  return factors;
}

function sliceFactor(factor: Factor, states: Int32Array, cardinalities: Int32Array): Factor {
  const rest = factor.variables.filter((variable) => states[variable]! < 0);
  if (rest.length === factor.variables.length) return factor;
  let offset = 0;
  for (const variable of factor.variables) offset = offset * cardinalities[variable]! + Math.max(states[variable]!, 0);
  const values = new Float64Array(rest.reduce((size, variable) => size * cardinalities[variable]!, 1));
  const nest = nestOf(rest, factor.variables, cardinalities);
  addAlong(factor.values, offset, values, 0, nest.n, nest.b, nest.a, 0, nest.count);
  return { variables: rest, values };
}
