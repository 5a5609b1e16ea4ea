/** The payloads in a text of hexadecimal digits. Lines that begin with an 11-bit response address (7E8 to 7EF) are single, first and
 * consecutive frames of ISO 15765-2 and are joined per address; any other text is one payload, or several when
 * a line begins with the response byte 46 after a complete one. Digits without a partner are dropped. */
export function joinFrames(hex: string): readonly (readonly number[])[] {
  const lines = hex.split(/[\r\n>]+/).map((line) => line.replaceAll(/[\s:]/g, '').toUpperCase());
  const framed = lines.filter((line) => /^7E[89A-F]/.test(line));
  if (framed.length > 0) return joinAddressed(framed);
  const payloads: string[] = [];
  for (const line of lines.filter((one) => one !== '')) {
    const open = payloads.at(-1);
    if (open === undefined || (line.startsWith('46') && isComplete(open))) payloads.push(line);
    else payloads[payloads.length - 1] = open + line;
  }
  return payloads.map(bytesOf);
}

// one response byte and whole records of nine bytes: only then a 46 at the start of a line opens another response
function isComplete(digits: string): boolean {
  return (digits.length / 2) % 9 === 1;
}

function joinAddressed(lines: readonly string[]): number[][] {
  const open = new Map<string, { readonly bytes: number[]; readonly length: number }>();
  const done: number[][] = [];
  for (const line of lines) {
    const address = line.slice(0, 3);
    const [control = 0, ...rest] = bytesOf(line.slice(3));
    const kind = control >> 4;
    if (kind === 0) done.push(rest.slice(0, control & 0x0f));
    else if (kind === 1) {
      const [low = 0, ...data] = rest;
      open.set(address, { bytes: data, length: (control & 0x0f) * 256 + low });
    } else if (kind === 2) {
      const message = open.get(address);
      if (message !== undefined) for (const byte of rest) message.bytes.push(byte);
    }
  }
  return [...done, ...[...open.values()].map(({ bytes, length }) => bytes.slice(0, length))];
}

function bytesOf(digits: string): number[] {
  return Array.from({ length: Math.floor(digits.length / 2) }, (_, at) =>
    Number.parseInt(digits.slice(2 * at, 2 * at + 2), 16),
  );
}
