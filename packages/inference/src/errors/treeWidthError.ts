import { InferenceError } from './inferenceError.ts';

/** Thrown, before anything large is allocated, when a network's clique tree does not fit the memory limit. Code: `tree-too-wide`. */
export class TreeWidthError extends InferenceError {
  /** Variables in the largest clique, minus one. */
  readonly width: number;
  /** Entries of the largest clique's table. */
  readonly largestTable: number;
  /** Entries of all tables. */
  readonly entries: number;
  /** Bytes that propagation would need. */
  readonly bytes: number;

  constructor(width: number, largestTable: number, entries: number, bytes: number, limit: number) {
    const show = (n: number): string => n.toLocaleString('en');
    super('TreeWidthError', [
      {
        code: 'tree-too-wide',
        path: '',
        message: `the clique tree has width ${width}, its largest table ${show(largestTable)} entries, all tables ${show(entries)}: ${show(bytes)} bytes, limit ${show(limit)}`,
        hint: 'raise memoryLimitBytes, or ask about part of the network: relevantNetwork(network, names)',
      },
    ]);
    this.width = width;
    this.largestTable = largestTable;
    this.entries = entries;
    this.bytes = bytes;
  }
}
