import { type Problem, problem } from '../../../diagnostics/index.ts';
import { type Book, foldedOption, type Option } from '../../../document/index.ts';
import { namesIn, parseFormula, textsIn } from '../../../language/index.ts';
import { namesOf, resolveName } from '../../../notebook/index.ts';

/** One formula of a book: the line or column it is of, and where its names are looked up. */
interface Written {
  readonly id: string;
  readonly sheet: string;
  readonly table?: string;
  readonly formula: string;
}

/**
 * Why options cannot be taken out of a list, or be written otherwise: a formula that names the choice or column compares
 * with them, and would from then on find what it looks for in none. Undefined where nothing does.
 * `id` is that of the choice (`sheet.name`) or column (`sheet.table.column`).
 */
export function optionsCompared(
  book: Book,
  id: string,
  before: readonly Option[],
  after: readonly Option[],
): Problem | undefined {
  const kept = new Set(after.map(({ value }) => foldedOption(value)));
  const gone = new Map(
    before.flatMap(({ value }) => (kept.has(foldedOption(value)) ? [] : [[foldedOption(value), value]])),
  );
  if (gone.size === 0) return undefined;
  const names = namesOf(book);
  for (const { id: by, sheet, table, formula } of formulasOf(book)) {
    const { syntax } = parseFormula(formula);
    const option = textsIn(syntax)
      .map((text) => gone.get(foldedOption(text)))
      .find((found) => found !== undefined);
    if (option === undefined) continue;
    if (namesIn(syntax).some(({ name }) => resolveName(name, names, sheet, table)?.id === id))
      return problem('option-compared', { from: 0, to: 0 }, { option, by });
  }
  return undefined;
}

/** All formulas of a book, those of methods among them. */
function formulasOf(book: Book): readonly Written[] {
  return book.sheets.flatMap(({ key: sheet, parts }) =>
    parts.flatMap((part): readonly Written[] => {
      const table = part.kind === 'table' ? { table: `${sheet}.${part.name}` } : {};
      const lines = part.kind === 'rows' ? part.rows : part.kind === 'table' ? part.columns : [];
      return lines.flatMap((line) => {
        const about = { id: `${table.table ?? sheet}.${line.name}`, sheet, ...table };
        const own = 'formula' in line && line.formula !== undefined ? [line.formula] : [];
        const methods = line.kind === 'calc' ? (line.methods ?? []).map(({ formula }) => formula) : [];
        const applies = line.kind === 'check' && line.applies !== undefined ? [line.applies] : [];
        return [...own, ...applies, ...methods].map((formula) => ({ ...about, formula }));
      });
    }),
  );
}
