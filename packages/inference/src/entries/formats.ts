// network files
export { parseNetworkJson } from '../formats/parseNetworkJson.ts';
export { parseBif } from '../formats/parseBif.ts';
export { FormatError } from '../errors/formatError.ts';
