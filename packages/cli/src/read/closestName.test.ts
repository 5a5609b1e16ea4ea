import { expect, test } from 'vitest';
import { closestName } from './closestName.ts';

const demos = ['demo-01', 'demo-07', 'demo-10', 'demo-12'];

test.each([
  ['demo7', 'demo-07'],
  ['demo10', 'demo-10'],
  ['Demo-07', 'demo-07'],
  ['dem-12', 'demo-12'],
  ['engine', undefined],
])('%s is %s', (given, meant) => expect(closestName(given, demos)).toBe(meant));
