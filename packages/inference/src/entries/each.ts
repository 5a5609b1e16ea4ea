// everything given each state of one variable
export {
  compileEach,
  posteriorGivenEach,
  type CompiledEach,
  type PosteriorGivenEach,
} from '../queries/posteriorGivenEach.ts';
export { QueryError } from '../errors/queryError.ts';
