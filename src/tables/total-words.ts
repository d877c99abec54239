// A table of words, by language as far as they differ.

/** Words for a total at the start of a cell, in the languages that takeoffs come in. */
const AT_START = [
  '(?:(?:grand|sub|sous|net|gross)[\\s-]*)?(?:totals?|subtotals?|sums?)',
  '\\p{L}*-?summen?|gesamt|insgesamt|tot\\.',
  '(?:sub-?|sous-)?(?:totale[nr]?|totali|totaux|totaal|totalt|totalsumme?)',
  'somme|total général|suma|soma|somma|sommano|totalul|toplam|(?:ara|genel) toplam|yekûn|jumlah',
  // Nordic and Baltic.
  'summa|(?:del|mellan|slut|total)summa|(?:del|mellem|slut|total)?sum|i alt|ialt|yhteensä|(?:väli|loppu)summa',
  'kokku|vahesumma|kopsumma|kopā|pavisam|iš viso|tarpinė suma|samtals',
  // Slavic and Hungarian.
  'razem|ogółem|łącznie|celkem|mezisoučet|součet|spolu|medzisúčet|súčet|skupaj|vmesna vsota|vsota|skupno',
  'ukupno|sveukupno|svega|međuzbroj|zbroj|összesen|mindösszesen|részösszeg|végösszeg',
  'itogo|vsego|итого|всего|промежуточный итог|итог|разом|всього|усього|сума|сумма|всичко|укупно|свега|збир',
  // Other scripts.
  '(?:μερικό |γενικό )?σύνολο|άθροισμα|tổng cộng|tổng số|tổng|cộng|कुल|योग|جمع|합계|소계|총계',
  '(?:תת[\\s-]*)?סה["״\u201d\u05f4\']*כ|סך[\\s-]*הכו?ל',
];

/** Words for a sum that is carried from page to page, at the start of a cell. */
const CARRIED = [
  '(?:carried|brought)[\\s-]+(?:forward|fwd|over|down|to|from)|to (?:collection|summary)',
  '[cb]\\/(?:f|d|o|fwd)|[cb]\\.\\s?[fd]\\.',
  'übertrag|uebertrag|vortrag',
  '(?:à|a) reporter|report (?:de la page|page)|(?:a|à) (?:reportar|transportar)|suma y sigue|suma anterior',
  'a riportare|riporto|te transporteren|overdracht|overført|overføres|överfört|(?:z|do) przeniesienia|z przen\\.',
  'átvitel|áthozat|к переносу|с переноса|(?:σε|εκ) μεταφορά[ςν]?|nakli yekûn|devreden',
];

/** Words that say so only where nothing stands beside them: a report may be an item, and so may a move. */
const ALONE = [
  'reports?|tot|samen|viso|alls|общо|перенос|пренос|перенесення|přenos|převod|prevod|prenos|prijenos|siirto|ülekanne|μεταφορά',
  '[Σ∑]|小计|小計|合计|合計|总计|總計|総計|計|繰越|前頁より|次頁へ',
  'مجموع|المجموع|الإجمالي|الاجمالي|جمع کل',
  '(?:المجموع|الإجمالي|الاجمالي) (?:الكلي|العام|الفرعي|النهائي)|مجموع کل|جمع صفحه',
];

/** A word for what is carried over that is mostly one for work. */
const CARRIAGE = /^\W*transporte?\W*$/iu;

/** Words of scripts without spaces between words, which others follow straight away: `รวมเงิน`, `合計金額`. */
const UNPARTED =
  /^[^\p{L}\p{N}]*(?:ยอดรวม|รวม|(?:小|合|总|總|総|共|累)[计計])|(?:小|合|总|總|総|共)[计計][\s:：]*$|합계[\s:]*$/u;

const START = new RegExp(`^[^\\p{L}\\p{N}]*(?:${[...CARRIED, ...AT_START].join('|')})(?![\\p{L}\\d])`, 'iu');

/**
 * What may follow such a word without naming anything: a unit or a remark in brackets, a number or a letter, the page or
 * the collection that a sum is carried to or from.
 */
const BESIDE =
  /^(?:[\s:=.…,;*-]*(?:\([^)]*\)|\[[^\]]*\]|\d[\d.,]*|\p{L}(?![\p{L}\d])|(?:to|from|of|von|auf|zu|de|du|del|di|da|av|fra|fra side|z|ze|na|à|a|la|the)(?![\p{L}\d])|(?:pages?|pag\.?|pág\.?|seite|sida|side|strony?|sheets?|blatt|bill|section|collection|summary|all|above|carried|brought|forward|net|gross|incl\.?|excl\.?|general|général|generale?|ht|ttc)(?![\p{L}\d])|(?:m|mm|cm|ft|in|yd|cy|sf|sy|lf|cf|t|kg|lb|kn)[²³23]?(?![\p{L}\d])))*[\s\p{P}\p{S}]*$/iu;

const END = /(?:^|\s)(?:sub-?)?totals?\W*$|^\s*[Σ∑]/iu;
const WHOLE = new RegExp(`^[^\\p{L}\\p{N}Σ∑]*(?:${ALONE.join('|')})[\\s:.…]*$`, 'iu');

/** Whether a cell says so where the number beside it is the sum of those above. */
export function maySayTotal(cell: string): boolean {
  return CARRIAGE.test(cell);
}

/** Whether a cell says that its row is a total, or a sum carried from another page. */
export function saysTotal(cell: string): boolean {
  const text = wordsOf(cell);
  if (text === undefined) return false;
  // Titles of Chinese, Japanese and Korean print are drawn out: 合　計.
  const drawn = text.replace(/(?<=[\u4e00-\u9fff\uac00-\ud7a3])\s+(?=[\u4e00-\u9fff\uac00-\ud7a3])/gu, '');
  if ([END, WHOLE, UNPARTED].some((form) => form.test(drawn))) return true;
  const [start] = START.exec(drawn) ?? [];
  return start !== undefined && BESIDE.test(drawn.slice(start.length));
}

/** Whether a cell begins like a total and goes on: `Total deck`, and `total station plinth`, which is an item. */
export function beginsAsTotal(cell: string): boolean {
  const text = wordsOf(cell);
  return text !== undefined && START.test(text) && !saysTotal(cell);
}

/** What a cell says, unless that is a number, nothing or too long for a name. */
function wordsOf(cell: string): string | undefined {
  // Most cells of a long table are numbers.
  if (cell === '' || (cell >= '0' && cell < ':')) return undefined;
  const text = cell.trim();
  return text.length >= 80 || /^\d/.test(text) ? undefined : text;
}
