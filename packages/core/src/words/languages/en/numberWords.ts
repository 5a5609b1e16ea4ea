/** What the numbers of a model are, in phrases. Labels stand in quotation marks. */
export const numberWords = {
  weight: (cause: string): string => `How common “${cause}” is`,
  activeFraction: (cause: string): string => `How often “${cause}” shows on a visit`,
  /** A state of a mechanism, or an outcome of a test, under a condition made by the entries below. */
  entry: (what: string, state: string, condition: string): string => `“${what}: ${state}” ${condition}`,
  /** Of a mechanism under every cause that does not say otherwise. */
  background: 'with every other cause',
  asleep: 'while the fault sleeps',
  when: (conditions: readonly string[]): string => `if ${conditions.join(' and ')}`,
  otherwise: 'in all other cases',
  ifCause: (causes: readonly string[]): string => `the cause is ${quoted(causes)}`,
  ifMechanism: (mechanism: string, states: readonly string[]): string => `“${mechanism}” is ${quoted(states)}`,
  repeatability: (test: string): string => `How often a repeat of “${test}” makes the same error`,
  multiplier: (question: string, answer: string, cause: string): string =>
    `How much “${question} ${answer}” speaks for “${cause}”`,
  cures: (repair: string, cause: string): string => `How surely “${repair}” cures “${cause}”`,
  goneWithoutCure: (): string => 'How often the fault goes though the repair did not cure it',
  presentIfNotNoted: (): string => 'How often the fault was present in a test where nobody noted it',
  leastRepairMinutes: (): string => 'Minutes a repair takes at least, with all its access open',
  needlessOpening: (): string => 'What opening the engine for nothing costs beyond its price',
};

function quoted(labels: readonly string[]): string {
  return labels.map((label) => `“${label}”`).join(' or ');
}
