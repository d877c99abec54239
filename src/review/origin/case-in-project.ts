import type { Book, Case, Expectation } from '../../document/index.ts';
import { namesOf } from '../../notebook/index.ts';

/** A case with the names that a project has for the lines of its template, or the name of a line that the project lacks. */
export type CaseInProject =
  | { readonly ok: true; readonly example: Case }
  | { readonly ok: false; readonly lacks: string };

/** Spells cases of a template with the names of a project; `called` has what its lines are called in the template. */
export function caseSpeller(
  template: Book,
  called: ReadonlyMap<string, string>,
): (example: Case) => CaseInProject {
  const names = namesOf(template);
  const now = new Map([...called].map(([is, was]) => [was, is]));
  const full = new Map<string, string>();
  for (const id of names.keys()) {
    const short = id.slice(id.indexOf('.') + 1);
    // A short name that two sheets have stands for neither.
    full.set(short, full.has(short) ? '' : id);
  }
  /** The full id in the template, and what stands behind it: the side of a check. */
  const found = (written: string): readonly [id: string, side: string] | undefined => {
    const [, line = written, side = ''] = /^(.*)(\.(?:demand|capacity))$/.exec(written) ?? [];
    const id = [written, full.get(written)].find((one) => one && names.has(one));
    if (id) return [id, ''];
    const of = [line, full.get(line)].find((one) => one && names.has(one));
    return of ? [of, side] : undefined;
  };
  return (example) => {
    let lacks: string | undefined;
    const spell = (written: string): string => {
      const [id = written, side = ''] = found(written) ?? [];
      return `${now.get(id) ?? id}${side}`;
    };
    /** The same of what is entered: without its line there is nothing to run. */
    const entered = (written: string): string => {
      const id = found(written)?.[0];
      if (id !== undefined && !now.has(id)) lacks ??= id;
      return spell(written);
    };
    const column = (table: string, written: string): string => {
      const id = `${found(table)?.[0] ?? table}.${written}`;
      return (now.get(id) ?? id).split('.').at(-1) ?? written;
    };
    const { set, tables, expect, ...rest } = example;
    const spelled: Case = {
      ...rest,
      ...(set && {
        set: Object.fromEntries(Object.entries(set).map(([name, entry]) => [entered(name), entry])),
      }),
      ...(tables && {
        tables: Object.fromEntries(
          Object.entries(tables).map(([table, rows]) => [
            entered(table),
            rows.map((row) =>
              Object.fromEntries(Object.entries(row).map(([name, cell]) => [column(table, name), cell])),
            ),
          ]),
        ),
      }),
      expect: expect.map((one): Expectation => ({ ...one, name: spell(one.name) })),
    };
    return lacks === undefined ? { ok: true, example: spelled } : { ok: false, lacks };
  };
}
