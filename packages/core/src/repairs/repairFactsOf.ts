import type { Facts } from '../evidence/facts.ts';
import { triedBy } from '../evidence/triedBy.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { RepairFacts } from './repairFacts.ts';
import type { Tariff } from '../cost/tariff.ts';

/** What the model's repairs do and cost at this tariff, checks included; indices are the model's. A specialist does what cures a cause
 * best: not what has failed on it already, if anything else cures it. */
export function repairFactsOf(
  compiled: CompiledModel,
  tariff: Tariff,
  facts: Facts,
): RepairFacts & { readonly referralFee: number } {
  const { repairs } = compiled.model;
  const referral = repairs.findIndex((repair) => repair.referral === true);
  const candidates = repairs.map((_, index) => index).filter((index) => index !== referral);
  const costFrom = (index: number, open: number): number => tariff.repair(index, open).total + tariff.check.total;
  const cheapestOf = (tried: readonly number[]): Float64Array => {
    const cost = new Float64Array(compiled.causes.length).fill(Infinity);
    for (const index of tried) {
      for (const { cause } of compiled.cures[index]!) cost[cause] = Math.min(cost[cause]!, costFrom(index, 0));
    }
    return cost;
  };
  const failed = new Set(repairsFailed(compiled, facts));
  const ofAll = cheapestOf(candidates);
  const knownCost = cheapestOf(candidates.filter((index) => !failed.has(index))).map((cost, cause) =>
    cost === Infinity ? ofAll[cause]! : cost,
  );
  compiled.structure.hypotheses.forEach(({ members }, at) => {
    if (members.length < 2) return;
    const both = members.reduce((sum, member) => sum + knownCost[member]!, 0);
    knownCost[at] = Math.min(knownCost[at]!, both);
  });
  const neededBy = new Int32Array(compiled.causes.length);
  compiled.cures.forEach((cures, index) => {
    for (const { cause } of cures) neededBy[cause]! |= tariff.repairAccess[index]! & tariff.opensEngine;
  });
  compiled.structure.hypotheses.forEach(({ members }, at) => {
    for (const member of members) neededBy[at]! |= neededBy[member]!;
  });
  const referralFee = tariff.repair(referral, 0).total;
  return {
    cures: compiled.cures,
    candidates,
    costFrom,
    access: tariff.repairAccess,
    needless: { opens: tariff.opensEngine, amount: tariff.needlessOpening, neededBy },
    referralFee,
    // a cause that only the referral cures costs the referral and nothing known beyond it
    referralCost: knownCost.map((cost) => referralFee + (cost === Infinity ? 0 : cost)),
  };
}

/** Repairs on record that did not cure, by index, whether entered as a repair or as the test of the same kind: they are not proposed again. */
export function repairsFailed({ model }: CompiledModel, { observations }: Facts): readonly number[] {
  const failed = new Set(observations.flatMap((seen) => triedBy(model, seen, false)));
  return model.repairs.flatMap(({ id }, index) => (failed.has(id) ? [index] : []));
}
