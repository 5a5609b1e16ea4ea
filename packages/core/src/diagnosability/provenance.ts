import { jsonPointer } from '../errors/jsonPointer.ts';
import type { Model, Source } from '../model/model.ts';

/** How many numbers of a model are of one kind, and how many cases they are worth. */
export interface ProvenanceClass {
  readonly kind: Source['kind'];
  readonly numbers: number;
  readonly share: number;
}

/** A judgement that is worth few cases. */
export interface WeakJudgement {
  /** JSON Pointer of the quantity or row. */
  readonly path: string;
  readonly ess: number;
}

/** Share of a model's numbers per kind of source (a quantity is one number, a row one per entry), and the judgements worth fewer than
 * `few` cases, thinnest first. */
export function provenanceOf(
  model: Model,
  few: number,
): { readonly classes: readonly ProvenanceClass[]; readonly bare: readonly WeakJudgement[] } {
  const kindOf = new Map(model.sources.map(({ id, kind }) => [id, kind]));
  const counts = new Map<Source['kind'], number>();
  const bare: WeakJudgement[] = [];
  const walk = (value: unknown, path: readonly PropertyKey[]): void => {
    if (typeof value !== 'object' || value === null) return;
    const { source, ess, p } = value as Record<string, unknown>;
    const kind = typeof source === 'string' ? kindOf.get(source) : undefined;
    if (kind !== undefined) {
      const numbers = typeof p === 'object' && p !== null ? Object.keys(p).length : 1;
      counts.set(kind, (counts.get(kind) ?? 0) + numbers);
      if (kind === 'judgement' && typeof ess === 'number' && ess < few) bare.push({ path: jsonPointer(path), ess });
    }
    for (const [key, inner] of Object.entries(value)) walk(inner, [...path, key]);
  };
  walk(model, []);
  const total = [...counts.values()].reduce((sum, count) => sum + count, 0);
  return {
    classes: [...counts]
      .map(([kind, numbers]) => ({ kind, numbers, share: numbers / total }))
      .sort((a, b) => b.numbers - a.numbers),
    bare: bare.sort((a, b) => a.ess - b.ess),
  };
}
