import { describe, expect, test } from 'vitest';
import { ReadingError } from '../errors/readingError.ts';
import { actionThresholds } from './actionThresholds.ts';

const stakes = { benefit: 50, loss: 10, sensitivity: 0.9, falsePositiveRate: 0.2 };

test('a free test moves both thresholds away from the one without a test', () => {
  const found = actionThresholds(stakes);
  expect(found.testingThreshold).toBeLessThan(found.noTestThreshold);
  expect(found.testTreatmentThreshold).toBeGreaterThan(found.noTestThreshold);
});

test('a dearer test is worth buying between narrower limits, and at last nowhere', () => {
  const width = (testPrice: number) => {
    const found = actionThresholds({ ...stakes, testPrice });
    return found.testTreatmentThreshold - found.testingThreshold;
  };
  expect(width(1)).toBeLessThan(width(0));
  expect(width(20)).toBeLessThan(0);
});

test('a free test that tells nothing leaves one threshold', () => {
  for (const rate of [0, 0.3, 1]) {
    const found = actionThresholds({ ...stakes, sensitivity: rate, falsePositiveRate: rate });
    expect(found.testingThreshold).toBeCloseTo(found.noTestThreshold, 12);
    expect(found.testTreatmentThreshold).toBeCloseTo(found.noTestThreshold, 12);
  }
});

test('a free perfect test is worth buying whenever there is doubt', () => {
  const found = actionThresholds({ ...stakes, sensitivity: 1, falsePositiveRate: 0 });
  expect(found).toMatchObject({ testingThreshold: 0, testTreatmentThreshold: 1 });
});

describe('numbers that cannot be', () => {
  test.each([
    ['benefit', 0],
    ['loss', -1],
    ['testPrice', NaN],
    ['sensitivity', 1.2],
    ['falsePositiveRate', -0.1],
    ['benefit', Infinity],
  ])('%s %d is refused with its path', (name, value) => {
    expect(() => actionThresholds({ ...stakes, [name]: value })).toThrow(
      expect.objectContaining({ name: 'ReadingError', code: 'stakes-invalid', path: `/${name}` }),
    );
  });

  test('all of them at once', () => {
    try {
      actionThresholds({ benefit: -1, loss: -1, sensitivity: 2, falsePositiveRate: 2 });
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(ReadingError);
      expect((error as ReadingError).problems.map(({ path }) => path)).toEqual([
        '/benefit',
        '/loss',
        '/sensitivity',
        '/falsePositiveRate',
      ]);
    }
  });
});
