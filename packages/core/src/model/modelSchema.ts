import * as z from 'zod/mini';
import { idSchema as id } from './idSchema.ts';
import { LARGEST_NUMBER } from '../validation/largestNumber.ts';
import type { LanguageCode } from './localText.ts';
import { dependences, drivings, engineStates, hazards } from './model.ts';
import { readingModelSchema } from './readingModelSchema.ts';
import { renamingSchema } from './renamingSchema.ts';

const text = z.string().check(z.minLength(1));
const textByLanguage = { en: text, de: z.optional(text) } satisfies Record<LanguageCode, z.ZodMiniType>;
const localText = z.union([text, z.strictObject(textByLanguage)]);
const nonNegative = z.number().check(z.nonnegative(), z.maximum(LARGEST_NUMBER));
const share = z.number().check(z.nonnegative(), z.maximum(1));
const ess = nonNegative;
const idMap = <T extends z.ZodMiniType>(value: T) => z.record(id, value);
const listOf = <T extends z.ZodMiniType>(item: T) => z.array(item);

const quantity = z.strictObject({
  best: nonNegative,
  low: nonNegative,
  high: nonNegative,
  ess,
  source: id,
  definitional: z.optional(z.boolean()),
});
const probability = z.strictObject({
  best: share,
  low: share,
  high: share,
  ess,
  source: id,
  definitional: z.optional(z.boolean()),
});
const row = z.strictObject({ p: idMap(nonNegative), ess, source: id });
const conditionalRow = z.strictObject({
  when: idMap(z.array(id).check(z.minLength(1))),
  p: idMap(nonNegative),
  ess,
  source: id,
});
const requirement = idMap(id);
/** A test or an intake feature, or one answer to it as `feature:value`. */
const evidenceName = z.string().check(z.regex(/^[a-z0-9][a-z0-9_-]*(:[a-z0-9][a-z0-9_-]*)?$/));
const labelled = z.strictObject({ id, label: text });

const source = z.strictObject({
  id,
  kind: z.enum(['published', 'common-practice', 'judgement', 'definition']),
  text,
  checked: z.optional(text),
});

const contextFeature = z.strictObject({
  id,
  label: text,
  question: text,
  values: z
    .array(
      z.strictObject({ id, label: text, why: text, multipliers: idMap(quantity), costs: z.optional(idMap(quantity)) }),
    )
    .check(z.minLength(1)),
});

const mechanism = z.strictObject({
  id,
  label: text,
  note: z.optional(text),
  states: z.array(labelled).check(z.minLength(2)),
  background: z.optional(row),
  parents: z.optional(z.array(id).check(z.minLength(1))),
  rows: z.optional(z.array(conditionalRow).check(z.minLength(1))),
});

const cause = z.strictObject({
  id,
  label: text,
  group: id,
  description: text,
  customerFeels: text,
  ifDrivenOn: localText,
  driving: z.enum(drivings),
  weight: quantity,
  requires: z.optional(requirement),
  activeFraction: probability,
  states: idMap(row),
});

const repair = z.strictObject({
  id,
  label: text,
  cures: idMap(probability),
  minutes: quantity,
  parts: quantity,
  access: listOf(id),
  cautions: listOf(id),
  sameAs: z.optional(z.strictObject({ test: id, cured: id, notCured: id })),
  referral: z.optional(z.boolean()),
});

const test = z.strictObject({
  id,
  label: text,
  category: id,
  how: text,
  note: z.optional(text),
  outcomes: z.array(labelled).check(z.minLength(2)),
  rows: z.array(conditionalRow).check(z.minLength(1)),
  readings: z.optional(z.array(readingModelSchema).check(z.minLength(1))),
  appliesWhen: z.optional(z.array(requirement).check(z.minLength(1))),
  minutes: quantity,
  consumables: quantity,
  equipment: listOf(id),
  access: id,
  engine: z.optional(z.enum(engineStates)),
  cautions: listOf(id),
  faultMustBeActive: z.boolean(),
  asleep: z.optional(row),
  mayCause: z.optional(idMap(quantity)),
  persistsAs: z.optional(id),
  follows: z.optional(
    z.array(z.strictObject({ test: id, outcomes: listOf(id).check(z.minLength(1)) })).check(z.minLength(1)),
  ),
  repeatability: probability,
});

const access = z.strictObject({
  id,
  label: text,
  requires: listOf(id),
  openMinutes: quantity,
  closeMinutes: quantity,
  parts: quantity,
  engine: z.optional(z.enum(engineStates)),
  opensEngine: z.optional(z.literal(true)),
  cautions: listOf(id),
  cautionsClosing: listOf(id),
});

const caution = z.strictObject({
  id,
  hazard: z.enum(hazards),
  text: localText,
  source: id,
  staysWhileOpen: z.optional(z.literal(true)),
});

const verification = z.strictObject({
  order: listOf(text),
  similarConditions: z.strictObject({
    rpmWithin: nonNegative,
    loadWithinPercent: nonNegative,
    sameWarmUpState: z.boolean(),
    source: id,
  }),
  rule: z.strictObject({ text, source: id }),
  checks: z
    .array(
      z.strictObject({
        when: idMap(z.array(id).check(z.minLength(1))),
        label: text,
        exposure: text,
        minutes: quantity,
        distanceKm: nonNegative,
        days: z.optional(nonNegative),
        source: id,
      }),
    )
    .check(z.minLength(1)),
  cautions: listOf(id),
  accept: z.strictObject({ countsPer1000Firings: quantity, monitorRun: text, source: id }),
});

const shape = {
  format: z.literal('faultodds-model'),
  version: z.literal(1),
  id,
  contentVersion: z.optional(z.int().check(z.gte(1), z.lte(1e9))),
  title: text,
  premise: text,
  currencyUnit: text,
  labourPerHour: quantity,
  sources: listOf(source),
  contextCap: z.strictObject({ low: nonNegative, high: nonNegative, ess, source: id }),
  twoCauseShare: z.optional(probability),
  contextOverlaps: listOf(z.strictObject({ a: evidenceName, b: evidenceName })),
  context: listOf(contextFeature),
  causeGroups: listOf(labelled),
  causes: listOf(cause),
  mechanisms: listOf(mechanism),
  testCategories: listOf(labelled),
  tests: listOf(test),
  repairs: listOf(repair),
  access: listOf(access),
  equipment: listOf(z.strictObject({ id, label: text, common: z.boolean() })),
  cautions: listOf(caution),
  plausibleFrom: probability,
  goneWithoutCure: probability,
  presentIfNotNoted: probability,
  aboutTheSame: z.optional(probability),
  leastRepairMinutes: quantity,
  needlessOpening: quantity,
  dependentPairs: listOf(
    z.strictObject({ a: evidenceName, b: evidenceName, kind: z.enum(dependences), shared: text, note: text }),
  ),
  verification,
  valveFaultSigns: listOf(
    z.strictObject({
      state: text,
      cranking: text,
      leakDown: text,
      running: text,
      vacuum: text,
      exhaust: text,
      inCylinder: text,
      source: id,
    }),
  ),
  fillingLimit: z.strictObject({
    formula: text,
    assumption: text,
    limit: nonNegative,
    source: id,
    rows: listOf(
      z.strictObject({
        rpm: nonNegative,
        fullLift: nonNegative,
        halfLift: nonNegative,
        quarterLift: nonNegative,
      }),
    ),
  }),
  reasoningErrors: listOf(z.strictObject({ id, label: text, description: text, drill: text })),
  glossary: listOf(z.strictObject({ term: text, meaning: text })),
  renamed: z.optional(listOf(renamingSchema).check(z.maxLength(5_000))),
};

/** The shape of an assembled model. What a shape cannot say is checked by `findModelProblems`. */
export const modelSchema: z.ZodMiniType = z.strictObject(shape);

/** The shape of one file of a model that is kept in several: any part of it, with a `$schema` line for editors. */
export const modelPartSchema: z.ZodMiniType = z.strictObject({
  $schema: z.optional(z.string()),
  ...Object.fromEntries(Object.entries(shape).map(([key, value]) => [key, z.optional(value as z.ZodMiniType)])),
});
