// the network
export type { Network, NetworkDefinition, NetworkVariable, VariableDefinition } from './network.ts';
export { defineNetwork, type DefineNetworkOptions } from './defineNetwork.ts';
export { compileNetwork, type CompiledNetwork } from './compileNetwork.ts';

// evidence and answers
export type { Evidence } from './evidence.ts';
export { posterior, type Posterior } from './posterior.ts';
export { jointPosterior, type JointPosterior } from './jointPosterior.ts';

// sweeps over the states of a root
export type { CompiledSweep, LikelihoodFactor, SweepQuestion, SweepResult, TargetTable } from './sweep.ts';
export { compileSweep } from './compileSweep.ts';
export { sweepRoot } from './sweepRoot.ts';

// errors
export { InferenceError, type Problem } from './inferenceError.ts';
export { NetworkError } from './networkError.ts';
export { EvidenceInputError } from './evidenceInputError.ts';
export { ImpossibleEvidenceError } from './impossibleEvidenceError.ts';
export { QueryError } from './queryError.ts';

// reading
export { parseBif } from './parseBif.ts';
export { FormatError } from './formatError.ts';

// the workspace: no allocation between questions
export { createPropagation, type Propagation } from './propagation.ts';
export { setFinding, setLikelihood } from './setFinding.ts';
export { propagate, propagateTo } from './propagate.ts';
export { TreeWidthError } from './treeWidthError.ts';
export { seededRandom, type Random } from './random.ts';
