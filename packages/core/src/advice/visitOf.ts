import type { CompiledModel } from '../compiled/compiledModel.ts';
import { type Tariff } from '../cost/tariff.ts';
import { openAfterTest } from '../problem/openAfterTest.ts';
import type { Money } from '../cost/money.ts';
import type { ProposedTest } from '../steps/proposedTest.ts';
import type { Step } from '../steps/step.ts';
import type { StepFacts } from '../steps/stepFacts.ts';

/** Tests that share an opening or a set-up, done in one go. */
export interface Visit {
  /** In the order in which they are done: each finds open what those before it opened. */
  readonly tests: readonly ProposedTest[];
  /** Price of all of them together, what is shared paid once. */
  readonly price: Money;
  readonly minutes: number;
}

/** A test that could be done in one go with another. */
export interface VisitCandidate {
  readonly test: string;
  readonly index: number;
  /** What knowing the result saves, before any price. */
  readonly grossValue: number;
}

/** Everything to be done in one go with a test: tests behind what it opens, what it is set up on or what it closes (the scan tool connected: the
 * stored codes; the plug out: its face, before it goes in again), which open nothing more and close nothing that the others need. A look of a few minutes is never left out;
 * anything longer is there where it saves more than it costs beside the others. `undefined` when there is nothing else.
 * @param quick minutes of a look that needs no weighing */
export function visitOf(
  compiled: CompiledModel,
  tariff: Tariff,
  factsOf: (step: Step, open: number) => StepFacts,
  open: number,
  first: VisitCandidate,
  others: readonly VisitCandidate[],
  quick: number,
): Visit | undefined {
  const { access } = compiled.model;
  // access without work of its own is no set-up
  const work = access.reduce(
    (bits, { openMinutes, closeMinutes }, at) => (openMinutes.best + closeMinutes.best > 0 ? bits | (1 << at) : bits),
    0,
  );
  const needs = ({ index }: VisitCandidate): number => tariff.testAccess[index]! & work;
  const closes = ({ index }: VisitCandidate): number => tariff.closedForTest[index]!.closes;
  // what it closes is looked at before
  const setUp = needs(first) | (closes(first) & open & work);
  const opened = open | setUp;
  const mates = others.filter((other) => {
    if ((needs(other) & setUp) === 0 || (needs(other) & ~opened) !== 0 || (closes(other) & opened) !== 0) return false;
    const beside = tariff.test(other.index, opened);
    return other.grossValue > beside.total || beside.minutes <= quick;
  });
  if (mates.length === 0) return undefined;
  const minutes = ({ index }: VisitCandidate): number => tariff.test(index, opened).minutes;
  const ordered = [...mates, first].sort(
    (a, b) =>
      // what closes the set-up comes last
      Number((closes(a) & setUp) !== 0) - Number((closes(b) & setUp) !== 0) ||
      minutes(a) - minutes(b) ||
      b.grossValue - a.grossValue,
  );
  let openNow = open;
  let money = 0;
  let time = 0;
  const tests = ordered.map(({ test, index }): ProposedTest => {
    const facts = factsOf({ kind: 'test', test }, openNow);
    money += facts.price.amount;
    time += facts.minutes;
    openNow = openAfterTest(tariff, index, openNow);
    return { test, ...facts };
  });
  return { tests, price: { amount: money, currency: tariff.prices.currency }, minutes: time };
}
