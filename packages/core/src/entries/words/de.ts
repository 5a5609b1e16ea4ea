// German, for the makers of `words`, and how it writes numbers: the table of contents of this entry
export { german } from '../../words/languages/de/german.ts';
export { formatMinutes } from '../../words/languages/de/formats/formatMinutes.ts';
export { formatMoney } from '../../words/languages/de/formats/formatMoney.ts';
export { formatProbability } from '../../words/languages/de/formats/formatProbability.ts';
export { formatTimes } from '../../words/languages/de/formats/formatTimes.ts';
export { stopAndTow } from '../../words/languages/de/stopAndTow.ts';
export { usualCaution } from '../../words/languages/de/usualCaution.ts';
