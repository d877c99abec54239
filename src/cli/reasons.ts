import { spelledName } from '../notebook/index.ts';
import { splitAssignment } from './options.ts';
import { Refused } from './refused.ts';
import { shorten } from './shorten.ts';

/** Why values are stated, by the names that were given for it. */
export interface Reasons {
  /** The reason said for any of these names; `''`, which is open, where none was. */
  readonly of: (...names: readonly string[]) => string;
  /** Refuses what was said of a name nothing is stated for. */
  readonly refuseUnused: () => void;
}

/** Reads `--reason NAME=WORDS`. */
export function reasonsOf(said: readonly string[]): Reasons {
  const reasons = new Map<string, string>();
  for (const text of said) {
    const [written, reason] = splitAssignment('reason', text, 'WORDS');
    const name = spelledName(written);
    if (reasons.has(name)) throw new Refused(`--reason ${shorten(name)} is given twice`);
    reasons.set(name, reason.trim());
  }
  const used = new Set<string>();
  return {
    of: (...names) => {
      const found = names.map(spelledName).filter((name) => reasons.has(name));
      for (const name of found) used.add(name);
      return reasons.get(found[0] ?? '') ?? '';
    },
    refuseUnused: () => {
      const left = [...reasons.keys()].find((name) => !used.has(name));
      if (left !== undefined)
        throw new Refused(
          `--reason ${shorten(left)}: no value is stated for that; --set or --table on a calculated line or column states one`,
        );
    },
  };
}
