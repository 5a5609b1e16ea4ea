import { needlessIn } from './needlessOpenings.ts';
import type { RepairFacts } from './repairFacts.ts';

/** What each repair costs from one state of access on. */
export interface RepairCosts {
  readonly price: Float64Array;
  /** repair -> kind of cause -> what its openings count for beyond their price; the same list where as much is opened. */
  readonly needless: readonly (Float64Array | undefined)[];
}

/** Causes by what they need. */
export interface KindsOfCauses {
  /** cause -> its kind. */
  readonly kindOf: Int32Array;
  /** kind -> one cause of it. */
  readonly kinds: readonly number[];
}

/** Causes that need the same of what counts as opening the engine, with one cause of each kind; one kind of all where no opening counts. */
export function kindsOfCauses({ needless }: RepairFacts): KindsOfCauses {
  const { amount, neededBy, opens } = needless;
  if (amount === 0 || opens === 0) return { kindOf: new Int32Array(neededBy.length), kinds: [0] };
  const kindAt = new Map<number, number>();
  const kinds: number[] = [];
  const kindOf = neededBy.map((bits, cause) => {
    const kind = kindAt.get(bits) ?? kinds.push(cause) - 1;
    kindAt.set(bits, kind);
    return kind;
  });
  return { kindOf, kinds };
}

/** What each repair costs from this state of access on. @param closed the same from a closed engine, whose lists are used again */
export function costsFrom(
  facts: RepairFacts,
  kinds: readonly number[],
  open: number,
  closed?: RepairCosts,
): RepairCosts {
  const { cures, access, needless, costFrom } = facts;
  const { amount, opens } = needless;
  return {
    price: Float64Array.from(cures, (_, index) => costFrom(index, open)),
    needless: cures.map((_, index) => {
      const opened = access[index]! & ~open & opens;
      if (amount === 0 || opened === 0) return undefined;
      if (opened === (access[index]! & opens) && closed !== undefined) return closed.needless[index];
      return Float64Array.from(kinds, (cause) => amount * needlessIn(needless, opened, cause));
    }),
  };
}
