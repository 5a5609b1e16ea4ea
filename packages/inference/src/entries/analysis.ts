// joint posteriors of any set, the best joint states, derivatives, posteriors as functions of one number, the part a question needs
export { jointPosterior, type JointPosterior } from '../jointPosterior.ts';
export { mostProbableExplanation, mostProbableExplanations, type Explanation } from '../mostProbableExplanations.ts';
export { derivatives, type Derivatives } from '../derivatives.ts';
export { sensitivity, type Parameter, type SensitivityFunction } from '../sensitivity.ts';
export { relevantNetwork } from '../relevantNetwork.ts';
export { QueryError } from '../queryError.ts';
