// Every public answer that names a step (a test, a repair, an access, the drive of a proof) as something to do carries what it costs,
// how long it takes, what it opens and closes, and what can hurt. Read from the type declarations, so a new answer cannot forget it.
import ts from 'typescript';
import { expect, test } from 'vitest';
import { sourcesOfEntries } from './publicEntries.ts';
import { checker, exportsOf } from './publicProgram.ts';

const FACTS = ['price', 'minutes', 'accessToOpen', 'accessToClose', 'cautions'];
const NAMES = ['test', 'repair', 'access', 'tests', 'repairs', 'bestTest', 'bestRepair'];

/** Types that name a step without proposing it, and why. A type that is not in here and names one has to carry the facts. */
const NOT_PROPOSED: Readonly<Record<string, string>> = {
  // the knowledge itself
  Model: 'knowledge',
  Test: 'knowledge',
  Repair: 'knowledge',
  // what was recorded, and what it says
  TestResult: 'a record',
  RepairTried: 'a record',
  CaseEvent: 'a record',
  DecodedCode: 'a record',
  CodeObservations: 'a record',
  ReadingLikelihood: 'a record',
  BeliefWarning: 'about a record',
  // what parts of a model were called before
  OutcomeNames: 'names',
  PartName: 'names',
  Renaming: 'names',
  // what is asked, not answered
  CostlyStep: 'a question',
  Step: 'a question',
  // indices of a problem's own lists, for solvers
  Action: 'by index, for solvers',
  DecisionProblem: 'by index, for solvers',
  ProblemTables: 'by index, for solvers',
  EvidenceSet: 'by index, for solvers',
  // about the model, not about a car
  Diagnosability: 'about the model',
  InseparablePair: 'about the model',
  DominatedTest: 'about the model',
  CaseRun: 'a simulated record',
  RunSummary: 'a simulated record',
};

interface Found {
  readonly type: string;
  readonly at: string;
  readonly missing: readonly string[];
}

interface Walked {
  readonly seen: Set<ts.Type>;
  readonly found: Found[];
  readonly excused: Readonly<Record<string, string>>;
}

const exported = sourcesOfEntries.filter((path) => path.includes('packages/core')).flatMap(exportsOf);

const isOurs = (type: ts.Type): boolean =>
  (type.aliasSymbol ?? type.symbol)?.declarations?.some((at) =>
    at.getSourceFile().fileName.includes('packages/core/src'),
  ) === true;
const holdsIds = (type: ts.Type): boolean => {
  if ((type.flags & ts.TypeFlags.StringLike) !== 0) return true;
  if (type.isUnion()) return type.types.some((one) => one.isStringLiteral() || (one.flags & ts.TypeFlags.String) !== 0);
  const [item] = checker.isArrayType(type) ? checker.getTypeArguments(type as ts.TypeReference) : [];
  return item !== undefined && holdsIds(item);
};

/** Every object type reached from `type` that names a step, with the facts it lacks. */
function walk(type: ts.Type, at: string, walked: Walked): void {
  const { seen, found, excused } = walked;
  const name = (type.aliasSymbol ?? type.symbol)?.name ?? '';
  if (seen.has(type) || name in excused) return;
  seen.add(type);
  if (type.isUnion()) {
    for (const one of type.types) walk(one, at, walked);
    return;
  }
  for (const signature of type.getCallSignatures()) walk(signature.getReturnType(), `${at}()`, walked);
  if (checker.isArrayType(type)) {
    for (const one of checker.getTypeArguments(type as ts.TypeReference)) walk(one, `${at}[]`, walked);
    return;
  }
  if ((type.flags & (ts.TypeFlags.Object | ts.TypeFlags.Intersection)) === 0) return;
  if (type.symbol !== undefined && !isOurs(type) && type.symbol.name !== '__type' && type.symbol.name !== 'Map') return;
  const properties = checker.getPropertiesOfType(type);
  const kinds = properties.map((one) => one.name);
  const named = properties.filter((one) => NAMES.includes(one.name) && holdsIds(checker.getTypeOfSymbol(one)));
  const isKindWithId = kinds.includes('kind') && kinds.includes('id') && kinds.includes('branches');
  if (named.length > 0 || isKindWithId) {
    const missing = FACTS.filter((fact) => !kinds.includes(fact));
    if (missing.length > 0) found.push({ type: name, at, missing });
  }
  for (const property of properties) {
    walk(checker.getTypeOfSymbol(property), `${at}.${property.name}`, walked);
  }
}

function findIn(of: typeof exported, excused: Walked['excused'] = NOT_PROPOSED): readonly Found[] {
  const walked: Walked = { found: [], seen: new Set(), excused };
  for (const { name, target } of of) {
    if (name in excused) continue;
    const isValue = (target.flags & ts.SymbolFlags.Value) !== 0 && (target.flags & ts.SymbolFlags.Interface) === 0;
    walk(isValue ? checker.getTypeOfSymbol(target) : checker.getDeclaredTypeOfSymbol(target), name, walked);
  }
  return walked.found;
}

test('no public type proposes a step without its price, minutes, access and cautions', () => {
  expect(exported.length).toBeGreaterThan(200);
  expect(findIn(exported).map(({ type, at, missing }) => `${at} (${type}) lacks ${missing.join(', ')}`)).toEqual([]);
});

test('the answers that propose steps are among them', () => {
  const carrying = exported
    .filter(({ target }) => (target.flags & (ts.SymbolFlags.Interface | ts.SymbolFlags.TypeAlias)) !== 0)
    .filter(({ target }) => {
      const type = checker.getDeclaredTypeOfSymbol(target);
      const all = type.isUnion() ? type.types : [type];
      return all.every((one) => FACTS.every((fact) => checker.getPropertyOfType(one, fact) !== undefined));
    })
    .map(({ name }) => name);
  for (const name of ['TestAdvice', 'RepairStep', 'TestNotNow', 'PlanStep', 'ProofOfRepair', 'NextStep']) {
    expect(carrying).toContain(name);
  }
});

test('a type that names a step without them is found: what is excused above would be', () => {
  for (const name of ['CostlyStep', 'TestResult', 'RepairTried', 'DominatedTest']) {
    const found = findIn(
      exported.filter((one) => one.name === name),
      {},
    );
    expect(found.length, name).toBeGreaterThan(0);
    expect(found[0]!.missing, name).toContain('cautions');
  }
});

test('whoever is excused exists', () => {
  const names = new Set(exported.map(({ name }) => name));
  expect(Object.keys(NOT_PROPOSED).filter((name) => !names.has(name))).toEqual([]);
});
