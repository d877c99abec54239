// A table of texts, longer than other files. They are invented in the forms that programs and people of many countries
// write quantities in; the values beside each were worked out by hand.
import type { TakeoffText } from './takeoff-texts.ts';

/** The international foot is 0.3048 m and the pound 0.45359237 kg exactly (NIST SP 811, 2008, Appendix B.6). */
const FT = 0.3048;
const IN = FT / 12;
const SF = FT * FT;
const SY = 9 * SF;
const CF = FT ** 3;
const CY = 27 * CF;
const LB = 0.45359237;
const ST = 2000 * LB;

const to = (said: string): readonly string[] => ['--columns', said];

const lines = (...rows: readonly string[]): string => `${rows.join('\n')}\n`;

export const WORLD_TEXTS: readonly TakeoffText[] = [
  {
    what: 'French: metres run, square and cubic, spaces between thousands',
    text: lines(
      'N°;Désignation;Longueur (m);Surface (m²);Volume (m³)',
      '1.1;Béton de propreté;;1 250,5;125,05',
      '1.2;Voile;12,5;;1 004,75',
    ),
    say: to('N°=no; Désignation=item; Longueur (m)=L; Surface (m²)=A; Volume (m³)=V'),
    cells: {
      no: ['1.1', '1.2'],
      item: ['Béton de propreté', 'Voile'],
      L: [null, 12.5],
      A: [1250.5, null],
      V: [125.05, 1004.75],
    },
  },
  {
    what: 'French: a sum carried over, without a word on it',
    text: lines('item;V (m3)', 'Pieux;120,5', 'À reporter;120,5'),
    say: [],
    refused: ['row-total', 'line 3'],
  },
  {
    what: 'French: sums carried over at both ends of a page, left out',
    text: lines('item;V (m3)', 'Report;310,25', 'Pieux;120,5', 'Semelle;7', 'À reporter;437,75'),
    say: ['--totals', 'out'],
    cells: { item: ['Pieux', 'Semelle'], V: [120.5, 7] },
  },
  {
    what: 'French: running metres as ml in a column of units',
    text: lines('item;L;Unité', 'Garde-corps;42,5;ml'),
    say: to('Unité=unit of L'),
    refused: ['row-unit-unread', 'line 2, column C'],
  },
  {
    what: 'Italian: metri cubi spelled out, points between thousands',
    text: lines('item;V (metri cubi)', 'Scavo;1.250,50', 'Rinterro;980,2'),
    say: [],
    cells: { item: ['Scavo', 'Rinterro'], V: [1250.5, 980.2] },
  },
  {
    what: 'Italian: mc in the heading is offered',
    text: lines('item;V (mc)', 'Scavo;1.250,50'),
    say: [],
    refused: ['column-unit-unread', '“mc” of “V (mc)”'],
  },
  {
    what: 'Italian: mc and mq as was said, with a sum to carry over',
    text: lines('Voce;Quantità mc;Superficie mq', 'Scavo;1.250,50;12', 'A riportare;1.250,50;12'),
    say: [...to('Voce=item; Quantità mc=V [m^3]; Superficie mq=A'), '--totals', 'out'],
    cells: { item: ['Scavo'], V: [1250.5], A: [12] },
  },
  {
    what: 'Spanish: metros cúbicos and suma y sigue',
    text: lines(
      'Partida;Volumen (metros cúbicos)',
      'Excavación;1.204,75',
      'Relleno;96,25',
      'Suma y sigue;1.301,00',
    ),
    say: [...to('Partida=item; Volumen (metros cúbicos)=V'), '--totals', 'out'],
    cells: { item: ['Excavación', 'Relleno'], V: [1204.75, 96.25] },
  },
  {
    what: 'Portuguese: a list with m² and m³ in a column Un.',
    text: lines('Item;Descrição;Un.;Quant.', '1;Concreto;m³;48,60', '2;Escavação;m3;1.120,00'),
    say: to('Item=no; Descrição=item; Un.=unit of V; Quant.=V'),
    cells: { no: ['1', '2'], item: ['Concreto', 'Escavação'], V: [48.6, 1120] },
  },
  {
    what: 'Portuguese: two kinds in one column of quantities',
    text: lines('Item;Descrição;Un.;Quant.', '1;Concreto;m³;48,60', '2;Forma;m²;210,00'),
    say: to('Item=no; Descrição=item; Un.=unit of V; Quant.=V'),
    refused: ['row-unit-unread', 'line 3, column C'],
  },
  {
    what: 'German: Stk, lfm and apostrophes of Switzerland',
    text: lines('Pos;Text;Stück;Länge lfm;Betrag', "1;Pfahl;24;1'250.50;CHF 12.50"),
    say: to('Pos=no; Text=item; Stück=n; Länge lfm=L; Betrag=-'),
    cells: { no: ['1'], item: ['Pfahl'], n: [24], L: [1250.5] },
  },
  {
    what: 'German: amounts of another currency than the column has',
    text: lines('item;p', 'Pfahl;12,50 €'),
    say: [],
    refused: ['cell-unread', 'line 2, column B'],
  },
  {
    what: 'German: a row of units in brackets under the headings',
    text: lines('item;L;A;V', ';[m];[m²];[m³]', 'Wand;12,5;30,25;1.204,5'),
    say: [],
    cells: { item: ['Wand'], L: [12.5], A: [30.25], V: [1204.5] },
  },
  {
    what: 'German: numbers with blanks behind them, Übertrag above',
    text: lines('item;V (m³)', 'Übertrag;88,5', 'Aushub ;1.250,00 ', 'Summe;1.338,50'),
    say: ['--totals', 'out'],
    cells: { item: ['Aushub'], V: [1250] },
  },
  {
    what: 'German: a value that is an estimate',
    text: lines('item;V (m³)', 'Aushub;ca. 125,5'),
    say: [],
    refused: ['cell-unread', 'line 2, column B'],
  },
  {
    what: 'Dutch: tabs, decimal commas, transport at the foot',
    text: lines('item\tV (m3)', 'Beton\t12,5', 'Grond\t130,25', 'Transport\t142,75'),
    say: ['--totals', 'out'],
    cells: { item: ['Beton', 'Grond'], V: [12.5, 130.25] },
  },
  {
    what: 'Dutch: transport that is work',
    text: lines('item\tV (m3)', 'Beton\t12,5', 'Grond\t130,25', 'Transport\t90'),
    say: [],
    cells: { item: ['Beton', 'Grond', 'Transport'], V: [12.5, 130.25, 90] },
  },
  {
    what: 'Polish: razem, and thousands parted by hard spaces',
    text: lines('item;V [m3]', 'Wykop;1\u00a0250,50', 'Beton;96,25', 'Razem;1\u00a0346,75'),
    say: ['--totals', 'out'],
    cells: { item: ['Wykop', 'Beton'], V: [1250.5, 96.25] },
  },
  {
    what: 'Czech: celkem without a word on it',
    text: lines('item;V (m3)', 'Výkop;12,5', 'Celkem;12,5'),
    say: [],
    refused: ['row-total', 'line 3'],
  },
  {
    what: 'Russian: units in Cyrillic letters',
    text: lines('Наименование;Объём, м3;Длина, м;Масса, кг', 'Бетон;1 250,5;12,4;300'),
    say: to('Наименование=item; #2=V; #3=L; #4=M'),
    cells: { item: ['Бетон'], V: [1250.5], L: [12.4], M: [300] },
  },
  {
    what: 'Russian: итого at the foot',
    text: lines('item;V (м³)', 'Бетон;7,5', 'Грунт;2,5', 'Итого:;10'),
    say: ['--totals', 'out'],
    cells: { item: ['Бетон', 'Грунт'], V: [7.5, 2.5] },
  },
  {
    what: 'Chinese: full-width digits and signs',
    text: lines('item,V (m³)', '混凝土,１２．５', '土方,１２０', '合计,１３２．５'),
    say: ['--totals', 'out'],
    cells: { item: ['混凝土', '土方'], V: [12.5, 120] },
  },
  {
    what: 'Japanese: units as single signs',
    text: lines('item,V (㎥),A (㎡),h (㎜)', '床版,12.5,30,350'),
    say: ['--thousands', 'plain'],
    cells: { item: ['床版'], V: [12.5], A: [30], h: [0.35] },
  },
  {
    what: 'Japanese: two cells that may be one number',
    text: lines('item,V (㎥),A (㎡),h (㎜)', '床版,12.5,30,350'),
    say: [],
    refused: ['cells-split', 'line 2, column C'],
  },
  {
    what: 'Indian: running feet, square feet, cubic feet, lakhs',
    text: lines('item\tL (rft)\tA (sft)\tV (cft)', 'Slab\t1,250.5\t1,05,300\t2,10,400.50'),
    say: [],
    cells: { item: ['Slab'], L: [1250.5 * FT], A: [105300 * SF], V: [210400.5 * CF] },
  },
  {
    what: 'Indian: cum, sqm and rmt as units row by row',
    text: lines('S.No,Description,Qty,Unit', '1,PCC,12.5,cum', '2,RCC,"1,250.25",Cum'),
    say: to('S.No=no; Description=item; Qty=V; Unit=unit of V'),
    cells: { no: ['1', '2'], item: ['PCC', 'RCC'], V: [12.5, 1250.25] },
  },
  {
    what: 'US: CYs and C.Y. behind the numbers',
    text: lines('item,V', 'slab,12.5 CYs', 'caps,7 C.Y.', 'fill,3 cu. yds.', 'pile,27 cft'),
    say: [],
    cells: { item: ['slab', 'caps', 'fill', 'pile'], V: [12.5 * CY, 7 * CY, 3 * CY, CY] },
  },
  {
    what: 'US: feet and inches, fractions of an inch',
    text: lines('item\tL\th', 'wall\t12\'-6 1/2"\t8 1/2', 'beam\t7\'-0"\t1/2'),
    say: [],
    cells: { item: ['wall', 'beam'], L: [150.5 * IN, 84 * IN], h: [8.5 * IN, 0.5 * IN] },
  },
  {
    what: 'US: bank cubic yards in the heading',
    text: lines('item,V (BCY)', 'dredge,1250'),
    say: [],
    refused: ['column-unit-unread', '“BCY” of “V (BCY)”'],
  },
  {
    what: 'US: loose cubic yards that were said to be plain',
    text: lines('item,V (LCY)', 'dredge,1250'),
    say: to('V (LCY)=V [cy]'),
    cells: { item: ['dredge'], V: [1250 * CY] },
  },
  {
    what: 'US: tons of a weigh bill',
    text: lines('item,M (tons)', 'rebar,12.5'),
    say: [],
    refused: ['column-unit-unread', '“tons” of “M (tons)”'],
  },
  {
    what: 'US: tons that were said to be short',
    text: lines('item,M (tons)', 'rebar,12.5', 'plate,"1,204"'),
    say: to('M (tons)=M [ST]'),
    cells: { item: ['rebar', 'plate'], M: [12.5 * ST, 1204 * ST] },
  },
  {
    what: 'US: square yards and linear feet with dots',
    text: lines('item,A (S.Y.),L (L.F.)', 'paving,120,45.5'),
    say: [],
    cells: { item: ['paving'], A: [120 * SY], L: [45.5 * FT] },
  },
  {
    what: 'US: a thousands comma that parted a number in two',
    text: lines('item,V', 'slab,1,250'),
    say: [],
    refused: ['row-long', 'line 2'],
  },
  {
    what: 'US: accounting parentheses, minus as was said',
    text: lines('item,V', 'slab,"1,250.5"', 'credit,(27)'),
    say: ['--parentheses', 'minus'],
    cells: { item: ['slab', 'credit'], V: [1250.5 * CY, -27 * CY] },
  },
  {
    what: 'US: accounting parentheses without a word on them',
    text: lines('item,V', 'slab,12', 'credit,(27)'),
    say: [],
    refused: ['cells-parentheses', 'line 3, column B'],
  },
  {
    what: 'an accounting program: minus behind',
    text: lines('item;V (m3)', 'Aushub;1.250,50', 'Gutschrift;27,00-'),
    say: [],
    cells: { item: ['Aushub', 'Gutschrift'], V: [1250.5, -27] },
  },
  {
    what: 'a spreadsheet: errors in cells',
    text: lines('item,V', 'slab,#REF!', 'caps,#DIV/0!'),
    say: [],
    refused: ['cell-unread', 'line 2, column B'],
  },
  {
    what: 'a web form: constants written as formulas',
    text: lines('no,item,V', '="0012",="slab",="12.5"'),
    say: [],
    cells: { no: ['0012'], item: ['slab'], V: [12.5 * CY] },
  },
  {
    what: 'a drawing program: volumes as m**3',
    text: lines('item\tV [m**3]', 'slab\t12.5'),
    say: [],
    cells: { item: ['slab'], V: [12.5] },
  },
  {
    what: 'a model viewer: units behind each number, points',
    text: lines('Name\tVolume\tArea', 'Slab:350:1\t12.51 m³\t35.75 m²', 'Wall\t0.80 m³\t4.00 m²'),
    say: to('Name=item; Volume=V; Area=A'),
    cells: { item: ['Slab:350:1', 'Wall'], V: [12.51, 0.8], A: [35.75, 4] },
  },
  {
    what: 'a model viewer: a unit of another kind in one cell',
    text: lines('item\tV', 'Slab\t12.51 m³', 'Wall\t4.00 m²'),
    say: [],
    refused: ['cell-unread', 'line 3, column B'],
  },
  {
    what: 'a survey program: semicolons, a sep line, a preamble',
    text: lines('sep=;', 'Project: north berth', 'item;V (m3)', 'cell 1;12.5'),
    say: ['--notes', 'out'],
    cells: { item: ['cell 1'], V: [12.5] },
  },
  {
    what: 'a survey program: the same without a word on the preamble',
    text: lines('Project: north berth;', 'item;V (m3)', 'cell 1;12.5'),
    say: [],
    refused: ['rows-above-headers', 'line 1'],
  },
  {
    what: 'a wiki: a table with bars and a drawn line',
    text: lines(
      '| item | V (m3) | w (%) |',
      '|------|-------:|------:|',
      '| slab | 12.5 | 5 |',
      '| caps | 7 | 10 |',
    ),
    say: [],
    cells: { item: ['slab', 'caps'], V: [12.5, 7], w: [0.05, 0.1] },
  },
  {
    what: 'a database: quotation marks around everything',
    text: lines('"item","V (m3)","h (mm)"', '"slab, 350","1250.5","350"'),
    say: [],
    cells: { item: ['slab, 350'], V: [1250.5], h: [0.35] },
  },
  {
    what: 'a database: null for what is not there',
    text: lines('item,V', 'slab,12', 'caps,NULL'),
    say: ['--nil', 'blank'],
    cells: { item: ['slab', 'caps'], V: [12 * CY, null] },
  },
  {
    what: 'a number of either reading',
    text: lines('item;V (m3)', 'slab;1,250'),
    say: [],
    refused: ['decimal-ambiguous', 'line 2, column B'],
  },
  {
    what: 'a number of either reading, and what it is',
    text: lines('item;V (m3)', 'slab;1,250'),
    say: ['--decimal', 'comma'],
    cells: { item: ['slab'], V: [1.25] },
  },
  {
    what: 'per cent with its sign and without',
    text: lines('item\tw', 'slab\t5%', 'caps\t7.5 %', 'pile\t10'),
    say: [],
    cells: { item: ['slab', 'caps', 'pile'], w: [0.05, 0.075, 0.1] },
  },
  {
    what: 'allowances as shares of one',
    text: lines('item\tw', 'slab\t0.05', 'caps\t0.075'),
    say: [],
    refused: ['column-share', 'line 2, column B'],
  },
  {
    what: 'a heading with a footnote',
    text: lines('item;V *;h (mm)†', 'slab;12;350', '* in place;;'),
    say: ['--notes', 'out'],
    cells: { item: ['slab'], V: [12 * CY], h: [0.35] },
  },
  {
    what: 'marks for inches and feet in the headings',
    text: lines("item\tL (')\th (″)", 'slab\t12.5\t8'),
    say: [],
    cells: { item: ['slab'], L: [12.5 * FT], h: [8 * IN] },
  },
  {
    what: 'ditto marks under a unit',
    text: lines('item\tV\tUnit', 'slab\t12\tm3', 'caps\t7\t〃'),
    say: to('Unit=unit of V'),
    refused: ['row-unit-unread', 'line 3, column C'],
  },
  {
    what: 'a range of thicknesses',
    text: lines('item;h (mm)', 'slab;300-350'),
    say: [],
    refused: ['cell-unread', 'line 2, column B'],
  },
  {
    what: 'a letter among digits',
    text: lines('item;V', 'slab;1O.5', 'caps;12'),
    say: [],
    refused: ['cell-unread', 'line 2, column B'],
  },
  {
    what: 'two units above one column',
    text: lines('item;V (m3)', ';cy', 'slab;12'),
    say: [],
    refused: ['column-unit-unread', '“m^3 or cy”'],
  },
  {
    what: 'pounds with a thousands comma, tabs',
    text: lines('item\tM (LBS)', 'rebar\t12,450'),
    say: ['--decimal', 'point'],
    cells: { item: ['rebar'], M: [12450 * LB] },
  },
  {
    what: 'columns in another order and one that goes nowhere',
    text: lines('V (m3);Zone;item', '12.5;A;slab', '7;B;caps'),
    say: to('Zone=-'),
    cells: { item: ['slab', 'caps'], V: [12.5, 7] },
  },
  {
    what: 'a column that nothing was said of',
    text: lines('V (m3);Zone;item', '12.5;A;slab'),
    say: [],
    refused: ['column-undecided', '“Zone”'],
  },
  {
    what: 'a row that is cut short',
    text: lines('item;V;h', 'slab;12;8', 'caps;7'),
    say: [],
    refused: ['row-short', 'line 3'],
  },
  {
    what: 'powers of ten with a decimal comma',
    text: lines('item;V (m3);L (m)', 'sand;1,25E3;12,5'),
    say: [],
    cells: { item: ['sand'], V: [1250], L: [12.5] },
  },
  {
    what: 'Turkish: toplam at the foot and m³ behind the numbers',
    text: lines('item;V', 'Kazı;1.250,5 m³', 'Beton;49,5 m³', 'Toplam;1.300 m³'),
    say: ['--totals', 'out'],
    cells: { item: ['Kazı', 'Beton'], V: [1250.5, 49.5] },
  },
  {
    what: 'Arabic: marks of the direction of writing around numbers',
    text: lines('item;V (m3)', 'خرسانة;\u200f12.5\u200e', 'حفر;7', 'المجموع;19.5'),
    say: ['--totals', 'out'],
    cells: { item: ['خرسانة', 'حفر'], V: [12.5, 7] },
  },
  {
    what: 'Arabic: digits of its own',
    text: lines('item;V (m3)', 'خرسانة;١٢٫٥'),
    say: [],
    cells: { item: ['خرسانة'], V: [12.5] },
  },
  {
    what: 'Arabic: digits, signs between thousands and in front of decimals of its own',
    text: lines('item;V (m3);w', 'خرسانة;١٬٢٥٠٫٥;٥٪', 'ركائز;٩٠;٤'),
    say: [],
    cells: { item: ['خرسانة', 'ركائز'], V: [1250.5, 90], w: [0.05, 0.04] },
  },
  {
    what: 'Arabic: three decimals behind the sign that is for decimals only',
    text: lines('item;V (m3)', 'خرسانة;١٫٢٥٠', 'ركائز;٩٠٫٥'),
    say: [],
    cells: { item: ['خرسانة', 'ركائز'], V: [1.25, 90.5] },
  },
  {
    what: 'Arabic: the sign for decimals beside decimal commas',
    text: lines('item;V (m3)', 'خرسانة;١٫٢٥٠', 'ركائز;90,5'),
    say: [],
    refused: ['decimal-mixed', 'line 2'],
  },
  {
    what: 'Persian, Hindi and Thai: digits of their own',
    text: lines('item;V (m3);n', 'بتن;۱۲.۵;۳', 'कंक्रीट;१२५.५;४', 'คอนกรีต;๔๐.๕;๕'),
    say: [],
    cells: { item: ['بتن', 'कंक्रीट', 'คอนกรีต'], V: [12.5, 125.5, 40.5], n: [3, 4, 5] },
  },
  {
    what: 'Thai: totals with words straight behind',
    text: lines('item;V (m3)', 'เสาเข็ม;12.5', 'พื้น;7', 'รวม;30', 'รวมปริมาตร;30', 'ยอดรวมสุทธิ;30'),
    say: [],
    refused: ['row-total', 'lines 4, 5 and 6'],
  },
  {
    what: 'Japanese, Chinese and Korean: totals drawn out, and with words beside',
    text: lines('item;V (m3)', '杭;12.5', '小　計;9', '合計金額;9', '本页合计;9', '소 계;9'),
    say: [],
    refused: ['row-total', 'lines 3, 4, 5 and 6'],
  },
  {
    what: 'Arabic: the last total of all',
    text: lines('item;V (m3)', 'خرسانة;12.5', 'المجموع الكلي;90'),
    say: [],
    refused: ['row-total', 'line 3'],
  },
  {
    what: 'a section right below the headings, over a column of numbers',
    text: lines('V (m3),item', 'NORTH BERTH,', '12.5,slab', '7,caps'),
    say: [],
    refused: ['cell-unread', 'line 2, column A'],
  },
  {
    what: 'sections right below the headings and further down, in the column of numbering',
    text: lines('No,Item,Vol (m3)', 'A. NORTH,,', '1,Slab,12', 'B. SOUTH,,', '2,Piles,3'),
    say: to('No=-; Item=item; Vol (m3)=V'),
    refused: ['row-note', 'lines 2 and 4'],
  },
  {
    what: 'the foot of a page in a table of two columns',
    text: lines('item;V (m3)', 'Slab;12.5', 'Seite 1;', 'Caps;7'),
    say: [],
    refused: ['row-note', 'line 3'],
  },
  {
    what: 'headings that go on over a column without numbers, in a unit',
    text: lines('item;Size;;', ';Area (m2);Thick (cm);Vol (m3)', 'Slab;120;35;'),
    say: to('Size Area (m2)=A; Size Thick (cm)=h; Size Vol (m3)=V'),
    cells: { item: ['Slab'], A: [120], h: [0.35], V: [null] },
  },
  {
    what: 'Persian: a slash that may be in front of decimals',
    text: lines('item;V (m3)', 'بتن;۱۲/۵'),
    say: [],
    refused: ['cell-unread', 'line 2, column B'],
  },
  {
    what: 'sections of a table of words',
    text: lines('no,item', 'A,Slab', 'B,Caps', 'SOUTH,', 'C,Piles'),
    say: [],
    refused: ['row-note', 'line 4'],
  },
  {
    what: 'rows that end with a comma more than the headings, their numbers side by side',
    text: lines('item,A,V', 'Slab,12,45,', 'Caps,3,7,'),
    say: [],
    refused: ['row-ends-blank', 'line 2'],
  },
  {
    what: 'rows that end with a comma more than the headings, as cells of their own',
    text: lines('item,A,V', 'Slab,12,45,', 'Caps,3,7,'),
    say: ['--thousands', 'plain'],
    cells: { item: ['Slab', 'Caps'], A: [12 * SF, 3 * SF], V: [45 * CY, 7 * CY] },
  },
  {
    what: 'British: carried to collection, cube with m3',
    text: lines('item,V (m3)', '"Excavate; n.e. 2 m deep",125', 'Disposal,125', 'Carried to Collection,250'),
    say: ['--totals', 'out'],
    cells: { item: ['Excavate; n.e. 2 m deep', 'Disposal'], V: [125, 125] },
  },
  {
    what: 'British: nr for numbers in a column of units',
    text: lines('item,n,Unit', 'Piles,24,nr', 'Caps,12,No'),
    say: to('Unit=unit of n'),
    refused: ['row-unit-unread', 'line 3, column C'],
  },
];
