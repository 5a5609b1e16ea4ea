import { expect, test } from 'vitest';
import { chanceOf, chanceOfEvidence, yesNoNetwork } from './yesNo.ts';

// The sprinkler with four nodes: Pearl (1988); numbers of Murphy K. (1998) A brief introduction to graphical models and Bayesian
// networks, which gives 0.430, 0.708, 0.1945 and 0.6471 (from memory; recomputed). Check B4. Tolerance 1e-9.
const lawn = yesNoNetwork([
  ['cloudy', [], [0.5]],
  ['sprinkler', ['cloudy'], [0.1, 0.5]],
  ['rain', ['cloudy'], [0.8, 0.2]],
  ['wet', ['sprinkler', 'rain'], [0.99, 0.9, 0.9, 0]],
]);

test('wet grass: 0.6471, by the sprinkler 0.430, by rain 0.708 (B4)', () => {
  expect(chanceOfEvidence(lawn, { wet: 'yes' })).toBeCloseTo(0.6471, 12);
  expect(chanceOf(lawn, 'sprinkler', { wet: 'yes' })).toBeCloseTo(0.429763561, 9);
  expect(chanceOf(lawn, 'rain', { wet: 'yes' })).toBeCloseTo(0.707927677, 9);
});

test('rain explains the sprinkler away: 0.430 falls to 0.1945 (B4)', () => {
  expect(chanceOf(lawn, 'sprinkler', { wet: 'yes', rain: 'yes' })).toBeCloseTo(0.194499018, 9);
});
