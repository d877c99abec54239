/** The little of Papa Parse that is used here; its published types would bring those of Node and the page along. */
declare module 'papaparse' {
  interface ParseFault {
    readonly code: string;
    /** Where in the text, in UTF-16 units. */
    readonly index?: number;
  }
  interface Parsed {
    readonly data: readonly (readonly string[])[];
    readonly errors: readonly ParseFault[];
  }
  interface PapaParse {
    readonly parse: (
      text: string,
      config: { readonly delimiter: string; readonly newline: string; readonly preview?: number },
    ) => Parsed;
    readonly unparse: (
      table: { readonly fields: readonly string[]; readonly data: readonly (readonly unknown[])[] },
      config: { readonly delimiter: string; readonly newline: string },
    ) => string;
  }
  const papaparse: PapaParse;
  export = papaparse;
}
