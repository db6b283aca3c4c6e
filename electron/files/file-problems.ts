import { refused, type Outcome } from '../../core/issue/issue.ts';

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file or folder',
  EACCES: 'it is not permitted',
  EPERM: 'it is not permitted',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of its path is a file, not a folder',
  EEXIST: 'something of that name is in the way',
  ENAMETOOLONG: 'the name is too long',
  ENOSPC: 'the disk is full',
};

/** Why the system refused, in words. */
export function systemReason(error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code ?? 'unknown';
  return REASONS[code] ?? `the system says ${code}`;
}

/** The sentence for a file that the system does not let us read. */
export function cannotRead(path: string, error: unknown): Outcome<never> {
  return refused('file-unreadable', `${path} cannot be read: ${systemReason(error)}.`);
}
