import { recordEvent, startCase, type CaseEvent, type CompiledModel, type Session } from '@faultodds/core';

/** An empty case that begins with what was chosen once on this device. A choice that this version does not know, or that was written by
 * hand, is none. */
export function beginCase(
  compiled: CompiledModel,
  about: { readonly id: string; readonly title: string },
  choices: readonly CaseEvent[],
): Session {
  let session = startCase(about);
  for (const event of choices) {
    try {
      session = recordEvent(compiled, session, event);
    } catch {
      // not a choice of this version
    }
  }
  return { ...session, past: [] }; // what was chosen once is no step of this case
}
