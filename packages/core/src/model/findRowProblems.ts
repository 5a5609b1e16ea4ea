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
      found.push({
        code: 'mechanism-rows',
        path,
        message: `'${mechanism.id}' needs either a background row or parents with rows`,
        hint: 'roots have `background`, dependent mechanisms `parents` and `rows`',
      });
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
    found.push({
      code: 'default-row-missing',
      path,
      message: `'${of}' has no default row`,
      hint: 'end with a row whose `when` is {}',
    });
  }
  rows.slice(0, -1).forEach((row, at) => {
    if (isDefault(row)) {
      found.push({
        code: 'default-row-not-last',
        path: `${path}/${at}`,
        message: `rows after this one are never used`,
        hint: 'move the `{}` row to the end',
      });
    }
  });
  return found;
}

function rowProblems(row: Row, states: readonly string[], path: string, of: string): Problem[] {
  const found: Problem[] = [];
  for (const state of states) {
    if (!Object.hasOwn(row.p, state))
      found.push({
        code: 'row-key-missing',
        path: `${path}/p`,
        message: `no probability for '${state}'`,
        hint: `add "${state}"`,
      });
  }
  for (const [state, p] of Object.entries(row.p)) {
    if (!states.includes(state)) {
      found.push({
        code: 'row-key-unknown',
        path: `${path}/p/${state}`,
        message: `'${state}' is not a state here`,
        hint: `states are ${states.join(', ')}`,
      });
    } else if (p <= 0 || p >= 1) {
      found.push({
        code: 'likelihood-certain',
        path: `${path}/p/${state}`,
        message: `a likelihood of ${p} could never be corrected by evidence`,
        hint: 'use a small or a large number instead',
      });
    }
  }
  const sum = Object.values(row.p).reduce((total, p) => total + p, 0);
  if (Math.abs(sum - 1) > 1e-9) {
    found.push({
      code: 'row-not-one',
      path: `${path}/p`,
      message: `P(${of}) sums to ${Number(sum.toPrecision(12))}, expected 1`,
      hint: `the other entries being right, '${Object.keys(row.p).at(-1)}' would be ${Number((1 - sum + (Object.values(row.p).at(-1) ?? 0)).toPrecision(6))}`,
    });
  }
  return found;
}
