import { expect, test } from 'vitest';
import { smallModel } from '../../../../tests/fixtures/smallModel.ts';
import { compileModel } from '../compiled/compileModel.ts';
import { accessBits, accessIds } from './accessBits.ts';

// Listed from the inside out, so that the model's own order is the wrong one; both covers stand beside each other.
const compiled = compileModel(
  smallModel({
    causes: { a: 1 },
    access: {
      shaft: { minutes: 50, requires: ['cover', 'tray'] },
      tray: { minutes: 10, requires: ['hood'] },
      cover: { minutes: 20, requires: ['hood'] },
      hood: { minutes: 4 },
    },
  }),
);

test('what has to be opened first stands first, whatever the order of the model', () => {
  expect(accessIds(compiled, accessBits(compiled, ['shaft']))).toEqual(['hood', 'tray', 'cover', 'shaft']);
});

test('what is equally deep keeps the order of the model, whatever the order of asking', () => {
  expect(accessIds(compiled, accessBits(compiled, ['cover', 'tray']))).toEqual(['hood', 'tray', 'cover']);
});

test('bits are those of the accesses and all they require', () => {
  const bit = (id: string) => compiled.accessBit.get(id)!;
  expect(accessBits(compiled, ['tray'])).toBe(bit('tray') | bit('hood'));
  expect(accessBits(compiled, ['tray', 'shaft'])).toBe(bit('tray') | bit('hood') | bit('shaft') | bit('cover'));
});

test('the first access of the model is one like the others', () => {
  expect(accessBits(compiled, ['none'])).toBe(compiled.accessBit.get('none'));
  expect(accessBits(compiled, ['none', 'hood'])).toBe(
    compiled.accessBit.get('none')! | compiled.accessBit.get('hood')!,
  );
  expect(accessIds(compiled, accessBits(compiled, ['cover', 'none']))).toEqual(['none', 'hood', 'cover']);
});
