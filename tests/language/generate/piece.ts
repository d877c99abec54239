/** A formula as the generator builds it; what it prints is unambiguous by parentheses. */
export type Piece =
  | { readonly kind: 'number'; readonly value: number; readonly unit: string }
  /** The token 0, which fits any dimension. */
  | { readonly kind: 'zero' }
  | { readonly kind: 'text'; readonly text: string }
  | { readonly kind: 'truth'; readonly value: boolean }
  | { readonly kind: 'name'; readonly name: string }
  | { readonly kind: 'call'; readonly fn: string; readonly args: readonly Piece[] }
  | { readonly kind: 'binary'; readonly op: '+' | '-' | '*' | '/' | '&'; readonly args: readonly Piece[] }
  | {
      readonly kind: 'compare';
      readonly op: '=' | '<>' | '<' | '<=' | '>' | '>=';
      readonly args: readonly Piece[];
    }
  | { readonly kind: 'negate' | 'percent' | 'root'; readonly args: readonly Piece[] }
  | { readonly kind: 'power'; readonly exponent: string; readonly args: readonly Piece[] };

/** The parts of a piece. */
export function partsOf(piece: Piece): readonly Piece[] {
  return 'args' in piece ? piece.args : [];
}

/** The piece with other parts. */
export function withParts(piece: Piece, args: readonly Piece[]): Piece {
  return 'args' in piece ? { ...piece, args } : piece;
}

/** Whether a compound unit needs its parentheses: one symbol alone does without. */
function printUnit(unit: string): string {
  return /^(?:[\p{L}]+|\$|°[CF]?)$/u.test(unit) ? unit : `(${unit})`;
}

/** A number so that reading it gives the same number. */
function printNumber({ value, unit }: { readonly value: number; readonly unit: string }): string {
  const number = `${value}`.replace('e+', 'e');
  return unit === '' ? number : unit === '%' ? `${number}%` : `${number} ${printUnit(unit)}`;
}

/** The piece as formula text. */
export function printPiece(piece: Piece): string {
  switch (piece.kind) {
    case 'number':
      return printNumber(piece);
    case 'zero':
      return '0';
    case 'text':
      return `"${piece.text.replaceAll('"', '""')}"`;
    case 'truth':
      return piece.value ? 'TRUE' : 'FALSE';
    case 'name':
      return piece.name;
    case 'call':
      return `${piece.fn}(${piece.args.map(printPiece).join('; ')})`;
    case 'binary':
    case 'compare':
      return piece.args.map(printOperand).join(` ${piece.op} `);
    case 'negate':
      return `-${piece.args.map(printOperand)}`;
    case 'percent':
      return `(${piece.args.map(printPiece)})%`;
    case 'root':
      return `√${piece.args.map(printOperand)}`;
    case 'power':
      return `${piece.args.map(printOperand)}^${piece.exponent}`;
  }
}

/** An operand: only names, calls and numbers without a unit stand without parentheses. */
function printOperand(piece: Piece): string {
  const bare =
    piece.kind === 'name' ||
    piece.kind === 'call' ||
    piece.kind === 'zero' ||
    (piece.kind === 'number' && piece.unit === '' && piece.value >= 0);
  return bare ? printPiece(piece) : `(${printPiece(piece)})`;
}
