// the words of belief and advice in German, name by name as in English: the table of contents of this entry
export { formatMinutes } from './de/formatMinutes.ts';
export { formatMoney } from './de/formatMoney.ts';
export { formatProbability } from './de/formatProbability.ts';
export { formatTimes } from './de/formatTimes.ts';
export { describeEngine } from './de/describeEngine.ts';
export { describeReading } from './de/describeReading.ts';
export { describeObservation } from './de/describeObservation.ts';
export { sentenceForObservation } from './de/sentenceForObservation.ts';
export { sentenceWithoutObservation } from './de/sentenceWithoutObservation.ts';
export { sentenceForAdvice } from './de/sentenceForAdvice.ts';
export { sentenceForStopping } from './de/sentenceForStopping.ts';
export { sentenceForTest } from './de/sentenceForTest.ts';
export { sentenceForNotNow } from './de/sentenceForNotNow.ts';
export { sentenceForWarning } from './de/sentenceForWarning.ts';
export { usualCaution } from './de/usualCaution.ts';
