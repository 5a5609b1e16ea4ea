// joint posteriors of any set, the best joint states, derivatives, posteriors as functions of one number, the part a question needs
export { jointPosterior, type JointPosterior } from '../queries/jointPosterior.ts';
export {
  mostProbableExplanation,
  mostProbableExplanations,
  type MostProbableExplanation,
} from '../queries/mostProbableExplanations.ts';
export { derivatives, type Derivatives } from '../queries/derivatives.ts';
export { sensitivityFunction, type Parameter, type SensitivityFunction } from '../queries/sensitivityFunction.ts';
export { relevantNetwork } from '../network/relevantNetwork.ts';
export { QueryError } from '../errors/queryError.ts';
