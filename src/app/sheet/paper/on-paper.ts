/** What a sheet on paper asks of its lines and tables. */
export interface OnPaper {
  /** Whether the numbers are put in on a line or a column, by its id. */
  readonly works: (id: string) => boolean;
  /** Whether long calculated tables are summarised by the rows that matter. */
  readonly summarises: boolean;
  /** A reference as it stands beside a line: itself, or its mark in the list at the end of the sheet. */
  readonly cite: (reference: string) => string;
}
