import { engineStates, type EngineState, type Model, type Test } from '../model/model.ts';

/** What has to be closed for a test, as access bits. */
export interface ClosedForTest {
  /** Closed before the engine is turned, cranked, run or driven, with all that stands on it. */
  readonly closes: number;
  /** While one of these is open the test cannot be done: the engine is apart. */
  readonly impossibleWith: number;
}

/** What has to be closed for a test: everything that leaves the engine less complete than the test needs, its own access aside. A drive needs
 * its own access closed too: what was changed behind it is refitted before.
 * @param accessClosure prerequisites of each access, itself included, as bits @param own those of the test's access */
export function closedForTest(
  { access }: Model,
  accessClosure: readonly number[],
  { engine }: Pick<Test, 'engine'>,
  own: number,
): ClosedForTest {
  const needed = rankOf(engine ?? 'apart');
  const kept = engine === 'driven' ? 0 : own;
  const bitsWhere = (holds: (left: number, at: number) => boolean): number =>
    access.reduce((bits, one, at) => (holds(rankOf(one.engine ?? 'driven'), at) ? bits | (1 << at) : bits), 0);
  const tooOpen = bitsWhere((left) => left < needed) & ~kept;
  return {
    closes: bitsWhere((_, at) => (accessClosure[at]! & tooOpen) !== 0),
    impossibleWith: bitsWhere((left) => left === 0 && needed > 0) & ~kept,
  };
}

function rankOf(state: EngineState): number {
  return engineStates.indexOf(state);
}
