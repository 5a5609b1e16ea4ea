// the network
export type { Network, NetworkDefinition, NetworkVariable, VariableDefinition } from './network.ts';
export { defineNetwork, type DefineNetworkOptions } from './defineNetwork.ts';
export { compileNetwork, type CompiledNetwork, type CompileOptions } from './compileNetwork.ts';

// evidence and answers
export type { Evidence } from './evidence.ts';
export { posterior, type Posterior } from './posterior.ts';

// the workspace: no allocation between questions
export { createPropagation, type Propagation } from './propagation.ts';
export type { TriangulationSearch } from './triangulate.ts';
export { setFinding, setLikelihood } from './setFinding.ts';
export { propagate, propagateTo } from './propagate.ts';

// errors
export { InferenceError, type Problem } from './inferenceError.ts';
export { NetworkError } from './networkError.ts';
export { EvidenceInputError } from './evidenceInputError.ts';
export { ImpossibleEvidenceError } from './impossibleEvidenceError.ts';
export { OptionError } from './optionError.ts';
export { TreeWidthError } from './treeWidthError.ts';
