// trouble codes and the counts of the misfire monitors
export type { CodeStatus, MalformedCode, TroubleCode } from '../codes/troubleCode.ts';
export { parseTroubleCodes, type TroubleCodeList } from '../codes/parseTroubleCodes.ts';
export { describeTroubleCode, type CodeCondition, type CodeMeaning } from '../codes/describeTroubleCode.ts';
export type { CodeOptions, CodeObservations, CodeRemark, UnusedCode, DecodedCode } from '../codes/codeObservations.ts';
export { isFilledByCodes } from '../codes/isFilledByCodes.ts';
export { observationsFromCodes } from '../codes/observationsFromCodes.ts';
export { decodeMonitorResponse, type MonitorCount, type MonitorResponse } from '../codes/decodeMonitorResponse.ts';
export { countsOfMonitors } from '../codes/countsOfMonitors.ts';
export { storedAverage } from '../codes/storedAverage.ts';
