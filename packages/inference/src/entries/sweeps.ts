// sweeps over the states of a root
export type { CompiledSweep, LikelihoodFactor, SweepQuestion, SweepResult, TargetTable } from '../sweep/sweep.ts';
export { compileSweep, type CompileSweepOptions } from '../sweep/compileSweep.ts';
export { sweepRoot } from '../sweep/sweepRoot.ts';
export { QueryError } from '../errors/queryError.ts';
