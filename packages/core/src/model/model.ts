import type { LocalText } from './localText.ts';
import type { Quantity } from './quantity.ts';
import type { ReadingModel } from './readingModel.ts';
import type { Renaming } from './renaming.ts';
import type { ConditionalRow, Row } from './row.ts';

/** Where numbers come from. */
export interface Source {
  readonly id: string;
  readonly kind: 'published' | 'common-practice' | 'judgement' | 'definition';
  readonly text: string;
  /** What of it was read, and what is from memory. */
  readonly checked?: string;
}

/** Something known at intake: one value of one feature, e.g. `injection-type: direct`. */
export interface ContextFeature {
  readonly id: string;
  readonly label: string;
  /** Asked of the person at the car. */
  readonly question: string;
  readonly values: readonly ContextValue[];
}

/** One answer to a context feature and what it does to the prior odds of causes. */
export interface ContextValue {
  readonly id: string;
  readonly label: string;
  readonly why: string;
  readonly multipliers: Readonly<Record<string, Quantity>>;
  /** Multipliers on minutes and parts of the tests, repairs and access named, e.g. a set of eight plugs instead of four. */
  readonly costs?: Readonly<Record<string, Quantity>>;
}

/** A condition on intake facts: all of the named features have the named value. */
export type Requirement = Readonly<Record<string, string>>;

/** A latent physical state that causes disturb. Roots depend on the cause, dependent ones on other mechanisms. */
export interface Mechanism {
  readonly id: string;
  readonly label: string;
  readonly note?: string;
  readonly states: readonly { readonly id: string; readonly label: string }[];
  /** Row of every cause that does not name this mechanism (roots only). */
  readonly background?: Row;
  /** Other mechanisms it depends on, in order (dependent ones only). */
  readonly parents?: readonly string[];
  readonly rows?: readonly ConditionalRow[];
}

/** Whether a car may be moved, gravest first: not at all; the shortest way to where it is repaired, gently; as usual, if nothing else shows. */
export const drivings = ['stop', 'shortest-way', 'as-usual'] as const;

/** One of `drivings`. */
export type Driving = (typeof drivings)[number];

/** A primary cause. Causes exclude each other. */
export interface Cause {
  readonly id: string;
  readonly label: string;
  readonly group: string;
  readonly description: string;
  readonly customerFeels: string;
  /** What comes of driving on with it, in sentences. */
  readonly ifDrivenOn: LocalText;
  /** Whether the car may be moved while this may be the cause. */
  readonly driving: Driving;
  /** Relative prior weight per 1000 such faults; normalised after context. */
  readonly weight: Quantity;
  /** Intake facts without which the cause cannot exist. Not stated counts as not fulfilled. */
  readonly requires?: Requirement;
  /** Share of visits in which the fault shows without provocation. */
  readonly activeFraction: Quantity;
  /** mechanism -> P(state | this cause); a mechanism not named takes its background row. */
  readonly states: Readonly<Record<string, Row>>;
}

/** What cures: the whole job from a closed engine, and the causes it cures with their chance of success. */
export interface Repair {
  readonly id: string;
  readonly label: string;
  readonly cures: Readonly<Record<string, Quantity>>;
  /** The whole job, opening and closing of its access included; what is open already is subtracted from its price. */
  readonly minutes: Quantity;
  /** Parts, with the gaskets that opening it needs, in the model's currency unit. */
  readonly parts: Quantity;
  readonly access: readonly string[];
  readonly cautions: readonly string[];
  /** The test that asks the same question, so that "replaced, it stayed" is never counted twice. */
  readonly sameAs?: { readonly test: string; readonly cured: string; readonly notCured: string };
  /** Referral to a specialist: ends the plan. */
  readonly referral?: boolean;
}

/** How complete an engine is, from least to most: taken apart; it can be turned by hand; complete, so that it can be cranked; it can run;
 * it can be driven. */
export const engineStates = ['apart', 'turned', 'complete', 'running', 'driven'] as const;

/** One of `engineStates`. */
export type EngineState = (typeof engineStates)[number];

/** A test or an observation: its outcomes, their likelihood rows and its price. */
export interface Test {
  readonly id: string;
  readonly label: string;
  readonly category: string;
  readonly how: string;
  readonly note?: string;
  readonly outcomes: readonly { readonly id: string; readonly label: string }[];
  /** First match wins; conditions name mechanisms or `cause`; the last row is the default. */
  readonly rows: readonly ConditionalRow[];
  /** Numeric readings it can be entered as, instead of an outcome. */
  readonly readings?: readonly ReadingModel[];
  /** Applies only if one of these requirements is fulfilled by the intake facts. */
  readonly appliesWhen?: readonly Requirement[];
  readonly minutes: Quantity;
  readonly consumables: Quantity;
  readonly equipment: readonly string[];
  readonly access: string;
  /** How complete the engine has to be for it, its own access aside. Everything else that leaves less is closed before; for a drive its own
   * access too. While something is open that leaves the engine `apart`, it cannot be done. Default `apart`: it can be done at any time. */
  readonly engine?: EngineState;
  readonly cautions: readonly string[];
  readonly faultMustBeActive: boolean;
  /** What it shows while the fault sleeps, whatever the cause (a new part and no misfire: it seems gone). Default: its last row, what a sound
   * engine shows. Only of a test that needs the fault. */
  readonly asleep?: Row;
  /** Causes that doing it may bring about (a connector not latched, a seal pinched), as multipliers on their odds once it is on record. */
  readonly mayCause?: Readonly<Record<string, Quantity>>;
  /** The outcome that says "the fault is still there". With two causes at once it is still there while either is. */
  readonly persistsAs?: string;
  /** A follow-up: it looks closer at what one of these results pointed at, and is not proposed before one of them is on record. */
  readonly follows?: readonly { readonly test: string; readonly outcomes: readonly string[] }[];
  /** Share of its error that would repeat if the same test were run again. */
  readonly repeatability: Quantity;
}

/** Something to open before a test or repair, paid once, opening and closing. */
export interface Access {
  readonly id: string;
  readonly label: string;
  readonly requires: readonly string[];
  readonly openMinutes: Quantity;
  readonly closeMinutes: Quantity;
  readonly parts: Quantity;
  /** How complete the engine is at most while it is open. Default `driven`. */
  readonly engine?: EngineState;
  /** Opening it counts as opening the engine: where it proves needless it counts for more than its price (`Model.needlessOpening`). */
  readonly opensEngine?: true;
  /** While it is opened; those that stay (see `Caution`) go with every step behind it. */
  readonly cautions: readonly string[];
  /** While it is closed again, and before the engine is started. */
  readonly cautionsClosing: readonly string[];
}

/** What a hazard can do, gravest first: kill or maim; injure; wreck the engine or the car. */
export const hazards = ['life', 'injury', 'damage'] as const;

/** One of `hazards`. */
export type Hazard = (typeof hazards)[number];

/** Something that can hurt, and how to prevent it. */
export interface Caution {
  readonly id: string;
  readonly hazard: Hazard;
  readonly text: LocalText;
  readonly source: string;
  /** A caution of an access that applies as long as it is open, not only while it is being opened. */
  readonly staysWhileOpen?: true;
}

/** How two pieces of evidence hang together: they ask one question, so that the answer to one answers the other and both share one likelihood; they tell one fact twice;
 * one slip can make both wrong (one gauge, one detector); or the mechanisms and causes of the model account for what they share. */
export const dependences = ['same-question', 'same-fact', 'shared-error', 'modelled'] as const;

/** One of `dependences`. */
export type Dependence = (typeof dependences)[number];

/** Two pieces of evidence that are not independent. */
export interface DependentPair {
  /** A test or an intake feature, or one answer to it as `feature:value`; of the kind `same-question` two tests, or a test and a feature. */
  readonly a: string;
  readonly b: string;
  readonly kind: Dependence;
  /** What they have in common, in a word or two. */
  readonly shared: string;
  /** Why, for people: nothing is decided by it. */
  readonly note: string;
}

/** How a repair is proved. */
export interface VerificationFacts {
  readonly order: readonly string[];
  readonly similarConditions: {
    readonly rpmWithin: number;
    readonly loadWithinPercent: number;
    readonly sameWarmUpState: boolean;
    readonly source: string;
  };
  readonly rule: { readonly text: string; readonly source: string };
  /** Exposure that checks a repair, by the intake value of `pattern` or `intermittency`. */
  readonly checks: readonly VerificationCheck[];
  /** Of every drive that proves a repair. */
  readonly cautions: readonly string[];
  readonly accept: {
    readonly countsPer1000Firings: Quantity;
    readonly monitorRun: string;
    readonly source: string;
  };
}

/** One row of the verification table. The first row whose `when` fits applies; the last fits always. */
export interface VerificationCheck {
  readonly when: Readonly<Record<string, readonly string[]>>;
  readonly label: string;
  readonly exposure: string;
  readonly minutes: Quantity;
  readonly distanceKm: number;
  readonly days?: number;
  readonly source: string;
}

/** The whole knowledge of one fault: data only. */
export interface Model {
  readonly format: 'faultodds-model';
  /** Of the format. */
  readonly version: 1;
  readonly id: string;
  /** The author's count of what the model says, from 1 on: raised when parts are renamed, split or removed. Default 1. */
  readonly contentVersion?: number;
  readonly title: string;
  readonly premise: string;
  readonly currencyUnit: string;
  readonly labourPerHour: Quantity;
  readonly sources: readonly Source[];
  /** Cap on the product of context multipliers per cause (definitional zeros are not capped). */
  readonly contextCap: { readonly low: number; readonly high: number; readonly ess: number; readonly source: string };
  /** Share of such faults that have two causes at once; needed to compile a model for pairs. */
  readonly twoCauseShare?: Quantity;
  readonly contextOverlaps: readonly { readonly a: string; readonly b: string }[];
  readonly context: readonly ContextFeature[];
  readonly causeGroups: readonly { readonly id: string; readonly label: string }[];
  readonly causes: readonly Cause[];
  readonly mechanisms: readonly Mechanism[];
  readonly testCategories: readonly { readonly id: string; readonly label: string }[];
  readonly tests: readonly Test[];
  readonly repairs: readonly Repair[];
  readonly access: readonly Access[];
  readonly equipment: readonly { readonly id: string; readonly label: string; readonly common: boolean }[];
  readonly cautions: readonly Caution[];
  /** From what probability a cause counts when it is judged whether the car may be moved. */
  readonly plausibleFrom: Quantity;
  /** Chance that the fault goes away with a repair that did not cure its cause (a connector disturbed, chance, a fault asleep). */
  readonly goneWithoutCure: Quantity;
  /** Chance that the fault was present during a test that needs it and of which nobody noted whether it was. */
  readonly presentIfNotNoted: Quantity;
  /** Share of the expected cost inside which two first steps count as about the same, because the numbers they are worked out from are no finer.
   * Default 0: every unit counts. */
  readonly aboutTheSame?: Quantity;
  /** Minutes a repair takes at least, however much of its access is open already. */
  readonly leastRepairMinutes: Quantity;
  /** What opening the engine counts for beyond its price, in the model's currency unit, where no repair of the true cause needs it. */
  readonly needlessOpening: Quantity;
  readonly dependentPairs: readonly DependentPair[];
  readonly verification: VerificationFacts;
  readonly valveFaultSigns: readonly {
    readonly state: string;
    readonly cranking: string;
    readonly leakDown: string;
    readonly running: string;
    readonly vacuum: string;
    readonly exhaust: string;
    readonly inCylinder: string;
    readonly source: string;
  }[];
  readonly fillingLimit: {
    readonly formula: string;
    readonly assumption: string;
    readonly limit: number;
    readonly source: string;
    readonly rows: readonly {
      readonly rpm: number;
      readonly fullLift: number;
      readonly halfLift: number;
      readonly quarterLift: number;
    }[];
  };
  readonly reasoningErrors: readonly {
    readonly id: string;
    readonly label: string;
    readonly description: string;
    readonly drill: string;
  }[];
  readonly glossary: readonly { readonly term: string; readonly meaning: string }[];
  /** What the parts of all earlier versions are called now. */
  readonly renamed?: readonly Renaming[];
}
