let loading: Promise<unknown> | undefined;

/**
 * Loads the formula editor, once; it is as large as the rest of the page. Called when the page has nothing else to
 * do, or when a first formula is opened.
 */
export function loadFormulaField(): Promise<unknown> {
  loading ??= import('./quay-formula-field.ts');
  return loading;
}
