import {
  type Item,
  type MethodItem,
  methodInForce,
  methodsUsed,
  methodWords,
  type Notebook,
  rowsInWords,
} from '../notebook/index.ts';

/** A method in force as `--json` prints it; `rows` (from 1) of a column are those it is used for. */
export interface PrintedMethod {
  readonly id: string;
  /** The options it is for; absent where it is for all others. */
  readonly for?: readonly string[];
  readonly formula: string;
  readonly reference?: string;
  readonly note?: string;
  readonly rows?: readonly number[];
}

/** The method in force of a line, or each that is used of a column; nothing where there are no methods. */
export function printMethods(
  notebook: Notebook,
  item: Item,
): { readonly method?: PrintedMethod; readonly methods?: readonly PrintedMethod[] } {
  if ((item.kind !== 'formula' && item.kind !== 'formula column') || !item.methods) return {};
  if (item.kind === 'formula column')
    return {
      methods: methodsUsed(notebook, item).map(({ item: used, rows }) => ({
        ...printMethod(used),
        rows: rows.map((row) => row + 1),
      })),
    };
  const used = methodInForce(notebook, item.id);
  return used ? { method: printMethod(used) } : {};
}

/** The methods in force as lines of text: what each is for, its rows, its formula and its reference. */
export function methodLines(notebook: Notebook, item: Item): readonly string[] {
  const { method, methods = [] } = printMethods(notebook, item);
  return [...(method ? [method] : []), ...methods].map((one) => {
    const rows = one.rows ? `, ${rowsInWords(one.rows.map((row) => row - 1))}` : '';
    const reference = one.reference === undefined ? '' : `  [${one.reference}]`;
    return `  ${methodWords({ ...one })}${rows}: ${one.formula}${reference}`;
  });
}

function printMethod({ method }: MethodItem): PrintedMethod {
  const { id, for: options, formula, reference, note } = method;
  return {
    id,
    ...(options && { for: options }),
    formula,
    ...(reference !== undefined && { reference }),
    ...(note !== undefined && { note }),
  };
}
