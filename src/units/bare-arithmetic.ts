/** Digits with a point or not; what may stand between them and around them. */
const TOKEN = /\s*(?:(\d+(?:\.\d*)?|\.\d+)|([-+*×/÷()]))/y;
/** As likely a span, 10-12, or a date, 1/2/26, as arithmetic. */
const SPAN = /^\s*[\d.]+\s*(?:-\s*[\d.]+|[-/]\s*\d+\s*[-/]\s*\d+)\s*$/;
const LONGEST = 200;

/**
 * The value of plain arithmetic of bare numbers, `12*3.5` or `(4 + 2.5)/2`, to 14 digits, written as a person would.
 * Undefined for anything else, for a number alone, for what may be a span or a date, and where there is no finite value.
 */
export function bareArithmetic(text: string): string | undefined {
  const tokens = text.length <= LONGEST && !SPAN.test(text) ? tokensOf(text) : undefined;
  if (!tokens || tokens.filter((token) => typeof token === 'number').length < 2) return undefined;
  let at = 0;
  const take = (...signs: readonly string[]): string | undefined => {
    const token = tokens[at];
    if (typeof token !== 'string' || !signs.includes(token)) return undefined;
    at += 1;
    return token;
  };
  const sum = (): number | undefined => {
    let value = product();
    for (let sign = take('+', '-'); sign !== undefined; sign = take('+', '-')) {
      const next = product();
      if (value === undefined || next === undefined) return undefined;
      value = sign === '+' ? value + next : value - next;
    }
    return value;
  };
  const product = (): number | undefined => {
    let value = factor();
    for (let sign = take('*', '/'); sign !== undefined; sign = take('*', '/')) {
      const next = factor();
      if (value === undefined || next === undefined) return undefined;
      value = sign === '*' ? value * next : value / next;
    }
    return value;
  };
  const factor = (): number | undefined => {
    if (take('-') !== undefined) {
      const value = factor();
      return value === undefined ? undefined : -value;
    }
    if (take('(') !== undefined) {
      const value = sum();
      return take(')') === undefined ? undefined : value;
    }
    const token = tokens[at];
    if (typeof token !== 'number') return undefined;
    at += 1;
    return token;
  };
  const value = sum();
  if (value === undefined || at < tokens.length || !Number.isFinite(value)) return undefined;
  const written = String(Number(value.toPrecision(14)) + 0);
  return written.includes('e') ? undefined : written;
}

function tokensOf(text: string): readonly (number | string)[] | undefined {
  const source = text.trim();
  const tokens: (number | string)[] = [];
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < source.length) {
    const found = TOKEN.exec(source);
    if (!found) return undefined;
    const [, digits, sign = ''] = found;
    tokens.push(digits === undefined ? (sign === '×' ? '*' : sign === '÷' ? '/' : sign) : Number(digits));
  }
  return tokens;
}
