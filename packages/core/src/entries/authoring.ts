// for authors of models: what is weak, what tells nothing apart, ranges for a judgement
export { lintModel } from '../compiled/lintModel.ts';
export type { LintFinding } from '../compiled/lintFinding.ts';
export { rangeOfProbability } from '../distributions/rangeOfProbability.ts';
export {
  diagnosability,
  type Diagnosability,
  type DiagnosabilityOptions,
  type DominatedTest,
  type InseparablePair,
} from '../diagnosability/diagnosability.ts';
export type { WeakJudgement, ProvenanceClass } from '../diagnosability/provenance.ts';
