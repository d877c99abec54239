/** Words for a total at the start of a cell, in the languages that takeoffs come in. */
const AT_START = [
  '(?:(?:grand|sub|net|gross)[\\s-]*)?(?:totals?|subtotals?|sums?)',
  '(?:end|netto|brutto|zwischen|teil|gesamt)?-?summen?|gesamt',
  'somme|sous-total|total général',
  'suma|totale|totaal|soma|somma|summa|toplam|ara toplam|razem|ogółem|celkem|spolu|összesen|ukupno|jumlah',
  'итого|всего|σύνολο',
];

/** Words for a sum that is carried from page to page, at the start of a cell. */
const CARRIED = [
  '(?:carried|brought)[\\s-]+(?:forward|fwd|over|down|to|from)|to (?:collection|summary)|[cb]\\/[fd]',
  'übertrag|uebertrag|vortrag',
  '(?:à|a) reporter|report (?:de la page|page)|(?:a|à) (?:reportar|transportar)|suma y sigue|suma anterior',
  'a riportare|riporto|te transporteren',
];

/** Words that say so only where nothing stands beside them: a report may be an item. */
const ALONE = ['reports?', '[Σ∑]', '小计|小計|合计|合計|总计|總計|計', 'المجموع|الإجمالي'];

/** A word for what is carried over that is mostly one for work. */
const CARRIAGE = /^\W*transporte?\W*$/iu;

const START = new RegExp(`^[^\\p{L}\\p{N}]*(?:${[...AT_START, ...CARRIED].join('|')})(?![\\p{L}\\d])`, 'iu');
const END = /(?:^|\s)(?:sub-?)?totals?\W*$|^\s*[Σ∑]/iu;
const WHOLE = new RegExp(`^[^\\p{L}\\p{N}Σ∑]*(?:${ALONE.join('|')})[\\s:.…]*$`, 'iu');

/** Whether a cell says so where the number beside it is the sum of those above. */
export function maySayTotal(cell: string): boolean {
  return CARRIAGE.test(cell);
}

/** Whether a cell says that its row is a total, or a sum carried from another page. */
export function saysTotal(cell: string): boolean {
  // Most cells of a long table are numbers.
  if (cell === '' || (cell >= '0' && cell < ':')) return false;
  const text = cell.trim();
  return text.length < 80 && !/^\d/.test(text) && (START.test(text) || END.test(text) || WHOLE.test(text));
}
