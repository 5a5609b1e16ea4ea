import { firstMatches, type FirstMatches, type Parents } from './firstMatches.ts';
import type { ConditionalRow } from '../model/row.ts';

/** First matches of a test that asks whether the fault is still there (`persists` names that outcome). Two causes at once: of the two
 * rows that would apply to either alone, the one under which it is likelier still there. */
export function persistingMatches(parents: Parents, rows: readonly ConditionalRow[], persists: string): FirstMatches {
  const asIf = (member: 0 | 1): FirstMatches =>
    firstMatches(
      parents.map(({ id, states }) => ({
        id,
        states: states
          .map((ids) => ids.slice(member, member + 1))
          .map((own, at) => (own.length > 0 ? own : states[at]!)),
      })),
      rows,
    );
  const [first, second] = [asIf(0), asIf(1)];
  const stays = (row: number): number => rows[row]!.p[persists] ?? 0;
  return {
    parents: first.parents,
    rowOf: first.rowOf.map((row, at) => (stays(second.rowOf[at]!) > stays(row) ? second.rowOf[at]! : row)),
  };
}
