import { refused, type Outcome } from '../../core/issue/issue.ts';

const REASONS: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EACCES: 'reading it is not permitted',
  EPERM: 'reading it is not permitted',
  EISDIR: 'it is a folder',
  ENOTDIR: 'a part of its path is a file, not a folder',
  ENAMETOOLONG: 'the name is too long',
};

/** The sentence for a file that the system does not let us read. */
export function cannotRead(path: string, error: unknown): Outcome<never> {
  const code = (error as NodeJS.ErrnoException).code ?? 'unknown';
  return refused('file-unreadable', `${path} cannot be read: ${REASONS[code] ?? `the system says ${code}`}.`);
}
