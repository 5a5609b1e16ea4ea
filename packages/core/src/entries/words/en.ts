// English, for the makers of `words`, and how it writes numbers: the table of contents of this entry
export { english } from '../../words/languages/english.ts';
export { formatMinutes } from '../../words/languages/en/formats/formatMinutes.ts';
export { formatMoney } from '../../words/languages/en/formats/formatMoney.ts';
export { formatProbability } from '../../words/languages/en/formats/formatProbability.ts';
export { formatTimes } from '../../words/languages/en/formats/formatTimes.ts';
export { stopAndTow } from '../../words/languages/en/stopAndTow.ts';
export { usualCaution } from '../../words/languages/en/usualCaution.ts';
