import { describe, expect, test } from 'vitest';
import { compileNetwork, defineNetwork } from '../index.ts';
import { QueryError, sensitivityFunction } from '../entries/analysis.ts';

// Russell & Norvig, Artificial Intelligence: the burglary network
const compiled = compileNetwork(
  defineNetwork({
    variables: [
      { name: 'B', states: ['yes', 'no'], table: [0.001, 0.999] },
      { name: 'E', states: ['yes', 'no'], table: [0.002, 0.998] },
      {
        name: 'A',
        states: ['yes', 'no'],
        parents: ['B', 'E'],
        table: [0.95, 0.05, 0.94, 0.06, 0.29, 0.71, 0.001, 0.999],
      },
      { name: 'J', states: ['yes', 'no'], parents: ['A'], table: [0.9, 0.1, 0.05, 0.95] },
      { name: 'M', states: ['yes', 'no'], parents: ['A'], table: [0.7, 0.3, 0.01, 0.99] },
    ],
  }),
);
const evidence = { J: 'yes', M: 'yes' };
const query = { variable: 'B', state: 'yes' };
const at = (f: ReturnType<typeof sensitivityFunction>, t: number): number =>
  (f.numerator.slope * t + f.numerator.intercept) / (f.denominator.slope * t + f.denominator.intercept);

describe('a posterior as a function of one number (form: Laskey 1995; Coupe & van der Gaag 2002; coefficients recomputed)', () => {
  test('of P(B): k1 t / ((k1 - k0) t + k0)', () => {
    const f = sensitivityFunction(compiled, evidence, query, { variable: 'B', state: 'yes' });
    const [k1, k0] = [0.59224259, 0.001493351];
    const scale = f.denominator.intercept / k0;
    expect(f.numerator.slope / scale).toBeCloseTo(k1, 12);
    expect(f.numerator.intercept).toBeCloseTo(0, 12);
    expect(f.denominator.slope / scale).toBeCloseTo(k1 - k0, 12);
    expect(at(f, 0.001)).toBeCloseTo(0.2841718353643929, 13);
    expect(f.valueForPosterior(0.5)).toBeCloseTo(0.0025151770288401663, 13);
  });

  test('of P(A | no B, no E): no value in [0, 1] lifts the posterior to one half', () => {
    const f = sensitivityFunction(compiled, evidence, query, {
      variable: 'A',
      state: 'yes',
      given: { B: 'no', E: 'no' },
    });
    const scale = f.denominator.intercept / 0.00145648748;
    expect(f.numerator.intercept / scale).toBeCloseTo(0.00059224259, 12);
    expect(f.denominator.slope / scale).toBeCloseTo(0.627612759, 10);
    expect(at(f, 0)).toBeCloseTo(0.406624, 6);
    expect(f.valueForPosterior(0.5)).toBeNull();
  });

  test('of a number that is zero, where the query is impossible at present', () => {
    const zero = compileNetwork(
      defineNetwork({
        variables: [
          { name: 'a', states: ['x', 'y'], table: [0, 1] },
          { name: 'b', states: ['x', 'y'], parents: ['a'], table: [0.8, 0.2, 0.1, 0.9] },
        ],
      }),
    );
    const f = sensitivityFunction(zero, { b: 'x' }, { variable: 'a', state: 'x' }, { variable: 'a', state: 'x' });
    expect(at(f, 0)).toBeCloseTo(0, 14);
    expect(at(f, 0.5)).toBeCloseTo(0.8 / 0.9, 12);
  });

  test('refuses unknown names', () => {
    expect(() =>
      sensitivityFunction(compiled, evidence, { variable: 'B', state: 'perhaps' }, { variable: 'B', state: 'yes' }),
    ).toThrow(QueryError);
    expect(() =>
      sensitivityFunction(compiled, evidence, query, { variable: 'A', state: 'yes', given: { B: 'no' } }),
    ).toThrow(QueryError);
  });
});
