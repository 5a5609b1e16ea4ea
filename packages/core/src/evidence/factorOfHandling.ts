import type { LikelihoodFactor } from '@faultodds/inference/sweeps';
import type { CompiledModel, CompiledTest } from '../compiled/compiledModel.ts';

/** Odds of the causes that doing a test may itself have brought about (a connector not latched, a seal pinched), as a factor over the
 * cause scaled to at most 1; `undefined` when it brings about none. Made once per test. */
export function factorOfHandling(
  compiled: CompiledModel,
  { test, factors }: CompiledTest,
): LikelihoodFactor | undefined {
  const { mayCause } = test;
  if (mayCause === undefined) return undefined;
  const known = factors.get('handling');
  if (known !== undefined) return known;
  const { hypotheses } = compiled.structure;
  const odds = Float64Array.from(hypotheses, ({ members }) =>
    members.reduce((product, at) => product * (mayCause[compiled.model.causes[at]!.id]?.best ?? 1), 1),
  );
  const largest = odds.reduce((a, b) => Math.max(a, b));
  const factor = { variables: ['cause'], values: odds.map((x) => x / largest) };
  factors.set('handling', factor);
  return factor;
}
