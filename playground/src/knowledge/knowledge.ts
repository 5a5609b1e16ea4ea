import {
  compileModel,
  type Belief,
  type Cause,
  type CompiledModel,
  type Model,
  type Observation,
  type Repair,
  type Source,
  type Test,
  type TestResult,
  textIn,
  beliefOf,
} from '@faultodds/core';
import { describeReading } from '@faultodds/core/words';
import { coreLanguage } from '../words/coreLanguage.ts';
import { t } from '../words/t.ts';

/** An invented case that can be replayed: unparsed document with what the list shows of it. */
export interface Demo {
  readonly id: string;
  readonly title: string;
  readonly document: unknown;
}

/** The compiled model with everything looked up by id, made once when the page opens. */
export interface Knowledge {
  readonly compiled: CompiledModel;
  readonly model: Model;
  readonly demos: readonly Demo[];
  /** What is believed of any such engine, before intake. */
  readonly anyEngine: Belief;
  cause(id: string): Cause | undefined;
  test(id: string): Test | undefined;
  repair(id: string): Repair | undefined;
  /** Labels by id; an unknown id is shown as it is. */
  causeLabel(id: string): string;
  testLabel(id: string): string;
  outcomeLabel(test: string, outcome: string): string;
  repairLabel(id: string): string;
  accessLabel(id: string): string;
  equipmentLabel(id: string): string;
  groupLabel(id: string): string;
  cautionText(id: string): string;
  /** What comes of driving on with a cause. */
  drivenOn(cause: string): string;
  /** What kind of source it is, and its text. */
  sourceKind(id: string): Source['kind'];
  sourceText(id: string): string;
  /** What was seen or done, as two short phrases. */
  observed(observation: Observation): { readonly what: string; readonly outcome: string };
}

/** Compiles the model the page is built with. The build has checked it; checking it again would cost a third of the start. */
export function loadKnowledge(misfire: unknown, demoCases: readonly unknown[]): Knowledge {
  const model = misfire as Model;
  const compiled = compileModel(model);
  const byId = <T extends { readonly id: string }>(list: readonly T[]): Map<string, T> =>
    new Map(list.map((item) => [item.id, item]));
  const causes = byId(model.causes);
  const tests = byId(model.tests);
  const repairs = byId(model.repairs);
  const access = byId(model.access);
  const equipment = byId(model.equipment);
  const groups = byId(model.causeGroups);
  const cautions = byId(model.cautions);
  const sources = byId(model.sources);

  const outcomeLabel = (test: string, outcome: string): string =>
    tests.get(test)?.outcomes.find((one) => one.id === outcome)?.label ?? outcome;

  const seen = ({ test, outcome, likelihood, reading }: TestResult): string => {
    const label = outcome === undefined ? '' : outcomeLabel(test, outcome);
    if (reading !== undefined) return [describeReading(reading, coreLanguage), label].filter(Boolean).join(', ');
    if (label !== '') return label;
    const shares = Object.entries(likelihood ?? {}).sort(([, a], [, b]) => b - a);
    return shares.length > 0
      ? shares.map(([id, weight]) => t.entry.degree.share(weight, outcomeLabel(test, id))).join(t.entry.degree.to)
      : t.notes.unclear;
  };

  return {
    compiled,
    model,
    demos: demoCases.filter(hasIdAndTitle).map((document) => ({ id: document.id, title: document.title, document })),
    anyEngine: beliefOf(compiled, { context: {}, observations: [] }),
    cause: (id) => causes.get(id),
    test: (id) => tests.get(id),
    repair: (id) => repairs.get(id),
    causeLabel: (id) => causes.get(id)?.label ?? id,
    testLabel: (id) => tests.get(id)?.label ?? id,
    outcomeLabel,
    repairLabel: (id) => repairs.get(id)?.label ?? id,
    accessLabel: (id) => access.get(id)?.label ?? id,
    equipmentLabel: (id) => equipment.get(id)?.label ?? id,
    groupLabel: (id) => groups.get(id)?.label ?? id,
    cautionText: (id) => textIn(cautions.get(id)?.text ?? id, coreLanguage.code),
    drivenOn: (cause) => textIn(causes.get(cause)?.ifDrivenOn ?? '', coreLanguage.code),
    sourceKind: (id) => sources.get(id)?.kind ?? 'judgement',
    sourceText: (id) => sources.get(id)?.text ?? id,
    observed(observation) {
      if (observation.kind === 'repair-tried')
        return {
          what: repairs.get(observation.repair)?.label ?? observation.repair,
          outcome: observation.cured ? t.notes.cured : t.notes.stayed,
        };
      return { what: tests.get(observation.test)?.label ?? observation.test, outcome: seen(observation) };
    },
  };
}

function hasIdAndTitle(document: unknown): document is { readonly id: string; readonly title: string } {
  return (
    typeof document === 'object' &&
    document !== null &&
    'id' in document &&
    typeof document.id === 'string' &&
    'title' in document &&
    typeof document.title === 'string'
  );
}
