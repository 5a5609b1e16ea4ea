import * as z from 'zod/mini';

const limit = z.optional(z.union([z.number().check(z.nonnegative()), z.literal(Infinity)]));

/** Shape of `Limits`: no money or no time left is a limit, less than none is not. */
export const limitsSchema: z.ZodMiniType = z.strictObject({ money: limit, minutes: limit });
