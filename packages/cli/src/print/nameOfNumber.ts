import type { ConditionalRow, Model } from '@faultodds/core';
import { labelOf } from './labelOf.ts';

/** What a number of the model says, in words. @param path JSON Pointer, as `leaderSensitivity` reports it; itself where it is of no known kind. */
export function nameOfNumber(model: Model, path: string): string {
  const [list, index, third = '', fourth = '', fifth = '', sixth = ''] = path
    .split('/')
    .slice(1)
    .map((key) => key.replaceAll('~1', '/').replaceAll('~0', '~'));
  const at = Number(index);
  if (list === 'causes') {
    const cause = model.causes[at];
    if (cause === undefined) return path;
    if (third === 'weight') return `how common “${cause.label}” is`;
    const mechanism = model.mechanisms.find(({ id }) => id === fourth);
    return mechanism === undefined
      ? path
      : `“${cause.label}” makes ${mechanism.label.toLowerCase()} “${labelOf(mechanism.states, sixth)}”`;
  }
  if (list === 'context') {
    const feature = model.context[at];
    const value = feature?.values[Number(fourth)];
    if (feature === undefined || value === undefined) return path;
    return `how much “${feature.label}: ${value.label}” speaks for “${labelOf(model.causes, sixth)}”`;
  }
  if (list === 'tests') {
    const test = model.tests[at];
    const row = test?.rows[Number(fourth)];
    return test === undefined || row === undefined
      ? path
      : `“${test.label}” shows “${labelOf(test.outcomes, sixth)}” ${whenOf(model, row)}`;
  }
  if (list === 'mechanisms') {
    const mechanism = model.mechanisms[at];
    if (mechanism === undefined) return path;
    if (third === 'background')
      return `${mechanism.label.toLowerCase()} is “${labelOf(mechanism.states, fifth)}” by itself`;
    const row = mechanism.rows?.[Number(fourth)];
    return row === undefined
      ? path
      : `${mechanism.label.toLowerCase()} is “${labelOf(mechanism.states, sixth)}” ${whenOf(model, row)}`;
  }
  return path;
}

function whenOf({ causes, mechanisms }: Model, { when }: ConditionalRow): string {
  const parts = Object.entries(when).map(([parent, states]) => {
    const mechanism = mechanisms.find(({ id }) => id === parent);
    const list = mechanism?.states ?? causes;
    const named = states.map((state) => `“${labelOf(list, state)}”`).join(' or ');
    return `${mechanism?.label.toLowerCase() ?? 'the cause'} is ${named}`;
  });
  return parts.length === 0 ? 'otherwise' : `when ${parts.join(' and ')}`;
}
