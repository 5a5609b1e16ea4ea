// everything given each state of one variable
export {
  compileEach,
  posteriorGivenEach,
  propagateEach,
  type CompiledEach,
  type PosteriorGivenEach,
} from '../posteriorGivenEach.ts';
export { QueryError } from '../queryError.ts';
