import { accessBits } from '../cost/accessBits.ts';
import { circumstancesOf } from './circumstancesOf.ts';
import { type Cost, makeTariff, priceOf } from '../cost/tariff.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import type { Price } from '../cost/price.ts';
import { applyEvent } from './applyEvent.ts';
import type { CaseEvent, ObservationRetracted } from './caseEvent.ts';
import { caseState, type Session } from './session.ts';

/** What a case has cost, step by step. */
export interface CaseCosts {
  /** One per observation, in the order they were made. A repair comes with its check. */
  readonly steps: readonly { readonly observation: string; readonly price: Price }[];
  readonly total: Price;
}

/** What the tests and repairs on record cost, at the prices and for the car of the case now. Access is charged to the step that needed it
 * first and not again until it is closed; what was opened by hand, to the first step that used it. Observations taken back cost nothing:
 * they count as never made.
 * @example costsSoFar(compiled, session).steps.map(({ observation }) => observation) // ['one', 'two'] */
export function costsSoFar(compiled: CompiledModel, session: Session): CaseCosts {
  const final = caseState(session);
  const tariff = makeTariff(compiled, circumstancesOf(compiled, final).prices, final.context);
  const { tests, repairs } = compiled.model;
  const onRecord = new Set(final.observations.map(({ id }) => id));
  let walked = session.start;
  let paid = 0;
  const made: { observation: string; cost: Cost }[] = [];
  for (const event of session.content.events) {
    if (!stands(event, onRecord)) continue;
    if (event.kind === 'result-recorded') {
      const index = tests.findIndex(({ id }) => id === event.test);
      made.push({ observation: event.id, cost: tariff.test(index, paid) });
      paid |= tariff.testAccess[index] ?? 0;
    } else if (event.kind === 'repair-tried') {
      const index = repairs.findIndex(({ id }) => id === event.repair);
      made.push({ observation: event.id, cost: sum([tariff.repair(index, paid), tariff.check]) });
    }
    walked = applyEvent(compiled, walked, event);
    paid &= accessBits(compiled, walked.openAccess);
  }
  return {
    steps: made.map(({ observation, cost }) => ({ observation, price: priceOf(tariff, cost) })),
    total: priceOf(tariff, sum(made.map(({ cost }) => cost))),
  };
}

function stands(event: CaseEvent, onRecord: ReadonlySet<string>): event is Exclude<CaseEvent, ObservationRetracted> {
  if (event.kind === 'result-recorded' || event.kind === 'repair-tried') return onRecord.has(event.id);
  return event.kind !== 'observation-retracted';
}

function sum(costs: readonly Cost[]): Cost {
  return costs.reduce(
    (all, one) => ({
      total: all.total + one.total,
      access: all.access + one.access,
      parts: all.parts + one.parts,
      minutes: all.minutes + one.minutes,
    }),
    { total: 0, access: 0, parts: 0, minutes: 0 },
  );
}
