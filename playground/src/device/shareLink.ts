import { CaseError, type CaseDocument } from '@faultodds/core';
import { Inflate, deflateSync, strFromU8, strToU8 } from 'fflate';
import { t } from '../words/t.ts';
import { adler32 } from './adler32.ts';
import { shareMark } from './shareMark.ts';

const VERSION = '1.';
// a case is a few kilobytes; more than this is not one, whatever it claims to be
const MOST_BYTES = 2_000_000;

/** An address that holds the whole case in its fragment, which browsers send to nobody.
 * @param address of the page, with or without a fragment. */
export function shareLink(document: CaseDocument, address: string): string {
  const plain = strToU8(JSON.stringify(document));
  const bytes = deflateSync(plain, { level: 9 });
  let binary = '';
  for (const byte of bytes) binary += String.fromCharCode(byte);
  const text = btoa(binary).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
  return `${address.split('#')[0]}${shareMark}${VERSION}${adler32(plain).toString(36)}.${text}`;
}

/** What a fragment holds, still to be checked by `loadCase`.
 * @throws CaseError `link-version-unknown`, `link-damaged` or `link-too-large` */
export function documentOfLink(fragment: string): unknown {
  const rest = fragment.slice(shareMark.length);
  if (!rest.startsWith(VERSION)) {
    const known = /^\d+\./.test(rest);
    throw linkError(known ? 'link-version-unknown' : 'link-damaged', known ? t.link.newer : t.link.damaged);
  }
  // the first links had no checksum
  const [text, sum] = rest.slice(VERSION.length).trim().split('.').reverse();
  if (!text || sum === '') throw linkError('link-damaged', t.link.empty);
  try {
    const plain = inflate(bytesOf(text));
    if (sum !== undefined && adler32(plain).toString(36) !== sum) throw linkError('link-damaged', t.link.damaged);
    return JSON.parse(strFromU8(plain));
  } catch (error) {
    if (error instanceof CaseError) throw error;
    throw linkError('link-damaged', t.link.damaged);
  }
}

function bytesOf(text: string): Uint8Array {
  const binary = atob(text.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(binary, (letter) => letter.charCodeAt(0));
}

/** Piece by piece, so that a small link cannot unfold into a huge one. */
function inflate(packed: Uint8Array): Uint8Array {
  const pieces: Uint8Array[] = [];
  let size = 0;
  let ended = false;
  const stream = new Inflate((piece, final) => {
    size += piece.length;
    pieces.push(piece.slice());
    ended = final;
  });
  for (let at = 0; at < packed.length; at += 512) {
    stream.push(packed.subarray(at, at + 512), at + 512 >= packed.length);
    if (size > MOST_BYTES) throw linkError('link-too-large', t.link.large);
  }
  if (!ended) throw linkError('link-damaged', t.link.damaged);
  const whole = new Uint8Array(size);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

function linkError(code: string, message: string): CaseError {
  return new CaseError([{ code, path: '', message, hint: t.link.hint }]);
}
