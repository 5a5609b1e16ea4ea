import * as z from 'zod/mini';

/** The shape of an id of a model. */
// 'constructor' is the one name of this pattern that every object already has
export const idSchema: z.ZodMiniType<string> = z.string().check(z.regex(/^(?!constructor$)[a-z0-9][a-z0-9_-]*$/));
