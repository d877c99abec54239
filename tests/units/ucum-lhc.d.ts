/** The part of the UCUM library the tests use; it ships no types. */
declare module '@lhncbc/ucum-lhc' {
  interface Conversion {
    readonly status: 'succeeded' | 'failed' | 'error';
    readonly toVal: number | null;
  }
  interface Converter {
    convertUnitTo(from: string, value: number, to: string): Conversion;
  }
  export const UcumLhcUtils: { getInstance(): Converter };
}
