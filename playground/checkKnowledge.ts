import { CaseError, compileModel, loadCase, parseModel } from '@faultodds/core';
import { demoCases, misfire } from '@faultodds/misfire';

/** Reads the knowledge and every invented case as strictly as a stranger's.
 * @throws ModelError, CaseError with every problem, which ends the build */
export function checkKnowledge(): void {
  const compiled = compileModel(parseModel(misfire));
  for (const demo of demoCases) {
    const [notice] = loadCase(compiled, demo).notices;
    if (notice !== undefined && notice.kind !== 'model-differs') throw new CaseError([notice.problems[0]!]);
  }
}
