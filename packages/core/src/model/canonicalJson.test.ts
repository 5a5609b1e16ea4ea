import { expect, test } from 'vitest';
import { canonicalJson } from './canonicalJson.ts';

test('the sample of RFC 8785, sections 3.2.2 and 3.2.3', () => {
  const sample = String.raw`{
    "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
    "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
    "literals": [null, true, false]
  }`;
  expect(canonicalJson(JSON.parse(sample))).toBe(
    String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
  );
});

test('keys are sorted by UTF-16 code units: the sample of RFC 8785, section 3.2.3', () => {
  const sample = String.raw`{ "\u20ac": 1, "\r": 2, "\ufb33": 3, "1": 4, "\ud83d\ude00": 5, "\u0080": 6, "\u00f6": 7 }`;
  const values = canonicalJson(JSON.parse(sample)).match(/\d(?=[,}])/g);
  expect(values).toEqual(['2', '4', '6', '7', '1', '5', '3']);
});

test('the order of keys does not matter, that of a list does, and a key without a value is none', () => {
  expect(canonicalJson({ b: { d: 1, c: undefined }, a: 2 })).toBe(canonicalJson({ a: 2, b: { d: 1 } }));
  expect(canonicalJson([1, 2])).not.toBe(canonicalJson([2, 1]));
});
