import { expect, test } from 'vitest';
import { readNumbers } from './readNumbers.ts';

const values = (text: string): unknown => {
  const read = readNumbers(text);
  if (read.kind === 'problem') return expect.fail(read.message);
  return [
    read.numbers.map(({ value, name }) => (name === undefined ? (value ?? '-') : [name, value ?? '-'])),
    read.unit,
  ];
};

test.each([
  ['12.4 12.1 9.2 12.5 bar', [[12.4, 12.1, 9.2, 12.5], 'bar']],
  ['12,4 12,1 - 12,5 bar', [[12.4, 12.1, '-', 12.5], 'bar']],
  ['12.4, 12.1, 9.2', [[12.4, 12.1, 9.2], undefined]],
  ['12.4bar 178 bar', [[12.4, 178], 'bar']],
  [
    '3: 9.2 bar; 4: 12.5',
    [
      [
        ['3', 9.2],
        ['4', 12.5],
      ],
      'bar',
    ],
  ],
  [
    '1=0.7 2=0.71 maker=0.7 ohm',
    [
      [
        ['1', 0.7],
        ['2', 0.71],
        ['maker', 0.7],
      ],
      'ohm',
    ],
  ],
  ['-18 in Hg', [[-18], 'in Hg']],
  ['−6.5 +3 %', [[-6.5, 3], '%']],
  ['5°', [[5], '°']],
  ['11.5 deg cam', [[11.5], 'deg cam']],
  ['0,250 in', [[0.25], 'in']],
  ['640 1/min', [[640], 'rpm']],
  ['3000 revolutions', [[3000], 'revolutions']],
  ['', [[], undefined]],
])('%s', (text, read) => {
  expect(values(text)).toEqual(read);
});

test.each([
  ['3,000 revolutions', 'write 3000, or 3.000'],
  ['12,13,14', 'put spaces between'],
  ['12 bar 170 psi', 'one unit for all numbers, not bar and psi'],
  ['bar 12', "found 'bar 12'"],
  ['12 ++3', "found '++3'"],
])('%s is not guessed at', (text, message) => {
  expect(readNumbers(text)).toMatchObject({ kind: 'problem', message: expect.stringContaining(message) });
});
