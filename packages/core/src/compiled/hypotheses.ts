import type { Model } from '../model/model.ts';

/** A set of causes that may be behind the fault together: one, or two. */
export interface Hypothesis {
  /** Id of the cause, or both ids joined by ` + ` in the model's order. */
  readonly id: string;
  /** Indices of its causes. */
  readonly members: readonly number[];
}

/** Every hypothesis of at most `atMost` causes: single causes first, in the model's order, then pairs. `not-listed` is in no pair: it
 * stands for two causes already. */
export function hypothesesOf(model: Model, atMost: 1 | 2): readonly Hypothesis[] {
  const singles = model.causes.map(({ id }, at): Hypothesis => ({ id, members: [at] }));
  if (atMost === 1) return singles;
  const listed = singles.filter(({ id }) => id !== 'not-listed');
  const pairs = listed.flatMap((a, at) =>
    listed.slice(at + 1).map((b): Hypothesis => ({ id: `${a.id} + ${b.id}`, members: [...a.members, ...b.members] })),
  );
  return [...singles, ...pairs];
}
