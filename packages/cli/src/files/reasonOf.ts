import { errnoOf } from './errnoOf.ts';

const reasons: Readonly<Record<string, string>> = {
  EACCES: 'permission denied',
  EPERM: 'permission denied',
  EBUSY: 'it is in use',
  EDQUOT: 'the disk is full',
  EFBIG: 'the file would exceed the size limit here',
  EIO: 'the disk or the terminal does not respond',
  EISDIR: 'it is a folder',
  ELOOP: 'its links lead in a circle',
  ENAMETOOLONG: 'the name is too long',
  ENOENT: 'there is no such file or folder',
  ENOSPC: 'the disk is full',
  ENOTDIR: 'the part before the last / is not a folder',
  EROFS: 'nothing can be written there',
};

/** Why a file could not be read or written, in words. */
export function reasonOf(error: unknown): string {
  const errno = errnoOf(error);
  const known = errno === undefined ? undefined : reasons[errno];
  return known ?? (error instanceof Error ? error.message : String(error));
}
