/** Where two readings of a book differ, a line each: the way there, what should be and what is. At most `most`. */
export function differences(expected: unknown, found: unknown, most = 6): readonly string[] {
  const list: string[] = [];
  compare(expected, found, '', list, most);
  return list;
}

/** What is left out says the same as what is blank. */
function isBlank(value: unknown): boolean {
  return value === undefined || value === '';
}

function compare(expected: unknown, found: unknown, way: string, list: string[], most: number): void {
  if (expected === found || list.length >= most || (isBlank(expected) && isBlank(found))) return;
  if (Array.isArray(expected) && Array.isArray(found)) {
    compareLists(expected, found, way, list, most);
  } else if (isRecord(expected) && isRecord(found)) {
    for (const key of new Set([...Object.keys(expected), ...Object.keys(found)]))
      compare(expected[key], found[key], `${way}/${key}`, list, most);
  } else list.push(`${way}: ${told(found)}, and should be ${told(expected)}`);
}

function compareLists(
  expected: readonly unknown[],
  found: readonly unknown[],
  way: string,
  list: string[],
  most: number,
): void {
  const names = (items: readonly unknown[]): string => items.map((one, at) => nameOf(one, at)).join(' ');
  if (expected.length !== found.length || names(expected) !== names(found)) {
    const [kept, had] = [new Set(found.map(nameOf)), new Set(expected.map(nameOf))];
    const gone = expected.flatMap((one, at) => (kept.has(nameOf(one, at)) ? [] : told(one)));
    const come = found.flatMap((one, at) => (had.has(nameOf(one, at)) ? [] : told(one)));
    const order =
      gone.length + come.length === 0 ? [`order ${names(found)}, and should be ${names(expected)}`] : [];
    list.push(
      [`${way}:`, ...gone.map((one) => `gone ${one}`), ...come.map((one) => `come ${one}`), ...order].join(
        ' ',
      ),
    );
    return;
  }
  for (const [at, one] of expected.entries())
    compare(one, found[at], `${way}/${nameOf(one, at)}`, list, most);
}

function isRecord(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function nameOf(item: unknown, at: number): string {
  const name = isRecord(item) ? (item.id ?? item.key) : undefined;
  return typeof name === 'string' ? name : String(at);
}

function told(value: unknown): string {
  const text = JSON.stringify(value) ?? 'nothing';
  return text.length > 120 ? `${text.slice(0, 117)}…` : text;
}
