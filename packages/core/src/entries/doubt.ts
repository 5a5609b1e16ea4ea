// credible intervals of the ranking, what the numbers of the model move, and seeded draws of them
export { numberAt } from '../model/numberAt.ts';
export { changeNumber } from '../compiled/changeNumber.ts';
export type { DoubtOptions } from '../doubt/doubtOptions.ts';
export {
  credibleRanking,
  credibleRankingInTurns,
  type CredibleCause,
  type CredibleRanking,
} from '../doubt/credibleRanking.ts';
export { adviceFlips, adviceFlipsInTurns, type AdviceFlip, type AdviceFlipOptions } from '../doubt/adviceFlips.ts';
export { adviceStability, adviceStabilityInTurns, type AdviceStability } from '../doubt/adviceStability.ts';
export { leaderSensitivity, type LeaderSensitivity, type NumberSensitivity } from '../doubt/leaderSensitivity.ts';
export type { LinearFunction } from '../doubt/linearFunction.ts';
export { modelNumbers, type ModelNumber } from '../doubt/modelNumbers.ts';
export { evidenceConflict, type EvidenceConflict } from '../doubt/evidenceConflict.ts';
export { sameStep } from '../doubt/sameStep.ts';
export { drawModel, type DrawOptions } from '../doubt/drawModel.ts';
export { createRandom, type Random } from '../distributions/random.ts';
