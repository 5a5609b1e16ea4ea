import { describe, expect, test } from 'vitest';
import { pumpModel } from '../../../../tests/fixtures/pumpModel.ts';
import { results } from '../../../../tests/fixtures/results.ts';
import { smallModel } from '../../../../tests/fixtures/smallModel.ts';
import { rankCauses } from '../belief/rankCauses.ts';
import { changeNumber } from '../compiled/changeNumber.ts';
import type { CompiledModel } from '../compiled/compiledModel.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { rangeOfProbability } from '../distributions/rangeOfProbability.ts';
import type { Context, Facts } from '../evidence/facts.ts';
import type { Observation } from '../evidence/observation.ts';
import type { Model } from '../model/model.ts';
import { parseModel } from '../model/parseModel.ts';
import { jointLines } from './jointLines.ts';

const facts = (observations: readonly Observation[], context: Context = {}): Facts => ({ context, observations });
const pathsOf = (of: CompiledModel, given: Facts, start: string): readonly string[] =>
  jointLines(of, given).flatMap(({ path }) => (path.startsWith(start) ? [path] : []));

describe('three to one, a test that says yes with 0.9 and 0.2, and says yes', () => {
  const compiled = compileModel(
    smallModel({ causes: { a: 3, b: 1 }, tests: { t: { p: { a: { yes: 0.9, no: 0.1 }, b: { yes: 0.2, no: 0.8 } } } } }),
  );
  const lines = jointLines(compiled, facts(results(['t', 'yes'])));
  const lineOf = (path: string) => lines.find((line) => line.path === path)!;
  // 0.75 * 0.9 to 0.25 * 0.2; the cause that is not listed weighs nothing
  const [a, b] = [0.675 / 0.725, 0.05 / 0.725];
  const expectLine = (path: string, constants: readonly number[], slopes: readonly number[]): void => {
    const line = lineOf(path);
    constants.forEach((value, c) => expect(line.constants[c], `constant ${c}`).toBeCloseTo(value, 13));
    slopes.forEach((value, c) => expect(line.slopes[c], `slope ${c}`).toBeCloseTo(value, 13));
  };

  test('a weight moves its own cause in proportion and no other', () => {
    expectLine('/causes/1/weight/best', [0, 0, b], [0, a / 3, 0]);
    expectLine('/causes/2/weight/best', [0, a, 0], [0, 0, b]);
    expect(lineOf('/causes/1/weight/best')).toMatchObject({ value: 3, low: 3, high: 3, unbounded: true });
  });

  test('so does the entry of the row that applied', () => {
    expectLine('/tests/0/rows/1/p/yes', [0, 0, b], [0, a / 0.9, 0]);
    expectLine('/tests/0/rows/2/p/yes', [0, a, 0], [0, 0, b / 0.2]);
    const [low, high] = rangeOfProbability(0.9, 1);
    expect(lineOf('/tests/0/rows/1/p/yes')).toMatchObject({ value: 0.9, low, high, unbounded: false });
  });

  test('a row that applies to nothing moves nothing', () => {
    expectLine('/tests/0/rows/0/p/yes', [0, a, b], [0, 0, 0]);
    expectLine('/tests/0/rows/3/p/yes', [0, a, b], [0, 0, 0]);
  });

  test('a cause that cannot be has no line of its weight; entries of what was not seen have none', () => {
    expect(lines.map(({ path }) => path)).toEqual([
      '/causes/1/weight/best',
      '/causes/2/weight/best',
      ...[0, 1, 2, 3].map((row) => `/tests/0/rows/${row}/p/yes`),
    ]);
  });
});

const pump = pumpModel();
const row = (p: Record<string, number>) => ({ p, ess: 20, source: 'judgement' });
/** The pump with a gauge at its outlet, which follows the flow and, without it, the drive. */
const withOutlet: Model = {
  ...pump,
  mechanisms: [
    ...pump.mechanisms,
    {
      id: 'outlet',
      label: 'Outlet',
      parents: ['flow', 'drive'],
      states: [
        { id: 'running', label: 'running' },
        { id: 'dripping', label: 'dripping' },
        { id: 'dry', label: 'dry' },
      ],
      rows: [
        { when: { flow: ['full'], drive: ['turning'] }, ...row({ running: 0.8, dripping: 0.15, dry: 0.05 }) },
        { when: { drive: ['turning'] }, ...row({ running: 0.1, dripping: 0.6, dry: 0.3 }) },
        { when: {}, ...row({ running: 0.01, dripping: 0.09, dry: 0.9 }) },
      ],
    },
  ],
  tests: [
    ...pump.tests,
    {
      ...pump.tests[0]!,
      id: 'outlet-look',
      label: 'Look at the outlet',
      rows: [
        { when: { outlet: ['running'] }, ...row({ hums: 0.7, silent: 0.3 }) },
        { when: { outlet: ['dripping'] }, ...row({ hums: 0.4, silent: 0.6 }) },
        { when: {}, ...row({ hums: 0.1, silent: 0.9 }) },
      ],
    },
  ],
};
const compiled = compileModel(parseModel(withOutlet));

/** Every line against the ranking recomputed with the number changed, the rest of its row in proportion. */
function expectExact(of: CompiledModel, given: Facts, start = ''): void {
  const lines = jointLines(of, given).filter(({ path }) => path.startsWith(start));
  expect(lines.length).toBeGreaterThan(0);
  for (const { path, value, unbounded, constants, slopes } of lines) {
    expect(unbounded, path).toBe(path.endsWith('/weight/best') || path.includes('/multipliers/'));
    for (const x of [value, unbounded ? 1.3 * value : (1 + value) / 3]) {
      const joint = constants.map((constant, c) => constant + slopes[c]! * x);
      const sum = joint.reduce((all, p) => all + p, 0);
      const { posterior } = rankCauses(changeNumber(of, path, x), given);
      of.causes.forEach((cause, c) =>
        expect(joint[c]! / sum, `${path} at ${x}: ${cause}`).toBeCloseTo(posterior[cause]!, 11),
      );
      if (x === value) expect(sum, `${path} as it is`).toBeCloseTo(1, 12);
    }
  }
}

test('every line is what recomputing with the changed number gives', () => {
  const given = facts(results(['hum', 'silent'], ['vacuum', 'weak', 'unknown'], ['fuse-look', 'whole']), {
    filter: 'fitted',
  });
  expectExact(compiled, given);
  for (const start of ['/causes', '/context', '/mechanisms/0/background', '/mechanisms/2/rows', '/tests'])
    expect(pathsOf(compiled, given, start).length, start).toBeGreaterThan(0);
});

test('rows of a mechanism that depends on mechanisms have a line for each state', () => {
  const given = facts(results(['outlet-look', 'silent'], ['hum', 'hums']));
  expect(pathsOf(compiled, given, '/mechanisms/2')).toEqual(
    [0, 1, 2].flatMap((r) => ['running', 'dripping', 'dry'].map((state) => `/mechanisms/2/rows/${r}/p/${state}`)),
  );
  expectExact(compiled, given, '/mechanisms/2');
});

describe('a mechanism of the causes', () => {
  test('has the rows of causes that have their own, then the background of all others', () => {
    expect(pathsOf(compiled, facts([]), '/mechanisms')).toEqual([
      ...['turning', 'standing'].map((state) => `/mechanisms/0/background/p/${state}`),
      ...['full', 'poor'].map((state) => `/mechanisms/1/background/p/${state}`),
      ...pathsOf(compiled, facts([]), '/mechanisms/2'),
    ]);
    expect(pathsOf(compiled, facts([]), '/causes').filter((path) => path.includes('/states/'))).toEqual([
      ...[0, 1].flatMap((c) => ['turning', 'standing'].map((state) => `/causes/${c}/states/drive/p/${state}`)),
      ...[2, 3, 4].flatMap((c) => ['full', 'poor'].map((state) => `/causes/${c}/states/flow/p/${state}`)),
    ]);
  });

  test('without evidence its rows move nothing', () => {
    for (const { path, slopes } of jointLines(compiled, facts([])))
      if (path.includes('/p/')) for (const slope of slopes) expect(slope, path).toBeCloseTo(0, 13);
  });

  test('no line is of a cause that the intake ruled out', () => {
    const none = facts([], { 'suction-hose': 'none' });
    expect(pathsOf(compiled, none, '/causes/2')).toEqual([]);
    expect(pathsOf(compiled, none, '/context')).toEqual([]);
  });
});

describe('a multiplier of the intake', () => {
  const given = facts([], { filter: 'fitted' });

  test('is a factor of its cause while its product is within the cap', () => {
    const [line] = jointLines(compiled, given).filter(({ path }) => path.startsWith('/context'));
    expect(line).toMatchObject({ path: '/context/1/values/0/multipliers/clogged/best', value: 2, low: 1, high: 4 });
    // 180 * 2 beside 400 + 150 + 250 + 20
    expect(line!.slopes[3]).toBeCloseTo(360 / 1180 / 2, 13);
    expect(line!.constants[3]).toBe(0);
    expect(line!.constants[0]).toBeCloseTo(400 / 1180, 13);
    expect([0, 1, 2, 4].map((c) => line!.slopes[c])).toEqual([0, 0, 0, 0]);
  });

  test('moves nothing where the cap holds, and has no line', () => {
    const capped = (low: number, high: number) =>
      compileModel({ ...withOutlet, contextCap: { ...withOutlet.contextCap, low, high } });
    expect(pathsOf(capped(0.02, 2.1), given, '/context')).toHaveLength(1);
    expect(pathsOf(capped(0.02, 2), given, '/context')).toEqual([]);
    expect(pathsOf(capped(2, 50), given, '/context')).toEqual([]);
  });

  test('counts with the other multipliers of the same cause', () => {
    // 2 * 3 = 6
    const [hose, filter] = withOutlet.context;
    const [fitted, none] = hose!.values;
    const three = { best: 3, low: 2, high: 4, ess: 5, source: 'judgement' };
    const twice = (high: number) =>
      compileModel({
        ...withOutlet,
        contextCap: { ...withOutlet.contextCap, high },
        context: [{ ...hose!, values: [{ ...fitted!, multipliers: { clogged: three } }, none!] }, filter!],
      });
    const both = facts([], { filter: 'fitted', 'suction-hose': 'fitted' });
    expect(pathsOf(twice(50), both, '/context')).toHaveLength(2);
    expectExact(twice(50), both, '/context');
    expect(pathsOf(twice(5), both, '/context')).toEqual([]);
  });
});

describe('rows of a test', () => {
  test('have lines when it was run once and the fault was there', () => {
    expect(pathsOf(compiled, facts(results(['hum', 'silent'])), '/tests')).toEqual([
      '/tests/0/rows/0/p/silent',
      '/tests/0/rows/1/p/silent',
    ]);
  });

  test('have none when the fault was away, unless the test does not need it', () => {
    expect(pathsOf(compiled, facts(results(['hum', 'silent', 'no'])), '/tests')).toEqual([]);
    const fuse = facts(results(['fuse-look', 'whole', 'no']));
    expect(pathsOf(compiled, fuse, '/tests')).toHaveLength(2);
    expectExact(compiled, fuse, '/tests');
  });

  test('of which nobody knows whether the fault was there, are the last row’s for the share it was away', () => {
    expectExact(compiled, facts(results(['hum', 'silent', 'unknown'])), '/tests');
    expectExact(compiled, facts(results(['hum', 'silent', 'unknown'], ['vacuum', 'weak'])), '/tests');
  });

  test('have none when it was run twice, for they are not linear then', () => {
    expect(pathsOf(compiled, facts(results(['hum', 'silent'], ['hum', 'silent'])), '/tests')).toEqual([]);
    expect(
      pathsOf(compiled, facts(results(['hum', 'silent'], ['vacuum', 'weak'], ['hum', 'silent'])), '/tests'),
    ).toEqual(['/tests/1/rows/0/p/weak', '/tests/1/rows/1/p/weak']);
  });

  test('have none for a likelihood, of which no single number of the row is the measure', () => {
    const vague: Observation = { kind: 'result', id: 'r', test: 'hum', likelihood: { hums: 1, silent: 3 } };
    expect(pathsOf(compiled, facts([vague]), '/tests')).toEqual([]);
  });

  test('are asked by a repair that answers their question: cured is one outcome, not cured the other', () => {
    const asking = compileModel(
      parseModel({
        ...withOutlet,
        repairs: withOutlet.repairs.map((one) =>
          one.id === 'fit-fuse' ? { ...one, sameAs: { test: 'fuse-look', cured: 'blown', notCured: 'whole' } } : one,
        ),
      }),
    );
    for (const [cured, outcome] of [
      [true, 'blown'],
      [false, 'whole'],
    ] as const) {
      const tried = facts([{ kind: 'repair-tried', id: 'x', repair: 'fit-fuse', cured }]);
      expect(pathsOf(asking, tried, '/tests')).toEqual([0, 1].map((r) => `/tests/2/rows/${r}/p/${outcome}`));
      expectExact(asking, tried, '/tests');
    }
  });
});

test('a repair that failed has its lines at the end', () => {
  const tried = facts([{ kind: 'repair-tried', id: 'x', repair: 'fit-fuse', cured: false }]);
  expect(
    jointLines(compiled, tried)
      .slice(-2)
      .map(({ path }) => path),
  ).toEqual(['/repairs/0/cures/fuse-blown/best', '/goneWithoutCure/best']);
  expect(pathsOf(compiled, tried, '/tests')).toEqual([]);
});
