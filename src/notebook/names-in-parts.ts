import {
  type Calc,
  type CalcColumn,
  type CalcPlace,
  type Column,
  type Edit,
  type Part,
  type Row,
  setColumnField,
  setMethodField,
  setMethodsBy,
  setPartField,
  setRowField,
  type Table,
} from '../document/index.ts';
import { renameInFormula } from '../language/index.ts';

/** The new spelling of a name written on a sheet, in a formula of `table` (`sheet.table`) or not; undefined to keep it. */
export type Respell = (written: string, sheet: string, table?: string) => string | undefined;

/** The edits that respell the names a part says, in formulas, lists of options, sketches and charts. */
export function usesInPart(sheet: string, part: Part, respell: Respell): readonly Edit[] {
  const at = { sheet, part: part.id };
  switch (part.kind) {
    case 'prose':
      return [];
    case 'rows':
      return part.rows.flatMap((row) => usesInRow(sheet, part.id, row, respell));
    case 'table':
      return part.columns.flatMap((column) => usesInColumn(sheet, part, column, respell));
    case 'figure': {
      const cells = Object.fromEntries(
        Object.entries(part.cells).map(([role, written]) => [role, respell(written, sheet) ?? written]),
      );
      const same = Object.entries(part.cells).every(([role, written]) => cells[role] === written);
      return same ? [] : [setPartField(at, 'cells', cells)];
    }
    case 'chart': {
      const column = (written: string): string =>
        respell(`${part.table}.${written}`, sheet)?.split('.').at(-1) ?? written;
      const table = respell(part.table, sheet);
      const x = column(part.x);
      const y = part.y.map(column);
      return [
        ...(table === undefined ? [] : [setPartField(at, 'table', table)]),
        ...(x === part.x ? [] : [setPartField(at, 'x', x)]),
        ...(y.every((each, index) => each === part.y[index]) ? [] : [setPartField(at, 'y', y)]),
      ];
    }
  }
}

/** A calculated line or column with other spellings of the names that it says. */
export function respellLine<Line extends Calc | CalcColumn>(
  line: Line,
  respell: (written: string) => string | undefined,
): Line {
  const { formula, by, methods } = line;
  return {
    ...line,
    ...(formula !== undefined && { formula: renameInFormula(formula, respell) }),
    ...(by !== undefined && { by: respell(by) ?? by }),
    ...(methods && {
      methods: methods.map((one) => ({ ...one, formula: renameInFormula(one.formula, respell) })),
    }),
  };
}

/** The edits that respell what a calculated line or column says: each formula, and what chooses between methods. */
function usesInCalc(
  at: CalcPlace,
  line: Calc | CalcColumn,
  respell: (written: string) => string | undefined,
): readonly Edit[] {
  const { formula, by, methods = [] } = respellLine(line, respell);
  const edits: Edit[] = [];
  if (formula !== undefined && formula !== line.formula)
    edits.push('row' in at ? setRowField(at, 'formula', formula) : setColumnField(at, 'formula', formula));
  if (by !== undefined && by !== line.by) edits.push(setMethodsBy(at, by));
  for (const [index, method] of methods.entries())
    if (method.formula !== line.methods?.[index]?.formula)
      edits.push(setMethodField(at, method.id, 'formula', method.formula));
  return edits;
}

function usesInRow(sheet: string, part: string, row: Row, respell: Respell): readonly Edit[] {
  const at = { sheet, part, row: row.id };
  if (row.kind === 'choice') {
    const from = row.from === undefined ? undefined : respell(row.from, sheet);
    return from === undefined ? [] : [setRowField(at, 'from', from)];
  }
  if (row.kind === 'given') return [];
  if (row.kind === 'calc') {
    const { link } = row;
    const from = link?.kind === 'choice' && link.from !== undefined ? respell(link.from, sheet) : undefined;
    return [
      ...usesInCalc(at, row, (written) => respell(written, sheet)),
      ...(from === undefined || link === undefined ? [] : [setRowField(at, 'link', { ...link, from })]),
    ];
  }
  const respelled = (text: string): string => renameInFormula(text, (written) => respell(written, sheet));
  const formula = respelled(row.formula);
  const applies = row.applies === undefined ? undefined : respelled(row.applies);
  return [
    ...(formula === row.formula ? [] : [setRowField(at, 'formula', formula)]),
    ...(applies === row.applies ? [] : [setRowField(at, 'applies', applies)]),
  ];
}

function usesInColumn(sheet: string, table: Table, column: Column, respell: Respell): readonly Edit[] {
  if (column.kind === 'given') return [];
  const own = `${sheet}.${table.name}`;
  if (column.kind === 'calc') {
    const at = { sheet, table: table.id, column: column.id };
    return usesInCalc(at, column, (written) => respell(written, sheet, own));
  }
  const formula = renameInFormula(column.formula, (written) => respell(written, sheet, own));
  if (formula === column.formula) return [];
  return [setColumnField({ sheet, table: table.id, column: column.id }, 'formula', formula)];
}
