import { expect, test } from 'vitest';
import { CaseError } from './caseError.ts';
import { EvidenceError } from './evidenceError.ts';
import { FaultoddsError, type Problem } from './faultoddsError.ts';
import { ModelError } from './modelError.ts';
import { ReadingError } from './readingError.ts';

const problem = (code: string, message = 'found 3'): Problem => ({ code, path: `/${code}`, message, hint: 'write 2' });

test('an error is the first of its problems and holds them all', () => {
  const error = new ModelError([problem('too-big'), problem('too-small')]);
  expect(error).toMatchObject({ code: 'too-big', path: '/too-big', hint: 'write 2' });
  expect(error.problems.map(({ code }) => code)).toEqual(['too-big', 'too-small']);
});

test('its text says what was found, where, what to do, and how many more there are', () => {
  const error = new ModelError([problem('too-big'), problem('too-small'), problem('odd')]);
  expect(error.message).toBe('too-big: found 3\n  at /too-big\n  hint: write 2\n  and 2 more');
  expect(new ModelError([{ ...problem('too-big'), path: '' }]).message).toBe(
    'too-big: found 3\n  at /\n  hint: write 2',
  );
});

test.each([
  [ModelError, 'ModelError'],
  [EvidenceError, 'EvidenceError'],
  [CaseError, 'CaseError'],
  [ReadingError, 'ReadingError'],
])('%o is told apart by class and by name', (Kind, name) => {
  const error = new Kind([problem('odd')]);
  expect(error).toBeInstanceOf(FaultoddsError);
  expect(error).toBeInstanceOf(Error);
  expect(error.name).toBe(name);
});

test('a message that quotes a whole file is cut', () => {
  const error = new ModelError([problem('long', 'x'.repeat(100_000))]);
  expect(error.problems[0]!.message.length).toBeLessThan(600);
  expect(error.message.length).toBeLessThan(700);
  expect(error.problems[0]!.message.endsWith('…')).toBe(true);
});
