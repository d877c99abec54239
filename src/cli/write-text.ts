import { writeFileSync } from 'node:fs';
import { Refused } from './refused.ts';

/** Writes a text to a file as UTF-8, in place of what was there. */
export function writeText(path: string, text: string): void {
  try {
    writeFileSync(path, text, 'utf8');
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : 'unknown';
    throw new Refused(`${path} cannot be written (${reasons[code] ?? `the system says ${code}`})`);
  }
}

const reasons: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such folder',
  EISDIR: 'it is a folder',
  EACCES: 'it may not be written',
  EROFS: 'it may not be written',
  ENOSPC: 'there is no space left',
};
