/** Somebody, or something, that answers questions. Every answer can be `undefined`: the question was left without one. */
export interface Prompter {
  /** One of a few. @param at the value the cursor stands at first; the first choice by default. */
  readonly choose: (question: string, choices: readonly Choice[], at?: string) => Promise<string | undefined>;
  /** Any number of them. @param chosen values that are chosen until they are taken out. */
  readonly chooseSeveral: (
    question: string,
    choices: readonly Choice[],
    chosen: readonly string[],
  ) => Promise<readonly string[] | undefined>;
  /** One of many, found by typing. */
  readonly find: (question: string, choices: readonly Choice[]) => Promise<string | undefined>;
  /** @param refuse says what is wrong with a text, or nothing. */
  readonly type: (
    question: string,
    suggestion: string,
    refuse?: (text: string) => string | undefined,
  ) => Promise<string | undefined>;
  /** Text of several lines, as it is pasted. @param suggestion what was there before. */
  readonly paste: (question: string, suggestion: string) => Promise<string | undefined>;
  readonly confirm: (question: string) => Promise<boolean | undefined>;
}

/** One possible answer. */
export interface Choice {
  readonly value: string;
  readonly label: string;
  readonly hint?: string;
}
