import { observationIdOf } from './observationIdOf.ts';
import type { Session } from './session.ts';

/** The first of r1, r2, … that no observation of this case ever had, retracted and unplaced ones included. */
export function nextObservationId({ content }: Session): string {
  const all = [...content.events, ...content.unplaced.map(({ event }) => event)];
  const taken = new Set(all.map(observationIdOf));
  let number = 1;
  while (taken.has(`r${number}`)) number += 1;
  return `r${number}`;
}
