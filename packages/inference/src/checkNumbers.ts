import { OptionError } from './optionError.ts';

/** What a number has to be. */
export interface NumberRule {
  readonly least?: number;
  readonly most?: number;
  readonly whole?: boolean;
}

/** Looks at numbers that came from outside. One that is `undefined` was left out.
 * @param rules path -> the number that was given there, and what it has to be.
 * @throws OptionError with every one that is wrong */
export function checkNumbers(rules: Readonly<Record<string, readonly [value: unknown, rule: NumberRule]>>): void {
  const problems = Object.entries(rules).flatMap(
    ([path, [value, { least = -Infinity, most = Infinity, whole = false }]]) => {
      if (value === undefined) return [];
      if (typeof value === 'number' && value >= least && value <= most && (!whole || Number.isInteger(value)))
        return [];
      const kind = `${whole ? 'a whole number' : 'a number'} from ${least} to ${most}`;
      const found = typeof value === 'number' ? String(value) : `a ${typeof value}`;
      return [{ code: 'option-invalid', path, message: `found ${found}, expected ${kind}`, hint: `give ${kind}` }];
    },
  );
  const [first, ...others] = problems;
  if (first !== undefined) throw new OptionError([first, ...others]);
}
