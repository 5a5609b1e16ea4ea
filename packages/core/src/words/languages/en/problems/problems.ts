import { caseProblems } from './caseProblems.ts';
import { modelProblems } from './modelProblems.ts';
import { readingProblems } from './readingProblems.ts';
import { shapeProblems } from './shapeProblems.ts';

/** Everything that can be wrong, by key: a code, and after a slash which of several sentences. Each takes plain data and says what is wrong
 * and what to do about it. A translation replaces these files; codes and paths belong to no language. */
export const problems: typeof shapeProblems & typeof modelProblems & typeof caseProblems & typeof readingProblems = {
  ...shapeProblems,
  ...modelProblems,
  ...caseProblems,
  ...readingProblems,
};
