// the words of belief and advice in English: the table of contents of this entry
export { formatMinutes } from './en/formatMinutes.ts';
export { formatMoney } from './en/formatMoney.ts';
export { formatProbability } from './en/formatProbability.ts';
export { formatTimes } from './en/formatTimes.ts';
export { describeEngine } from './en/describeEngine.ts';
export { describeReading } from './en/describeReading.ts';
export { describeObservation } from './en/describeObservation.ts';
export { sentenceForObservation } from './en/sentenceForObservation.ts';
export { sentenceWithoutObservation } from './en/sentenceWithoutObservation.ts';
export { sentenceForAdvice } from './en/sentenceForAdvice.ts';
export { sentenceForStopping } from './en/sentenceForStopping.ts';
export { sentenceForTest } from './en/sentenceForTest.ts';
export { sentenceForNotNow } from './en/sentenceForNotNow.ts';
export { sentenceForWarning } from './en/sentenceForWarning.ts';
export { usualCaution } from './en/usualCaution.ts';
