// sweeps over the states of a root
export type { CompiledSweep, LikelihoodFactor, SweepQuestion, SweepResult, TargetTable } from '../sweep.ts';
export { compileSweep, type CompileSweepOptions } from '../compileSweep.ts';
export { sweepRoot } from '../sweepRoot.ts';
export { QueryError } from '../queryError.ts';
