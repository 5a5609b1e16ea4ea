import { compileModel } from '@faultodds/core';
import { evidenceConflict } from '@faultodds/core/doubt';
import { expect, test } from 'vitest';
import { results } from '../fixtures/results.ts';
import { uncheckedModel, type P } from '../fixtures/smallModel.ts';

// Conflict measure conf(e) = log2 of the product of P(e_i) over P(e): Jensen F.V., Nielsen T.D. (2007) Bayesian Networks and Decision Graphs,
// 2nd ed., Springer, after Jensen, Chamberlain, Nordahl, Jensen, UAI 1990. Definition seen in a stored public copy, values recomputed on the
// chest clinic (tables in `lauritzenSpiegelhalter1988.test.ts`). Check B12. Tolerance 1e-10.
//
// Our models have one cause, so the clinic's cause is the joint state of asia, smoke, tub, lung and bronc, and what was seen are tests.
const bits = [0, 1];
const worlds = bits.flatMap((asia) =>
  bits.flatMap((smoke) =>
    bits.flatMap((tub) => bits.flatMap((lung) => bits.map((bronc) => ({ asia, smoke, tub, lung, bronc })))),
  ),
);
type World = (typeof worlds)[number];
const idOf = (world: World) => `w${Object.values(world).join('')}`;
const chance = (is: number, p: number) => (is === 1 ? p : 1 - p);
const weightOf = ({ asia, smoke, tub, lung, bronc }: World) =>
  chance(asia, 0.01) *
  chance(smoke, 0.5) *
  chance(tub, asia === 1 ? 0.05 : 0.01) *
  chance(lung, smoke === 1 ? 0.1 : 0.01) *
  chance(bronc, smoke === 1 ? 0.6 : 0.3);
const either = ({ tub, lung }: World) => Math.max(tub, lung);
const testOn = (yes: (world: World) => number) => ({
  p: Object.fromEntries(worlds.map((world): [string, P] => [idOf(world), { yes: yes(world), no: 1 - yes(world) }])),
});
const clinic = compileModel(
  uncheckedModel({
    causes: Object.fromEntries(worlds.map((world) => [idOf(world), weightOf(world)])),
    tests: {
      asia: testOn(({ asia }) => asia),
      smoke: testOn(({ smoke }) => smoke),
      lung: testOn(({ lung }) => lung),
      bronc: testOn(({ bronc }) => bronc),
      xray: testOn((world) => [0.05, 0.98][either(world)]!),
      dysp: testOn(
        (world) =>
          [
            [0.1, 0.8],
            [0.7, 0.9],
          ][either(world)]![world.bronc]!,
      ),
    },
  }),
);

test.each([
  [['xray', 'yes'], ['dysp', 'yes'], -0.5555666803413147],
  [['xray', 'yes'], ['smoke', 'no'], 0.6792443270378573],
  [['asia', 'yes'], ['xray', 'yes'], -0.39567043588606954],
  [['bronc', 'no'], ['dysp', 'yes'], 1.7279645271872432],
  [['lung', 'yes'], ['xray', 'no'], 5.475263197857892],
  [['asia', 'no'], ['smoke', 'yes'], 0],
] as const)('%j with %j: %d bits (B12)', (one, other, conflict) => {
  const found = evidenceConflict(clinic, { context: {}, observations: results(one, other) });
  expect(found.totalBits).toBeCloseTo(conflict, 10);
  expect(found.pairs.length).toBe(conflict >= 1 ? 1 : 0);
});
