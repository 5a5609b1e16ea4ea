import type { Session } from './session.ts';

/** The first of r1, r2, … that no observation of this case ever had, retracted ones included. */
export function nextObservationId({ content }: Session): string {
  const taken = new Set<string>();
  for (const event of content.events) {
    if (event.kind === 'result-recorded' || event.kind === 'repair-tried') taken.add(event.id);
  }
  let number = 1;
  while (taken.has(`r${number}`)) number += 1;
  return `r${number}`;
}
