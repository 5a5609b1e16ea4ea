/** What is wrong, and what to do about it. */
export type Worded = readonly [message: string, hint: string];
