import {
  compileModel,
  FaultoddsError,
  parseModel,
  type CompiledModel,
  type CompileModelOptions,
  type Model,
} from '@faultodds/core';
import { demoCases, misfire } from '@faultodds/misfire';
import { CommandError } from '../terminal/commandError.ts';
import { readModelParts } from './readModelParts.ts';

/** A model made ready, and the demo cases that belong to it. */
export interface LoadedModel {
  readonly model: Model;
  readonly compiled: CompiledModel;
  /** Unparsed case documents. */
  readonly cases: readonly unknown[];
}

/** The misfire model that comes with faultodds, or the one in a file or folder.
 * @throws CommandError when that one is not valid */
export async function loadModel(path?: string, options: CompileModelOptions = {}): Promise<LoadedModel> {
  if (path === undefined) {
    const model = parseModel(misfire);
    return { model, compiled: compileModel(model, options), cases: demoCases };
  }
  try {
    const model = parseModel((await readModelParts(path)).input);
    return { model, compiled: compileModel(model, options), cases: [] };
  } catch (error) {
    if (!(error instanceof FaultoddsError)) throw error;
    throw new CommandError(
      `'${path}' is not a valid model; 'faultodds check ${path}' lists its ${error.problems.length} problems`,
    );
  }
}
