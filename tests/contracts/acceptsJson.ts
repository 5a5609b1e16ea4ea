type Schema = Readonly<Record<string, unknown>>;

/** Problems of a value under a JSON Schema, `[]` when it fits: a second reading of the shipped schemas, by nobody's library but the
 * specification. Knows the keywords the schemas here use; any other keyword is itself a problem, so that nothing is passed over.
 * Source: JSON Schema, draft 2020-12, core and validation vocabularies. */
export function acceptsJson(schema: Schema, value: unknown, path = ''): string[] {
  return Object.entries(schema).flatMap(([keyword, rule]) => check(schema, keyword, rule, value, path));
}

function check(schema: Schema, keyword: string, rule: unknown, value: unknown, path: string): string[] {
  const problem = (what: string): string[] => [`${path || '/'}: ${what}`];
  const isObject = typeof value === 'object' && value !== null && !Array.isArray(value);
  const properties = (schema['properties'] ?? {}) as Record<string, Schema>;
  switch (keyword) {
    case '$schema':
    case 'propertyNames':
      return keyword === 'propertyNames' && isObject
        ? Object.keys(value).flatMap((key) => acceptsJson(rule as Schema, key, `${path}/${key}`))
        : [];
    case 'type':
      return typeOf(value) === rule || (rule === 'number' && typeOf(value) === 'integer')
        ? []
        : problem(`not a ${String(rule)}`);
    case 'const':
      return value === rule ? [] : problem(`not ${String(rule)}`);
    case 'enum':
      return (rule as unknown[]).includes(value) ? [] : problem(`not one of ${String(rule)}`);
    case 'pattern':
      return typeof value !== 'string' || new RegExp(rule as string).test(value)
        ? []
        : problem(`does not match ${String(rule)}`);
    case 'minLength':
      return typeof value !== 'string' || value.length >= (rule as number) ? [] : problem('too short');
    case 'maxLength':
      return typeof value !== 'string' || value.length <= (rule as number) ? [] : problem('too long');
    case 'minimum':
      return typeof value !== 'number' || value >= (rule as number) ? [] : problem('too small');
    case 'exclusiveMinimum':
      return typeof value !== 'number' || value > (rule as number) ? [] : problem('too small');
    case 'maximum':
      return typeof value !== 'number' || value <= (rule as number) ? [] : problem('too large');
    case 'exclusiveMaximum':
      return typeof value !== 'number' || value < (rule as number) ? [] : problem('too large');
    case 'minItems':
      return !Array.isArray(value) || value.length >= (rule as number) ? [] : problem('too few');
    case 'maxItems':
      return !Array.isArray(value) || value.length <= (rule as number) ? [] : problem('too many');
    case 'items':
      return Array.isArray(value)
        ? value.flatMap((item, at) => acceptsJson(rule as Schema, item, `${path}/${at}`))
        : [];
    case 'required':
      return isObject
        ? (rule as string[]).filter((key) => !Object.hasOwn(value, key)).flatMap((key) => problem(`${key} missing`))
        : [];
    case 'properties':
      return isObject
        ? Object.entries(value).flatMap(([key, inner]) =>
            Object.hasOwn(properties, key) ? acceptsJson(properties[key]!, inner, `${path}/${key}`) : [],
          )
        : [];
    case 'additionalProperties':
      if (!isObject) return [];
      return Object.entries(value)
        .filter(([key]) => !Object.hasOwn(properties, key))
        .flatMap(([key, inner]) =>
          rule === false ? problem(`unknown ${key}`) : acceptsJson(rule as Schema, inner, `${path}/${key}`),
        );
    case 'anyOf':
    case 'oneOf': {
      const branches = (rule as Schema[]).map((branch) => acceptsJson(branch, value, path));
      const fitting = branches.filter((problems) => problems.length === 0).length;
      return fitting === 1 || (keyword === 'anyOf' && fitting > 0)
        ? []
        : branches.toSorted((a, b) => a.length - b.length)[0]!.concat(problem(keyword));
    }
    default:
      return problem(`keyword ${keyword} is not known here`);
  }
}

function typeOf(value: unknown): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'array';
  return Number.isInteger(value) ? 'integer' : typeof value;
}
