import type { LikelihoodFactor } from '@faultodds/inference/sweeps';
import type { CompiledModel } from '../compiled/compiledModel.ts';

// Chance that a misfire goes away after a repair that did not cure its cause (disturbed connector, chance, a fault asleep).
// Judgement, 0.01-0.1; the dossier's replaced-part tests use 0.035 as their default row.
const GONE_WITHOUT_CURE = 0.035;

// The kernel knows a factor by its identity: the same attempt at the same repair gets the same object, or everything after it is swept anew.
const madeFor = new WeakMap<CompiledModel, Map<string, LikelihoodFactor>>();

/** The likelihood of "repaired, and it stayed" or "repaired, and it went" as a factor over the cause. */
export function likelihoodOfRepair(compiled: CompiledModel, repair: number, cured: boolean): LikelihoodFactor {
  const made = madeFor.get(compiled) ?? new Map<string, LikelihoodFactor>();
  madeFor.set(compiled, made);
  const key = `${repair} ${cured}`;
  const known = made.get(key);
  if (known !== undefined) return known;
  const values = new Float64Array(compiled.causes.length).fill(cured ? GONE_WITHOUT_CURE : 1 - GONE_WITHOUT_CURE);
  for (const { cause, success } of compiled.cures[repair] ?? []) values[cause] = cured ? success : 1 - success;
  const factor = { variables: ['cause'], values };
  made.set(key, factor);
  return factor;
}
