import type { Terminal } from './terminal.ts';
import { terminalText } from './terminalText.ts';

type Stream = Pick<NodeJS.WriteStream, 'write'> & { readonly isTTY?: boolean; readonly columns?: number };

/** What the terminal of a process can do.
 * Colour: `FORCE_COLOR` (0 or false: off), then `NO_COLOR`, then `TERM=dumb`, else on a terminal only. Characters beyond ASCII: when
 * the locale says UTF-8, on macOS, and in the newer Windows terminals. */
export function terminalOf(process: {
  readonly stdout: Stream;
  readonly stderr: Stream;
  readonly stdin: { readonly isTTY?: boolean };
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly platform: string;
}): Terminal {
  const { stdout, stderr, stdin, env, platform } = process;
  const onTerminal = stdout.isTTY === true;
  const unicode = speaksUnicode(env, platform);
  return {
    write: (text) => void stdout.write(terminalText(text, unicode)),
    warn: (text) => void stderr.write(terminalText(text, unicode)),
    width: onTerminal ? Math.min(Math.max(stdout.columns ?? 80, 40), 100) : Infinity,
    colour: wantsColour(env, onTerminal),
    unicode,
    interactive: onTerminal && stdin.isTTY === true,
  };
}

function wantsColour(env: Readonly<Record<string, string | undefined>>, onTerminal: boolean): boolean {
  const { FORCE_COLOR: forced, NO_COLOR: none, TERM: kind } = env;
  if (forced !== undefined) return forced !== '0' && forced !== 'false';
  if (none !== undefined && none !== '') return false;
  return onTerminal && kind !== 'dumb';
}

function speaksUnicode(env: Readonly<Record<string, string | undefined>>, platform: string): boolean {
  if (platform === 'win32') return env['WT_SESSION'] !== undefined || env['TERM_PROGRAM'] === 'vscode';
  const locale = [env['LC_ALL'], env['LC_CTYPE'], env['LANG']].find((value) => value !== undefined && value !== '');
  return locale === undefined ? platform === 'darwin' : /utf-?8/i.test(locale);
}
