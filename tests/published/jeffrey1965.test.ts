import { compileNetwork, defineNetwork, posterior } from '@faultodds/inference';
import { expect, test } from 'vitest';

// Jeffrey R.C. (1965) The Logic of Decision, ch. 11: cloth by candlelight; worked by Chan H., Darwiche A. (2005) On the revision of
// probabilistic beliefs using uncertain evidence, Artificial Intelligence 163:67-90. Inputs from memory, recomputed. Check B9.
// Tolerance 1e-12.
const cloth = compileNetwork(
  defineNetwork({
    variables: [
      { name: 'colour', states: ['green', 'blue', 'violet'], table: [0.3, 0.3, 0.4] },
      { name: 'sold', states: ['yes', 'no'], parents: ['colour'], table: [0.4, 0.6, 0.4, 0.6, 0.8, 0.2] },
    ],
  }),
);

test('before the look the cloth is sold with probability 0.56 (B9)', () => {
  expect(posterior(cloth, {}).marginals['sold']!['yes']).toBeCloseTo(0.56, 12);
});

test('likelihoods in the ratio new over old reproduce the colours seen by candlelight, and 0.42 (B9)', () => {
  // 0.7/0.3 : 0.25/0.3 : 0.05/0.4, scaled to violet
  const { marginals } = posterior(cloth, { colour: [18.666666666666668, 6.666666666666667, 1] });
  expect(marginals['colour']!['green']).toBeCloseTo(0.7, 12);
  expect(marginals['colour']!['blue']).toBeCloseTo(0.25, 12);
  expect(marginals['colour']!['violet']).toBeCloseTo(0.05, 12);
  expect(marginals['sold']!['yes']).toBeCloseTo(0.42, 12);
});
