// network files
export { parseNetworkJson } from '../parseNetworkJson.ts';
export { parseBif } from '../parseBif.ts';
export { FormatError } from '../formatError.ts';
