// why the ranking moved
export type {
  NumberByCause,
  Explanation,
  MovedCause,
  ObservationExplanation,
  ObservationMove,
} from '../explanation/explanation.ts';
export { explainCase } from '../explanation/explainCase.ts';
export { type MomentRanking, explainMove } from '../explanation/explainMove.ts';
export { naturalFrequencies } from '../explanation/naturalFrequencies.ts';
export { type RankAfterEachOptions, rankAfterEach } from '../explanation/rankAfterEach.ts';
export { weightOfEvidence } from '../explanation/weightOfEvidence.ts';
