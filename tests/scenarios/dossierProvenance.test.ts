// The README of priors/ says how many numbers come from where; this recounts them.
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseModel } from '@faultodds/core';
import { misfire } from '@faultodds/misfire';

const CLASSES = {
  judgement: 'judgement',
  'common-practice': 'common practice',
  published: 'published',
  definition: 'true by definition',
};
const COLUMNS = ['quantities', 'rows', 'probabilities', 'readings', 'facts'] as const;

const model = parseModel(misfire);
const kinds = new Map(model.sources.map(({ id, kind }) => [id, kind]));

/** Adds one for every quantity, row, reading distribution and sourced fact below `value`. */
function count(value: unknown, add: (source: string, column: (typeof COLUMNS)[number], amount: number) => void): void {
  if (typeof value !== 'object' || value === null) return;
  const { source, p } = value as { source?: unknown; p?: object };
  if (typeof source === 'string') {
    if ('best' in value) add(source, 'quantities', 1);
    else if (p !== undefined) {
      add(source, 'rows', 1);
      add(source, 'probabilities', Object.keys(p).length);
    } else add(source, 'family' in value ? 'readings' : 'facts', 1);
  }
  for (const inner of Object.values(value)) count(inner, add);
}

test('the counts of numbers by provenance in the README of the priors are those of the files', () => {
  const totals = new Map<string, number>();
  count(model, (source, column, amount) => {
    const key = `${kinds.get(source)} ${column}`;
    totals.set(key, (totals.get(key) ?? 0) + amount);
  });
  const readme = readFileSync(new URL('../../priors/README.md', import.meta.url), 'utf8');
  for (const [kind, name] of Object.entries(CLASSES)) {
    const cells = COLUMNS.map((column) => totals.get(`${kind} ${column}`) ?? 0);
    expect(readme).toContain(`| ${[name, ...cells].join(' | ')} |`);
  }
});
