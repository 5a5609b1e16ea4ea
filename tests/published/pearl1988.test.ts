import { compileModel, beliefOf } from '@faultodds/core';
import { expect, test } from 'vitest';
import { smallModel } from '../fixtures/smallModel.ts';
import { chanceOf, yesNoNetwork } from './yesNo.ts';

// Pearl J. (1988) Probabilistic Reasoning in Intelligent Systems, Morgan Kaufmann, sections 2.2.2-2.2.3: evidence that is itself uncertain.
// Inputs from memory, recomputed; the printed figures were not compared. Check B10. Tolerance 1e-12.
test('an alarm heard "4 to 1" lifts a burglary from 0.0001 to 0.00037, a certain one to 0.0094 (B10)', () => {
  const compiled = compileModel(
    smallModel({
      causes: { burglary: 0.0001, nothing: 0.9999 },
      tests: { alarm: { p: { burglary: { rings: 0.95, silent: 0.05 }, else: { rings: 0.01, silent: 0.99 } } } },
    }),
  );
  const belief = (result: object) =>
    beliefOf(compiled, { context: {}, observations: [{ kind: 'result', id: 'r1', test: 'alarm', ...result }] });
  expect(belief({ outcome: 'rings' }).posterior['burglary']).toBeCloseTo(0.0094115316, 10);
  expect(belief({ likelihood: { rings: 4, silent: 1 } }).posterior['burglary']).toBeCloseTo(0.000373684098, 12);
});

// "90 % sure it rang" as a likelihood and as a target are different things; network as in `russellNorvig.test.ts`. Recomputed.
// Check B11. Tolerance 1e-10.
test('a likelihood of 3 to 1 leaves the alarm at 0.0075; a target of 0.9 needs 3567 to 1 (B11)', () => {
  const alarm = yesNoNetwork([
    ['burglary', [], [0.001]],
    ['earthquake', [], [0.002]],
    ['alarm', ['burglary', 'earthquake'], [0.95, 0.94, 0.29, 0.001]],
  ]);
  expect(chanceOf(alarm, 'burglary', { alarm: [3, 1] })).toBeCloseTo(0.00286561768, 11);
  expect(chanceOf(alarm, 'alarm', { alarm: [3, 1] })).toBeCloseTo(0.00751152138, 11);
  expect(chanceOf(alarm, 'alarm', { alarm: [3567.47822, 1] })).toBeCloseTo(0.9, 9);
  expect(chanceOf(alarm, 'burglary', { alarm: [3567.47822, 1] })).toBeCloseTo(0.336202119, 9);
});
