// the network
export type { Network, NetworkDefinition, NetworkVariable, VariableDefinition } from './network/network.ts';
export { defineNetwork, type DefineNetworkOptions } from './network/defineNetwork.ts';
export { compileNetwork, type CompiledNetwork, type CompileNetworkOptions } from './propagation/compileNetwork.ts';

// evidence and answers
export type { Evidence } from './network/evidence.ts';
export { posterior, type Posterior } from './queries/posterior.ts';

// the workspace: no allocation between questions
export { createPropagation, type Propagation } from './propagation/propagation.ts';
export type { TriangulationSearch } from './tree/triangulate.ts';
export { setFinding, setLikelihood } from './propagation/setFinding.ts';
export { propagate, propagateTo } from './propagation/propagate.ts';
export { marginalOf } from './propagation/marginalOf.ts';
export { hasLostNumbers, logEvidenceOf } from './propagation/logEvidenceOf.ts';

// errors
export { InferenceError, type InferenceProblem } from './errors/inferenceError.ts';
export { NetworkError } from './errors/networkError.ts';
export { EvidenceInputError } from './errors/evidenceInputError.ts';
export { ImpossibleEvidenceError } from './errors/impossibleEvidenceError.ts';
export { InferenceOptionError } from './errors/inferenceOptionError.ts';
export { TreeWidthError } from './errors/treeWidthError.ts';
