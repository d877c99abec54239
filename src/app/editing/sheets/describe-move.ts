import type { Edit } from '../../../document/index.ts';

/** The label of an edit that moves a sheet into another group, or out of one to the sheets without any. */
export function intoGroupLabel(title: string, from: string | undefined, to: string | undefined): string {
  return to
    ? `move the sheet “${title}” into the group “${to}”`
    : `move the sheet “${title}” out of the group “${from}”`;
}

/** Which group an edit with such a label moved a sheet into or out of, in words; undefined for any other. */
export function describeMove({ label }: Edit): string | undefined {
  const [, sheet, way, group] = /^move (the sheet .*) (into|out of) (the group .*)$/s.exec(label) ?? [];
  return sheet === undefined ? undefined : `${sheet} moved ${way} ${group}`;
}
