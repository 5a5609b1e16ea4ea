import { describe, expect, test } from 'vitest';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { ModelError } from '../errors/modelError.ts';
import { makeNamesToday } from './makeNamesToday.ts';
import { parseModel } from './parseModel.ts';
import type { Renaming } from './renaming.ts';

function problemsOf(...renamed: unknown[]): string[] {
  try {
    parseModel({ ...pumpModel(), renamed });
    return [];
  } catch (error) {
    return (error as ModelError).problems.map(({ code, path }) => `${code} ${path}`);
  }
}

describe('renamings that cannot be meant are refused where they stand', () => {
  const toHum = { was: { test: 'noise' }, is: { test: 'hum' } };
  test.each<[string, unknown[], string[]]>([
    ['good ones', [toHum, { was: { cause: 'rust' } }], []],
    ['a target the model lacks', [{ ...toHum, is: { test: 'humm' } }], ['test-unknown /renamed/0/is/test']],
    [
      'an outcome the test lacks',
      [{ was: { test: 'noise', outcome: 'loud' }, is: { test: 'hum', outcome: 'loud' } }],
      ['outcome-unknown /renamed/0/is/outcome'],
    ],
    ['a name in use', [{ was: { test: 'vacuum' }, is: { test: 'hum' } }], ['renamed-in-use /renamed/0/was']],
    ['two fates of one name', [toHum, { was: { test: 'noise' } }], ['renamed-twice /renamed/1/was']],
    [
      'a circle',
      [
        { was: { cause: 'rust' }, is: { cause: 'decay' } },
        { was: { cause: 'decay' }, is: { cause: 'rust' } },
      ],
      ['renamed-circle /renamed/0/is'],
    ],
    [
      'a circle of an outcome through its test',
      [
        { was: { test: 'noise', outcome: 'loud' }, is: { test: 'sound', outcome: 'loud' } },
        { was: { test: 'sound' }, is: { test: 'noise' } },
      ],
      ['renamed-circle /renamed/0/is'],
    ],
    [
      'another kind',
      [{ was: { cause: 'rust' }, is: { repair: 'fit-fuse' } }],
      ['key-unknown /renamed/0/is/repair', 'value-missing /renamed/0/is/cause'],
    ],
    ['another model', [{ was: { model: 'pomp' }, is: { model: 'pumps' } }], ['model-unknown /renamed/0/is/model']],
  ])('%s', (_, renamed, expected) => {
    expect(problemsOf(...renamed).sort()).toEqual([...expected].sort());
  });
});

test('names are followed over several versions; what belongs to a renamed part goes with it', () => {
  const renamed: Renaming[] = [
    { was: { test: 'a', outcome: 'x' }, is: { test: 'a', outcome: 'y' } },
    { was: { test: 'a' }, is: { test: 'b' } },
    { was: { test: 'b', outcome: 'y' }, is: { test: 'b', outcomes: ['y1', 'y2'] } },
    { was: { test: 'b' }, is: { test: 'c' } },
    { was: { test: 'c', outcome: 'y2' }, is: { test: 'd', outcome: 'z' } },
    { was: { feature: 'f' } },
    { was: { feature: 'f', value: 'v' }, is: { feature: 'g', value: 'w' } },
  ];
  const today = makeNamesToday({ renamed });
  expect(today({ test: 'a', outcome: 'x' })).toEqual([
    { test: 'c', outcome: 'y1' },
    { test: 'd', outcome: 'z' },
  ]);
  expect(today({ test: 'a', reading: 'm' })).toEqual([{ test: 'c', reading: 'm' }]);
  expect(today({ feature: 'f', value: 'v' })).toEqual([{ feature: 'g', value: 'w' }]);
  expect(today({ feature: 'f', value: 'u' })).toEqual([]);
  expect(today({ repair: 'p' })).toEqual([{ repair: 'p' }]);
});

test('names that divide and join again a thousand times are followed in no time', () => {
  const renamed = Array.from({ length: 1000 }, (_, at): Renaming[] => [
    { was: { test: 't', outcome: `o${at}` }, is: { test: 't', outcomes: [`a${at}`, `b${at}`] } },
    { was: { test: 't', outcome: `a${at}` }, is: { test: 't', outcome: `o${at + 1}` } },
    { was: { test: 't', outcome: `b${at}` }, is: { test: 't', outcome: `o${at + 1}` } },
  ]).flat();
  expect(makeNamesToday({ renamed })({ test: 't', outcome: 'o0' })).toEqual([{ test: 't', outcome: 'o1000' }]);
});
