// Times of the one-step advice, of the belief it rests on and of both, at every prefix of every invented case. Runs in Node and in a page.
import {
  caseState,
  circumstancesOf,
  compileModel,
  factsOf,
  loadCase,
  advise,
  parseModel,
  rankCauses,
  beliefOf,
} from '@faultodds/core';
import { demoCases, misfire } from '@faultodds/misfire';

/** @param {number} rounds counted, after one that warms up @returns {Record<string, number[]>} milliseconds by what was done */
export function oneStepRounds(rounds) {
  const model = parseModel(misfire);
  const reader = compileModel(model);
  const states = demoCases.flatMap((demo) => {
    const state = caseState(loadCase(reader, demo));
    const { context, observations } = factsOf(state);
    const circumstances = circumstancesOf(reader, state);
    return observations.map((_, at) => ({
      facts: { context, observations: observations.slice(0, at + 1) },
      circumstances,
    }));
  });
  const times = { 'ranking alone (baseline)': [], 'belief with every predictive': [], 'one-step advice': [], both: [] };
  for (let round = 0; round <= rounds; round += 1) {
    // compiled anew: nothing is remembered from the round before
    const [forRanking, compiled] = [compileModel(model), compileModel(model)];
    for (const { facts, circumstances } of states) {
      const from = performance.now();
      rankCauses(forRanking, facts);
      const ranked = performance.now();
      const belief = beliefOf(compiled, facts);
      const believed = performance.now();
      advise(compiled, belief, circumstances);
      const advised = performance.now();
      if (round === 0) continue;
      times['ranking alone (baseline)'].push(ranked - from);
      times['belief with every predictive'].push(believed - ranked);
      times['one-step advice'].push(advised - believed);
      times.both.push(advised - ranked);
    }
  }
  return times;
}
