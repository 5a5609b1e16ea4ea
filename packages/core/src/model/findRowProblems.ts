import { problemFor } from '../validation/problemFor.ts';
import type { Problem } from '../errors/faultoddsError.ts';
import type { Model } from './model.ts';
import type { ConditionalRow, Row } from './row.ts';

/** Tables that are not distributions: rows that do not sum to 1, states that are missing or unknown, 0 or 1, no default row. */
export function findRowProblems(model: Model): Problem[] {
  const mechanisms = new Map(model.mechanisms.map((m) => [m.id, m]));
  const found: Problem[] = [];
  model.mechanisms.forEach((mechanism, at) => {
    const path = `/mechanisms/${at}`;
    const states = mechanism.states.map((state) => state.id);
    if ((mechanism.background === undefined) === (mechanism.rows === undefined)) {
      found.push(problemFor('mechanism-rows', path, { id: mechanism.id }));
    }
    if (mechanism.background !== undefined)
      found.push(...rowProblems(mechanism.background, states, `${path}/background`, mechanism.id));
    if (mechanism.rows !== undefined)
      found.push(...tableProblems(mechanism.rows, states, `${path}/rows`, mechanism.id));
  });
  model.causes.forEach((cause, at) => {
    for (const [id, row] of Object.entries(cause.states)) {
      const mechanism = mechanisms.get(id);
      const states = mechanism?.states.map((state) => state.id) ?? Object.keys(row.p);
      found.push(...rowProblems(row, states, `/causes/${at}/states/${id}`, `${id} | cause '${cause.id}'`));
    }
  });
  model.tests.forEach((test, at) => {
    const outcomes = test.outcomes.map((outcome) => outcome.id);
    found.push(...tableProblems(test.rows, outcomes, `/tests/${at}/rows`, test.id));
    if (test.asleep !== undefined) found.push(...rowProblems(test.asleep, outcomes, `/tests/${at}/asleep`, test.id));
  });
  return found;
}

function tableProblems(
  rows: readonly ConditionalRow[],
  states: readonly string[],
  path: string,
  of: string,
): Problem[] {
  const found = rows.flatMap((row, at) => rowProblems(row, states, `${path}/${at}`, of));
  const isDefault = (row: ConditionalRow): boolean => Object.keys(row.when).length === 0;
  const last = rows.at(-1);
  if (last === undefined || !isDefault(last)) {
    found.push(problemFor('default-row-missing', path, { of }));
  }
  rows.slice(0, -1).forEach((row, at) => {
    if (isDefault(row)) found.push(problemFor('default-row-not-last', `${path}/${at}`, {}));
  });
  return found;
}

function rowProblems(row: Row, states: readonly string[], path: string, of: string): Problem[] {
  const found: Problem[] = [];
  for (const state of states) {
    if (!Object.hasOwn(row.p, state)) found.push(problemFor('row-key-missing', `${path}/p`, { state }));
  }
  for (const [state, p] of Object.entries(row.p)) {
    if (!states.includes(state)) {
      found.push(problemFor('row-key-unknown', `${path}/p/${state}`, { state, states }));
    } else if (p <= 0 || p >= 1) {
      found.push(problemFor('likelihood-certain', `${path}/p/${state}`, { probability: p }));
    }
  }
  const sum = Object.values(row.p).reduce((total, p) => total + p, 0);
  if (Math.abs(sum - 1) > 1e-9) {
    const would = Number((1 - sum + (Object.values(row.p).at(-1) ?? 0)).toPrecision(6));
    const parts = { of, sum: Number(sum.toPrecision(12)), last: Object.keys(row.p).at(-1), would };
    found.push(problemFor('row-not-one', `${path}/p`, parts));
  }
  return found;
}
