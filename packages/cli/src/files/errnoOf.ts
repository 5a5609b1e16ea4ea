/** The system's code of an error ("ENOENT"); nothing where it has none. */
export function errnoOf(error: unknown): string | undefined {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : undefined;
}
