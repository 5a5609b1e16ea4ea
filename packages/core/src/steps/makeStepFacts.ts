import { accessBits, accessIds } from '../cost/accessBits.ts';
import { moneyOf, type Cost, type Tariff } from '../cost/tariff.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { hazards } from '../model/model.ts';
import type { Step } from './step.ts';
import type { StepFacts } from './stepFacts.ts';

/** Makes the one function that says what a step costs, opens, closes and can do to somebody, at this tariff and with this much access
 * open (as bits). Everything that names a step asks it.
 *
 * - Cautions are those of the step, those of the access it opens, those of open access it works behind that hold as long as it is open,
 *   and those of closing what it closes.
 * - A test that needs the engine more complete than it is closes what is in its way first.
 * - A repair and a drive end with a closed engine, so they close everything that is open.
 * - Opening and closing share what an access costs: labour by the time of each, gaskets with the closing. */
export function makeStepFacts(compiled: CompiledModel, tariff: Tariff): (step: Step, open: number) => StepFacts {
  const { model } = compiled;
  const gravest = hazards.flatMap((hazard) => model.cautions.filter((one) => one.hazard === hazard));
  const rank = new Map(gravest.map(({ id }, at) => [id, at]));
  const stays = new Set(model.cautions.flatMap(({ id, staysWhileOpen }) => (staysWhileOpen === true ? [id] : [])));
  const over = (bits: number): typeof model.access => model.access.filter((_, at) => (bits & (1 << at)) !== 0);
  // access without work of its own ("no dismantling") is nothing to open
  const work = model.access.reduce(
    (bits, { openMinutes, closeMinutes }, at) => (openMinutes.best + closeMinutes.best > 0 ? bits | (1 << at) : bits),
    0,
  );

  const facts = (
    cost: Cost,
    stepCautions: readonly string[],
    needed: number,
    closing: number,
    open: number,
  ): StepFacts => {
    const opening = needed & ~open;
    const cautions = new Set([
      ...stepCautions,
      ...over(opening).flatMap((access) => access.cautions),
      ...over(needed & open).flatMap((access) => access.cautions.filter((id) => stays.has(id))),
      ...over(closing).flatMap((access) => access.cautionsClosing),
    ]);
    return {
      price: moneyOf(tariff, cost.total),
      minutes: cost.minutes,
      accessToOpen: accessIds(compiled, opening & work),
      accessToClose: accessIds(compiled, closing & work).toReversed(),
      cautions: [...cautions].sort((a, b) => rank.get(a)! - rank.get(b)!),
    };
  };

  return (step, open) => {
    switch (step.kind) {
      case 'test': {
        const { index, test } = compiled.tests.get(step.test)!;
        const needed = tariff.testAccess[index]!;
        const closed = tariff.closedForTest[index]!.closes & (open | needed);
        return facts(tariff.test(index, open), test.cautions, needed, (needed & ~open) | closed, open);
      }
      case 'repair':
      case 'proved-repair': {
        const index = model.repairs.findIndex(({ id }) => id === step.repair);
        const needed = tariff.repairAccess[index]!;
        const { cautions } = model.repairs[index]!;
        const alone = tariff.repair(index, open);
        if (step.kind === 'repair') return facts(alone, cautions, needed, needed | open, open);
        const total = alone.total + tariff.check.total;
        const both = { ...alone, total, minutes: alone.minutes + tariff.check.minutes };
        return facts(both, [...cautions, ...model.verification.cautions], needed, needed | open, open);
      }
      case 'open-access': {
        const needed = accessBits(compiled, [step.access]);
        return facts(tariff.opening(needed & ~open), [], needed, 0, open);
      }
      case 'close-access': {
        const bit = accessBits(compiled, [step.access]);
        const target = compiled.accessBit.get(step.access)!;
        // what stands on it is closed before it
        const closing = model.access.reduce(
          (bits, _, at) => ((compiled.accessClosure[at]! & target) === 0 ? bits : bits | (1 << at)),
          0,
        );
        return facts(tariff.closing(closing & open), [], bit & open, closing & open, open);
      }
      case 'proof-drive':
        return facts(tariff.check, model.verification.cautions, 0, open, open);
    }
  };
}
