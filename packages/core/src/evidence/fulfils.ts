import type { Requirement } from '../model/model.ts';
import type { Context } from './facts.ts';

/** Whether every required intake fact is stated. */
export function fulfils(context: Context, requirement: Requirement): boolean {
  return Object.entries(requirement).every(([feature, value]) => context[feature] === value);
}
