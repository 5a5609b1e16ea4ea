import type { CaseDocument } from '@faultodds/core';
import { deflateSync, strToU8 } from 'fflate';
import { expect, test } from 'vitest';
import { adler32 } from './adler32.ts';
import { documentOfLink, shareLink } from './shareLink.ts';

const invented: CaseDocument = {
  format: 'faultodds-case',
  version: 3,
  id: 'case-1',
  title: 'Prüfstand – “four”',
  events: Array.from({ length: 12 }, (_, at) => ({ kind: 'note-added', text: `Remark number ${at}` })),
};
const link = shareLink(invented, 'https://example.test/some/where/?x=1#old');
const fragment = link.slice(link.indexOf('#'));
const codeOf = (text: string): string => {
  try {
    documentOfLink(text);
  } catch (error) {
    return (error as { code: string }).code;
  }
  return 'opened';
};

test('a link holds the whole case, under the address of the page, in letters that no messenger changes', () => {
  expect(documentOfLink(fragment)).toEqual(invented);
  expect(link).toMatch(/^https:\/\/example\.test\/some\/where\/\?x=1#case=1\.[a-z0-9]+\.[\w-]+$/);
});

test('the checksum is that of the standard', () => {
  // RFC 1950 defines it; the value for "Wikipedia" is the widely printed worked example 0x11E60398
  expect(adler32(strToU8('Wikipedia'))).toBe(0x11e60398);
});

test('a link that is cut off anywhere is refused', () => {
  for (let length = '#case='.length; length < fragment.length; length += 7)
    expect(codeOf(fragment.slice(0, length))).toBe('link-damaged');
});

test('a link with any one letter changed is refused, or holds the very same case', () => {
  let refused = 0;
  const letters = fragment.length - 2 - '#case=1.'.length;
  for (let at = '#case=1.'.length; at < fragment.length - 2; at += 1) {
    const letter = fragment[at] === 'A' ? 'B' : 'A';
    const changed = fragment.slice(0, at) + letter + fragment.slice(at + 1);
    if (codeOf(changed) === 'link-damaged') refused += 1;
    // a bit that unpacking never reads
    else expect(documentOfLink(changed), `letter ${at}`).toEqual(invented);
  }
  expect(refused).toBeGreaterThan(letters - 3);
});

test('a link of the first form, without a checksum, opens; one whose checksum is gone does not', () => {
  const [sum, text] = fragment.slice('#case=1.'.length).split('.');
  expect(documentOfLink(`#case=1.${text}`)).toEqual(invented);
  expect(codeOf(`#case=1..${text}`)).toBe('link-damaged');
  expect(codeOf(`#case=1.${sum}.`)).toBe('link-damaged');
});

test('a link of a later version says so', () => {
  expect(codeOf(fragment.replace('#case=1.', '#case=2.'))).toBe('link-version-unknown');
});

test('a small link that unfolds into something huge is refused before it has unfolded', () => {
  const packed = deflateSync(new Uint8Array(50_000_000), { level: 9 });
  let binary = '';
  for (const byte of packed) binary += String.fromCharCode(byte);
  const text = btoa(binary).replaceAll('+', '-').replaceAll('/', '_');
  expect(codeOf(`#case=1.1.${text}`)).toBe('link-too-large');
});
