// the figures another Svelte page can use by themselves; they need styles/tokens.css and, for looks, styles/base.css
export { default as EngineGrid } from './figures/EngineGrid.svelte';
export { default as Figure } from './figures/Figure.svelte';
export type { FigureTable } from './figures/figureTable.ts';
export { default as Intervals } from './figures/Intervals.svelte';
export type { IntervalRow } from './figures/intervalRow.ts';
export { default as RankShift } from './figures/RankShift.svelte';
export type { RankShiftColumn, RankShiftLine, RankShiftScale } from './figures/rankShift.ts';
export { default as RankShiftSheet } from './figures/RankShiftSheet.svelte';
export { default as WeightOfEvidence } from './figures/WeightOfEvidence.svelte';
export type { WeightRow } from './figures/weightRow.ts';
