import { misfire } from '@faultodds/misfire';
import {
  beliefOf,
  caseState,
  compileModel,
  factsOf,
  parseModel,
  rankCauses,
  recordEvent,
  startCase,
} from '@faultodds/core';
import { explainMove } from '@faultodds/core/explanation';

const RESULTS = 200;
const always = misfire.tests.filter(({ appliesWhen }) => appliesWhen === undefined);

/** @param {number} at */
function result(at) {
  const { id, outcomes } = /** @type {typeof always[number]} */ (always[at % always.length]);
  const likelihood = Object.fromEntries(outcomes.map((outcome, nth) => [outcome.id, nth === at % 2 ? 1 : 0.9]));
  return { kind: /** @type {const} */ ('result-recorded'), id: `r${at}`, test: id, likelihood };
}

/** What one more result costs in a case that has 200 already, in milliseconds. @param {number} count of further results
 * @returns {Record<string, number[]>} */
export function explanationRounds(count) {
  const compiled = compileModel(parseModel(misfire));
  let session = startCase({ id: 'invented', title: 'Invented' });
  for (let at = 0; at < RESULTS; at += 1) session = recordEvent(compiled, session, result(at));
  let earlier = rankCauses(compiled, factsOf(caseState(session)));
  /** @type {Record<string, number[]>} */
  const times = {
    'ranking before it (baseline)': [],
    'explaining it, its ranking included': [],
    'the whole belief': [],
  };
  /** @template T @param {string} what @param {() => T} work @returns {T} */
  const timed = (what, work) => {
    const started = performance.now();
    const made = work();
    times[what]?.push(performance.now() - started);
    return made;
  };
  for (let at = RESULTS; at < RESULTS + count; at += 1) {
    timed('ranking before it (baseline)', () => rankCauses(compiled, factsOf(caseState(session))));
    session = recordEvent(compiled, session, result(at));
    const facts = factsOf(caseState(session));
    earlier = timed('explaining it, its ranking included', () => {
      const later = rankCauses(compiled, facts);
      const observation = facts.observations.at(-1);
      if (observation !== undefined) explainMove(observation, earlier, later);
      return later;
    });
    timed('the whole belief', () => beliefOf(compiled, facts));
  }
  return times;
}
