// the network
export type { Network, NetworkDefinition, NetworkVariable, VariableDefinition } from './network.ts';
export { defineNetwork, type DefineNetworkOptions } from './defineNetwork.ts';
export { compileNetwork, type CompiledNetwork, type CompileOptions } from './compileNetwork.ts';

export { relevantNetwork } from './relevantNetwork.ts';

// evidence and answers
export type { Evidence } from './evidence.ts';
export { posterior, type Posterior } from './posterior.ts';
export { jointPosterior, type JointPosterior } from './jointPosterior.ts';

export { mostProbableExplanation, mostProbableExplanations, type Explanation } from './mostProbableExplanations.ts';
export { derivatives, type Derivatives } from './derivatives.ts';
export { sensitivity, type Parameter, type SensitivityFunction } from './sensitivity.ts';
export { sampleNetwork } from './sampleNetwork.ts';
export { posteriorSampler } from './posteriorSampler.ts';

// everything given each state of one variable
export {
  compileEach,
  posteriorGivenEach,
  propagateEach,
  type CompiledEach,
  type PosteriorGivenEach,
} from './posteriorGivenEach.ts';

// sweeps over the states of a root
export type { CompiledSweep, LikelihoodFactor, SweepQuestion, SweepResult, TargetTable } from './sweep.ts';
export { compileSweep, type CompileSweepOptions } from './compileSweep.ts';
export { sweepRoot } from './sweepRoot.ts';

// errors
export { InferenceError, type Problem } from './inferenceError.ts';
export { NetworkError } from './networkError.ts';
export { EvidenceInputError } from './evidenceInputError.ts';
export { ImpossibleEvidenceError } from './impossibleEvidenceError.ts';
export { QueryError } from './queryError.ts';

// reading
export { parseNetworkJson } from './parseNetworkJson.ts';
export { parseBif } from './parseBif.ts';
export { FormatError } from './formatError.ts';

// the workspace: no allocation between questions
export { createPropagation, type Propagation } from './propagation.ts';
export type { TriangulationSearch } from './triangulate.ts';
export { setFinding, setLikelihood } from './setFinding.ts';
export { propagate, propagateTo } from './propagate.ts';
export { TreeWidthError } from './treeWidthError.ts';
export { seededRandom, type Random } from './random.ts';
