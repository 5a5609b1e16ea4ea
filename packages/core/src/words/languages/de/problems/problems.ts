import type { problems as english } from '../../en/problems/problems.ts';
import { caseProblems } from './caseProblems.ts';
import { modelProblems } from './modelProblems.ts';
import { readingProblems } from './readingProblems.ts';
import { shapeProblems } from './shapeProblems.ts';

/** Everything that can be wrong, in German, by the keys of English. */
export const problems: typeof english = { ...shapeProblems, ...modelProblems, ...caseProblems, ...readingProblems };
