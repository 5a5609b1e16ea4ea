import { misfire } from '@faultodds/misfire';
import { expect, test } from 'vitest';
import { parseModel } from '../../model/parseModel.ts';
import { german } from '../languages/de/german.ts';
import { english } from '../languages/english.ts';
import { describeCodeRemark } from './describeCodeRemark.ts';
import { describeReadingRemark } from './describeReadingRemark.ts';
import { describeUnusedCode } from './describeUnusedCode.ts';

const model = parseModel(misfire);

test('an unused code has its status, its meaning and the reason', () => {
  const meaning = { kind: 'misfire', cylinder: 4 } as const;
  const code = { code: 'P0304', status: 'pending' } as const;
  expect(describeUnusedCode({ code, meaning, reason: 'other-cylinder' }, english)).toBe(
    'P0304 pending (misfire of cylinder 4): about another cylinder',
  );
  expect(describeUnusedCode({ code: { ...code, status: 'stored' }, meaning, reason: 'other-cylinder' }, german)).toBe(
    'P0304 (Aussetzer, Zylinder 4): betrifft einen anderen Zylinder',
  );
});

test('remarks on a list name its codes', () => {
  expect(describeCodeRemark({ kind: 'suspect-not-named', codes: ['P0302', 'P0304'] }, english)).toBe(
    'P0302, P0304 name other cylinders and none names this one: is it the right one?',
  );
  expect(describeCodeRemark({ kind: 'counts-doubtful', codes: ['P0315'] }, german)).toMatch(/^P0315: Das Kurbelwellen/);
});

test('remarks on a reading name what they are about', () => {
  const say = (remark: Parameters<typeof describeReadingRemark>[2]): string =>
    describeReadingRemark(model, 'cranking-compression', remark, english);
  expect(say({ kind: 'set-aside', cylinders: ['2', '5'] })).toBe(
    'Left out of the comparison, because far above the others or 0: cylinder 2, 5.',
  );
  const outcome = model.tests.find(({ id }) => id === 'cranking-compression')!.outcomes[0]!;
  expect(say({ kind: 'beyond-range', outcome: outcome.id })).toBe(
    `Beyond the usual range: it counts as “${outcome.label}”.`,
  );
  expect(say({ kind: 'beyond-range' })).toBe('Outside the range that the model covers: it has no effect.');
  expect(say({ kind: 'elsewhere' })).toContain('Another cylinder misfires');
  expect(say({ kind: 'exposure-unknown' })).toContain('only the shares');
});
