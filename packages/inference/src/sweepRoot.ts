import { ancestorsOf } from './ancestorsOf.ts';
import { eliminateVariables } from './eliminateVariables.ts';
import type { Factor } from './factor.ts';
import { QueryError } from './queryError.ts';
import { readLikelihood, readTarget } from './readSweepFactor.ts';
import type { CompiledSweep, SweepFactor, SweepQuestion, SweepResult } from './sweep.ts';
import { variablePositions } from './variablePositions.ts';

/** Everything asked, given each state of the root, in one go.
 * Factors and targets are checked once per object: keep them and pass the same objects again.
 * @throws QueryError when a factor, target or name does not fit the network. Impossible roots are an answer, not an error. */
export function sweepRoot(sweep: CompiledSweep, question: SweepQuestion): SweepResult {
  const { network, root, cardinalities } = sweep;
  const roots = cardinalities[root]!;
  const likelihoods = question.likelihoods.map((factor, at) => readLikelihood(sweep, factor, `/likelihoods/${at}`));
  const observed = likelihoods.flatMap((factor) => factor.variables);
  const evidence = answer(sweep, likelihoods, observed, []);
  const logEvidenceGivenRoot = evidence.logScale;
  for (let r = 0; r < roots; r += 1) {
    logEvidenceGivenRoot[r]! += Math.log(evidence.values[r]!);
    for (const factor of likelihoods) logEvidenceGivenRoot[r]! += factor.logScale;
  }
  const targets = new Map<string, Float64Array>();
  const joints = new Map<string, Float64Array>();
  const jointGivenRoot = (variables: readonly number[]): Float64Array => {
    const key = variables.join();
    const made = joints.get(key);
    if (made !== undefined) return made;
    const { values } = answer(sweep, likelihoods, observed, variables);
    normalizeColumns(values, roots, logEvidenceGivenRoot);
    joints.set(key, values);
    return values;
  };
  question.targets.forEach((target, at) => {
    if (targets.has(target.id)) {
      throw new QueryError([
        {
          code: 'target-duplicate',
          path: `/targets/${at}/id`,
          message: `two targets are called '${target.id}'`,
          hint: 'give every target its own id',
        },
      ]);
    }
    const table = readTarget(sweep, target, `/targets/${at}`);
    const joint = jointGivenRoot(table.variables.filter((variable) => variable !== root));
    const result = predictive(table, joint, target.states, root, roots, cardinalities);
    for (let r = 0; r < roots; r += 1) {
      if (!(logEvidenceGivenRoot[r]! > -Infinity))
        result.fill(1 / target.states, r * target.states, (r + 1) * target.states);
    }
    targets.set(target.id, result);
  });
  const posteriors = new Map<string, Float64Array>();
  for (const variable of variablePositions(network, question.posteriorsOf ?? [], '/posteriorsOf')) {
    const states = cardinalities[variable]!;
    const answerOf = new Float64Array(roots * states);
    const joint = variable === root ? null : jointGivenRoot([variable]);
    for (let r = 0; r < roots; r += 1) {
      for (let s = 0; s < states; s += 1)
        answerOf[r * states + s] = joint === null ? Number(r === s) : joint[s * roots + r]!;
    }
    posteriors.set(network.variables[variable]!.name, answerOf);
  }
  return { logEvidenceGivenRoot, targets, posteriors };
}

function answer(
  sweep: CompiledSweep,
  likelihoods: readonly SweepFactor[],
  observed: readonly number[],
  asked: readonly number[],
): { values: Float64Array; logScale: Float64Array } {
  const { network, root, cardinalities } = sweep;
  const relevant = ancestorsOf(network, [...asked, ...observed]);
  const factors: Factor[] = [...sweep.families.filter((_, at) => at !== root && relevant[at] === 1), ...likelihoods];
  return eliminateVariables(factors, asked, root, cardinalities);
}

/** Makes every column (root fastest) sum to one; uniform where the evidence is impossible. */
function normalizeColumns(joint: Float64Array, roots: number, logEvidence: Float64Array): void {
  for (let r = 0; r < roots; r += 1) {
    let sum = 0;
    for (let at = r; at < joint.length; at += roots) sum += joint[at]!;
    const possible = sum > 0 && logEvidence[r]! > -Infinity;
    for (let at = r; at < joint.length; at += roots) joint[at] = possible ? joint[at]! / sum : roots / joint.length;
  }
}

/** P(child | root) at [root][state] from P(parents | root), root fastest. */
function predictive(
  table: SweepFactor,
  joint: Float64Array,
  states: number,
  root: number,
  roots: number,
  cardinalities: Int32Array,
): Float64Array {
  const result = new Float64Array(roots * states);
  const at = table.variables.indexOf(root);
  // table index = outer * rootStride * roots + r * rootStride + inner, child's state fastest
  let inner = states;
  for (let k = table.variables.length - 1; k > at && at >= 0; k -= 1) inner *= cardinalities[table.variables[k]!]!;
  const block = inner / states;
  const configurations = joint.length / roots;
  for (let u = 0; u < configurations; u += 1) {
    const outer = Math.floor(u / block);
    for (let r = 0; r < roots; r += 1) {
      const p = joint[u * roots + r]!;
      const row = at < 0 ? u * states : (outer * roots + r) * inner + (u - outer * block) * states;
      for (let s = 0; s < states; s += 1) result[r * states + s]! += p * table.values[row + s]!;
    }
  }
  return result;
}
