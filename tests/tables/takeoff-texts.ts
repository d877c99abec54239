// A table of texts, longer than other files. They are invented in the forms of bills of quantities, takeoffs and survey
// exports; the values beside each were worked out by hand.

/** A cell as it should be read: words, a number in SI, or blank. */
export type Expected = string | number | null;

/** A text as people export it; what is said of it; and its columns as they should be read, or why it is refused. */
export interface TakeoffText {
  readonly what: string;
  readonly text: string;
  readonly say: readonly string[];
  readonly cells?: Readonly<Record<string, readonly Expected[]>>;
  /** The code of a refusal and what it has to say of the place. */
  readonly refused?: readonly [code: string, place: string];
}

/**
 * The international foot is 0.3048 m, the pound 0.45359237 kg exactly (NIST SP 811, 2008, Appendix B.6); a cubic yard
 * is 27 ft³, the short ton 2,000 lb.
 */
const FT = 0.3048;
const SF = FT * FT;
const CY = 27 * FT ** 3;
const ST = 2000 * 0.45359237;
const IN = FT / 12;
/** One tonne in SI. */
const T = 1000;

const columns = (said: string): readonly string[] => ['--columns', said];

const lines = (...rows: readonly string[]): string => `${rows.join('\n')}\n`;

export const TAKEOFF_TEXTS: readonly TakeoffText[] = [
  {
    what: 'a bill with sections, item numbers and a subtotal',
    text: lines(
      'Item,Description,Quantity,Unit',
      '1,SUBSTRUCTURE,,',
      '1.1,Bored piles,120.5,CY',
      '1.1.2,"Pile caps, in situ",34,CY',
      ',Subtotal,154.5,CY',
    ),
    say: [
      ...columns('Item=no; Description=item; Quantity=V; Unit=unit of V'),
      '--totals',
      'out',
      '--notes',
      'out',
    ],
    cells: {
      no: ['1', '1.1', '1.1.2'],
      item: ['SUBSTRUCTURE', 'Bored piles', 'Pile caps, in situ'],
      V: [null, 120.5 * CY, 34 * CY],
    },
  },
  {
    what: 'the same bill without a word on its subtotal',
    text: lines(
      'Item,Description,Quantity,Unit',
      '1.1,Bored piles,120.5,CY',
      '1.2,Caps,34,CY',
      ',Subtotal,154.5,CY',
    ),
    say: columns('Item=no; Description=item; Quantity=V; Unit=unit of V'),
    refused: ['row-total', 'line 4'],
  },
  {
    what: 'a German takeoff with decimal commas and points between thousands',
    text: lines('Pos.;Bezeichnung;Menge;Einheit', '1;Aushub;1.250,50;m³', '2;Verfüllung;980,25;m³'),
    say: columns('Pos.=no; Bezeichnung=item; Menge=V; Einheit=unit of V'),
    cells: { no: ['1', '2'], item: ['Aushub', 'Verfüllung'], V: [1250.5, 980.25] },
  },
  {
    what: 'a German takeoff whose unit stands in its heading as cbm',
    text: lines('Bezeichnung;Menge in cbm', 'Aushub;1.250,5', 'Verfüllung;980'),
    say: columns('Bezeichnung=item; Menge in cbm=V'),
    cells: { item: ['Aushub', 'Verfüllung'], V: [1250.5, 980] },
  },
  {
    what: 'a German sum',
    text: lines('Bezeichnung;Menge (m3)', 'Aushub;1250,5', 'Verfüllung;980', 'Gesamtsumme;2230,5'),
    say: columns('Bezeichnung=item; Menge (m3)=V'),
    refused: ['row-total', 'line 4'],
  },
  {
    what: 'a French takeoff with narrow spaces between thousands',
    text: lines('Désignation;Quantité (m³)', 'Béton de fondation;1\u202f250,75', 'Remblai;12\u202f000,5'),
    say: columns('Désignation=item; Quantité (m³)=V'),
    cells: { item: ['Béton de fondation', 'Remblai'], V: [1250.75, 12000.5] },
  },
  {
    what: 'a French heading in capitals and a sous-total',
    text: lines('DÉSIGNATION;SURFACE m²', 'Dalle;120,5', 'Quai;30', 'Sous-total;150,5'),
    say: [...columns('DÉSIGNATION=item; SURFACE m²=A'), '--totals', 'out'],
    cells: { item: ['Dalle', 'Quai'], A: [120.5, 30] },
  },
  {
    what: 'a Spanish takeoff with ud. for its units',
    text: lines('Partida;Ud.;Medición', 'Excavación;m3;1.234,5', 'Relleno;m3;45,25'),
    say: columns('Partida=item; Medición=V; Ud.=unit of V'),
    cells: { item: ['Excavación', 'Relleno'], V: [1234.5, 45.25] },
  },
  {
    what: 'a Dutch takeoff',
    text: lines('Omschrijving;Hoeveelheid;Eenheid', 'Ontgraven;1.500,0;m3', 'Aanvullen;75,5;m3'),
    say: columns('Omschrijving=item; Hoeveelheid=V; Eenheid=unit of V'),
    cells: { item: ['Ontgraven', 'Aanvullen'], V: [1500, 75.5] },
  },
  {
    what: 'a Swiss takeoff with apostrophes',
    text: lines('Bezeichnung;Menge [m3]', "Aushub;1'250.50", "Beton;12'500"),
    say: columns('Bezeichnung=item; Menge [m3]=V'),
    cells: { item: ['Aushub', 'Beton'], V: [1250.5, 12500] },
  },
  {
    what: 'an American takeoff with commas in quoted numbers',
    text: lines('Description,Volume (CY)', '"Deck, north","1,250.50"', 'Caps,34'),
    say: columns('Description=item; Volume (CY)=V'),
    cells: { item: ['Deck, north', 'Caps'], V: [1250.5 * CY, 34 * CY] },
  },
  {
    what: 'the same without quotation marks',
    text: lines('Description,Volume (CY)', 'Deck,1,250.50', 'Caps,34'),
    say: columns('Description=item; Volume (CY)=V'),
    refused: ['row-long', 'line 2'],
  },
  {
    what: 'one number that may be a thousand times another',
    text: lines('Description\tVolume (m3)', 'Deck\t1,250', 'Caps\t34'),
    say: columns('Description=item; Volume (m3)=V'),
    refused: ['decimal-ambiguous', 'line 2, column B'],
  },
  {
    what: 'the same with the answer',
    text: lines('Description\tVolume (m3)', 'Deck\t1,250', 'Caps\t34'),
    say: [...columns('Description=item; Volume (m3)=V'), '--decimal', 'point'],
    cells: { item: ['Deck', 'Caps'], V: [1250, 34] },
  },
  {
    what: 'tons in a column for which three tons may be meant',
    text: lines('Item,Mass (tons)', 'Steel,12.5'),
    say: columns('Item=item; Mass (tons)=M'),
    refused: ['column-unit-unread', 'tons'],
  },
  {
    what: 'tonnes as t',
    text: lines('Item,Mass (t)', 'Steel,12.5'),
    say: columns('Item=item; Mass (t)=M'),
    cells: { item: ['Steel'], M: [12.5 * T] },
  },
  {
    what: 'to, as German lists write tonnes, which is not read',
    text: lines('Pos;Gewicht (to)', 'Stahl;12,5'),
    say: columns('Pos=item; Gewicht (to)=M'),
    refused: ['column-unit-unread', '“to”'],
  },
  {
    what: 'short tons as they are said',
    text: lines('Item,Mass (tons)', 'Steel,12.5'),
    say: columns('Item=item; Mass (tons)=M [ST]'),
    cells: { item: ['Steel'], M: [12.5 * ST] },
  },
  {
    what: 'ton row by row',
    text: lines('Item,Qty,Unit', 'Rebar,4.5,ton', 'Beams,8,t'),
    say: columns('Item=item; Qty=M; Unit=unit of M'),
    refused: ['row-unit-unread', 'line 2, column C'],
  },
  {
    what: 'linear feet as LF',
    text: lines('Item,Length LF', 'Kerb,1250', 'Rail,300.5'),
    say: columns('Item=item; Length LF=L'),
    cells: { item: ['Kerb', 'Rail'], L: [1250 * FT, 300.5 * FT] },
  },
  {
    what: 'counts as EA',
    text: lines('Item,Qty,UOM', 'Bollards,12,EA', 'Ladders,4,ea'),
    say: columns('Item=item; Qty=n; UOM=unit of n'),
    cells: { item: ['Bollards', 'Ladders'], n: [12, 4] },
  },
  {
    what: 'a lot among volumes',
    text: lines('Item,Qty,Unit', 'Concrete,12.5,CY', 'Formwork,1,lot'),
    say: columns('Item=item; Qty=V; Unit=unit of V'),
    refused: ['row-unit-unread', 'line 3, column C'],
  },
  {
    what: 'areas and volumes in one column',
    text: lines('Item,Qty,Unit', 'Concrete,12.5,m3', 'Formwork,40,m2'),
    say: columns('Item=item; Qty=V; Unit=unit of V'),
    refused: ['row-unit-unread', 'line 3, column C'],
  },
  {
    what: 'the column of units left out',
    text: lines('Item,Qty,Unit', 'Concrete,12.5,m3'),
    say: columns('Item=item; Qty=V; Unit=-'),
    refused: ['column-units-ignored', 'column C'],
  },
  {
    what: 'cu.yd in a heading',
    text: lines('Item,Qty (cu.yd)', 'Concrete,12.5'),
    say: columns('Item=item; Qty (cu.yd)=V'),
    cells: { item: ['Concrete'], V: [12.5 * CY] },
  },
  {
    what: 'a heading over two lines in quotation marks',
    text: 'Item,"Qty\n(m3)"\nConcrete,12.5\n',
    say: columns('#1=item; #2=V [m3]') /* Headers that hold a line break are told by number. */
      .concat(['--header', 'yes']),
    cells: { item: ['Concrete'], V: [12.5] },
  },
  {
    what: 'a title merged over the table and a date under it',
    text: lines('Quay wall B – takeoff,,', 'Status 12.03.2024,,', 'Item,Qty (m3),Rev', 'Concrete,12.5,B'),
    say: [...columns('Item=item; Qty (m3)=V; Rev=-'), '--notes', 'out'],
    cells: { item: ['Concrete'], V: [12.5] },
  },
  {
    what: 'the same title without a word on it',
    text: lines('Quay wall B – takeoff,,', 'Status,,', 'Item,Qty (m3),Rev', 'Concrete,12.5,B'),
    say: columns('Item=item; Qty (m3)=V; Rev=-'),
    refused: ['rows-above-headers', 'lines 1 and 2'],
  },
  {
    what: 'footnotes at the end',
    text: lines('Item,Qty (m3),Rev', 'Concrete*,12.5,B', '* net of openings,,', 'Prepared for pricing,,'),
    say: [...columns('Item=item; Qty (m3)=V; Rev=-'), '--notes', 'out'],
    cells: { item: ['Concrete*'], V: [12.5] },
  },
  {
    what: 'footnotes without a word on them',
    text: lines('Item,Qty (m3),Rev', 'Concrete*,12.5,B', '* net of openings,,'),
    say: columns('Item=item; Qty (m3)=V; Rev=-'),
    refused: ['row-note', 'line 3'],
  },
  {
    what: 'waste in per cent with its sign',
    text: lines('Item,Qty (m3),Waste', 'Concrete,12.5,5%', 'Grout,3.5,7.5 %'),
    say: columns('Item=item; Qty (m3)=V; Waste=w'),
    cells: { item: ['Concrete', 'Grout'], V: [12.5, 3.5], w: [0.05, 0.075] },
  },
  {
    what: 'waste as parts of one without a sign',
    text: lines('Item,Qty (m3),Waste', 'Concrete,12.5,0.05', 'Grout,3.5,0.1'),
    say: columns('Item=item; Qty (m3)=V; Waste=w'),
    refused: ['column-share', 'line 2, column C'],
  },
  {
    what: 'the same with the answer',
    text: lines('Item,Qty (m3),Waste', 'Concrete,12.5,0.05', 'Grout,3.5,0.1'),
    say: columns('Item=item; Qty (m3)=V; Waste=w [-]'),
    cells: { item: ['Concrete', 'Grout'], V: [12.5, 3.5], w: [0.05, 0.1] },
  },
  {
    what: 'prices with dollar signs',
    text: lines('Item,Price', 'Concrete,$185.50', 'Grout,"$1,250.00"'),
    say: columns('Item=item; Price=p'),
    cells: { item: ['Concrete', 'Grout'], p: [185.5, 1250] },
  },
  {
    what: 'prices in another currency than the table has',
    text: lines('Pos;Preis', 'Beton;185,50 €'),
    say: columns('Pos=item; Preis=p'),
    refused: ['cell-unread', 'line 2, column B'],
  },
  {
    what: 'a credit in parentheses',
    text: lines('Item,Price', 'Concrete,185.50', 'Salvage,(40.25)'),
    say: columns('Item=item; Price=p'),
    refused: ['cells-parentheses', 'line 3, column B'],
  },
  {
    what: 'a credit in parentheses that is said to be one',
    text: lines('Item,Price', 'Concrete,185.50', 'Salvage,(40.25)'),
    say: [...columns('Item=item; Price=p'), '--parentheses', 'minus'],
    cells: { item: ['Concrete', 'Salvage'], p: [185.5, -40.25] },
  },
  {
    what: 'a credit with its minus behind it',
    text: lines('Pos;Preis', 'Beton;1.185,50', 'Schrott;40,25-'),
    say: columns('Pos=item; Preis=p'),
    cells: { item: ['Beton', 'Schrott'], p: [1185.5, -40.25] },
  },
  {
    what: 'dashes of a spreadsheet for what is 0',
    text: lines('Item,Qty (m3)', 'Concrete,12.5', 'Grout,-'),
    say: columns('Item=item; Qty (m3)=V'),
    refused: ['cells-nil', 'line 3, column B'],
  },
  {
    what: 'n/a that is said to be a blank',
    text: lines('Item,Qty (m3)', 'Concrete,12.5', 'Grout,n/a'),
    say: [...columns('Item=item; Qty (m3)=V'), '--nil', 'blank'],
    cells: { item: ['Concrete', 'Grout'], V: [12.5, null] },
  },
  {
    what: 'an error of a spreadsheet',
    text: lines('Item,Qty (m3)', 'Concrete,12.5', 'Grout,#N/A'),
    say: [...columns('Item=item; Qty (m3)=V'), '--nil', 'blank'],
    refused: ['cell-unread', 'line 3, column B'],
  },
  {
    what: 'a quantity still to come',
    text: lines('Item,Qty (m3)', 'Concrete,12.5', 'Grout,TBC'),
    say: columns('Item=item; Qty (m3)=V'),
    refused: ['cell-unread', 'line 3, column B'],
  },
  {
    what: 'a date among quantities',
    text: lines('Pos;Menge (m3)', 'Beton;12,5', 'Mörtel;12.03.2024'),
    say: columns('Pos=item; Menge (m3)=V'),
    refused: ['cell-unread', 'line 3, column B'],
  },
  {
    what: 'a range among quantities',
    text: lines('Item,Qty (m3)', 'Concrete,12.5', 'Grout,3-5'),
    say: columns('Item=item; Qty (m3)=V'),
    refused: ['cell-unread', 'line 3, column B'],
  },
  {
    what: 'a row of units with the word',
    text: lines('Item\tLength\tThickness', 'Unit\tm\tmm', 'Slab\t12.5\t350'),
    say: columns('Item=item; Length=L; Thickness=h'),
    cells: { item: ['Slab'], L: [12.5], h: [0.35] },
  },
  {
    what: 'a row that numbers the columns',
    text: lines('Item\tLength (m)\tThickness (in)', '(1)\t(2)\t(3)', 'Slab\t12.5\t14'),
    say: [...columns('Item=item; Length (m)=L; Thickness (in)=h'), '--notes', 'out'],
    cells: { item: ['Slab'], L: [12.5], h: [14 * IN] },
  },
  {
    what: 'the same without a word on it',
    text: lines('Item\tLength (m)\tThickness (in)', '1\t2\t3', 'Slab\t12.5\t14'),
    say: columns('Item=item; Length (m)=L; Thickness (in)=h'),
    refused: ['row-numbering', 'line 2'],
  },
  {
    what: 'a total of two columns without a word beside it',
    text: lines('Item\tQty (m3)\tArea (m2)', 'Slab\t12.5\t40', 'Caps\t3.5\t10', '\t16\t50'),
    say: columns('Item=item; Qty (m3)=V; Area (m2)=A'),
    refused: ['row-total', 'line 4'],
  },
  {
    what: 'a stray number below the table',
    text: lines('Item\tQty (m3)\tArea (m2)', 'Slab\t12.5\t40', 'Caps\t3.5\t10', '\t\t7'),
    say: columns('Item=item; Qty (m3)=V; Area (m2)=A'),
    refused: ['row-unnamed', 'line 4'],
  },
  {
    what: 'a total that does not add up',
    text: lines('Item\tQty (m3)', 'Slab\t12.5', 'Caps\t3.5', 'All concrete\t17'),
    say: columns('Item=item; Qty (m3)=V'),
    refused: ['row-all', 'line 4'],
  },
  {
    what: 'an amount carried to the next page',
    text: lines('Item\tQty (m3)', 'Slab\t12.5', 'Caps\t3.5', 'Carried forward\t16', 'Wall\t4'),
    say: [...columns('Item=item; Qty (m3)=V'), '--totals', 'out'],
    cells: { item: ['Slab', 'Caps', 'Wall'], V: [12.5, 3.5, 4] },
  },
  {
    what: 'a survey of levels with a station, two sections blank',
    text: lines('Station,Length (ft),Area (sf)', '0+00,,', '0+50,50,120.5', '1+00,50,118'),
    say: [...columns('Station=item; Length (ft)=L; Area (sf)=A'), '--notes', 'in', '--thousands', 'plain'],
    cells: { item: ['0+00', '0+50', '1+00'], L: [null, 50 * FT, 50 * FT], A: [null, 120.5 * SF, 118 * SF] },
  },
  {
    what: 'a survey export with bars and drawn lines',
    text: lines('| Point | Length (m) |', '|---|---|', '| P1 | 12.5 |', '| P2 | 3.25 |'),
    say: columns('Point=item; Length (m)=L'),
    cells: { item: ['P1', 'P2'], L: [12.5, 3.25] },
  },
  {
    what: 'a spreadsheet that names its separator',
    text: lines('sep=;', 'Pos;Länge (m)', 'P1;12,5'),
    say: columns('Pos=item; Länge (m)=L'),
    cells: { item: ['P1'], L: [12.5] },
  },
  {
    what: 'words over two lines, quotation marks and a mark for inches',
    text: 'Item,Length (ft)\r\n"Pipe 12"" dia.\nnorth",40\r\n',
    say: columns('Item=item; Length (ft)=L'),
    cells: { item: ['Pipe 12" dia.\nnorth'], L: [40 * FT] },
  },
  {
    what: 'feet and inches',
    text: lines('Item\tLength', 'Beam\t12\'-6"', 'Tie\t3 ft'),
    say: columns('Item=item; Length=L'),
    cells: { item: ['Beam', 'Tie'], L: [12.5 * FT, 3 * FT] },
  },
  {
    what: 'units beside numbers that differ from row to row',
    text: lines('Item\tVolume', 'Slab\t12.5 m3', 'Caps\t10 CY', 'Wall\t2 cu yd'),
    say: columns('Item=item; Volume=V'),
    cells: { item: ['Slab', 'Caps', 'Wall'], V: [12.5, 10 * CY, 2 * CY] },
  },
  {
    what: 'two columns for one',
    text: lines('Item,Vol (m3),Vol rev. (m3)', 'Slab,12.5,13'),
    say: columns('Item=item; Vol (m3)=V; Vol rev. (m3)=V'),
    refused: ['column-twice', 'Vol rev.'],
  },
  {
    what: 'a line that was cut off',
    text: lines('Item,Vol (m3),Area (m2)', 'Slab,12.5,40', 'Caps,3.5'),
    say: columns('Item=item; Vol (m3)=V; Area (m2)=A'),
    refused: ['row-short', 'line 3'],
  },
  {
    what: 'lines without the separators of blank cells at their ends',
    text: lines('Item,Vol (m3),Area (m2)', 'Slab,12.5,40', 'Caps,3.5'),
    say: [...columns('Item=item; Vol (m3)=V; Area (m2)=A'), '--short', 'blank'],
    cells: { item: ['Slab', 'Caps'], V: [12.5, 3.5], A: [40, null] },
  },
  {
    what: 'decimal points and commas in one file',
    text: lines('Pos;Menge (m3)', 'Beton;12,5', 'Mörtel;3.5'),
    say: columns('Pos=item; Menge (m3)=V'),
    refused: ['decimal-mixed', 'line 3'],
  },
  {
    what: 'a quotation mark that is not closed',
    text: lines('Item,Vol (m3)', '"Slab,12.5', 'Caps,3.5'),
    say: columns('Item=item; Vol (m3)=V'),
    refused: ['table-quote-open', 'line 2'],
  },
  {
    what: 'blank lines between sections',
    text: lines('Item,Vol (m3)', '', 'Slab,12.5', ',', 'Caps,3.5', '', ''),
    say: columns('Item=item; Vol (m3)=V'),
    cells: { item: ['Slab', 'Caps'], V: [12.5, 3.5] },
  },
  {
    what: 'numbers in powers of ten',
    text: lines('Item,Vol (m3)', 'Slab,1.25E+03', 'Caps,3.5e0'),
    say: columns('Item=item; Vol (m3)=V'),
    cells: { item: ['Slab', 'Caps'], V: [1250, 3.5] },
  },
  {
    what: 'millions with all their commas, one left out by a slip',
    text: lines('Item\tVol (m3)', 'Slab\t1,250,000.5', 'Caps\t12,50'),
    say: columns('Item=item; Vol (m3)=V'),
    refused: ['decimal-mixed', 'line 3'],
  },
  {
    what: 'parts of a thousand, in a heading and beside numbers',
    text: lines('Item,Fall (‰),Waste', 'Slab,12.5,40 ‰', 'Caps,3,5 %'),
    say: columns('Item=item; Fall (‰)=w; Waste=-'),
    cells: { item: ['Slab', 'Caps'], w: [0.0125, 0.003] },
  },
  {
    what: 'parts of a thousand beside numbers of per cent',
    text: lines('Item,Waste', 'Slab,40 ‰', 'Caps,5 %'),
    say: columns('Item=item; Waste=w'),
    cells: { item: ['Slab', 'Caps'], w: [0.04, 0.05] },
  },
  {
    what: 'dollars with the country in front',
    text: lines('Item,Rate (US$),Qty', 'Slab,12.5,40', 'Caps,3.50 US$,5'),
    say: columns('Item=item; Rate (US$)=p; Qty=n'),
    cells: { item: ['Slab', 'Caps'], p: [12.5, 3.5], n: [40, 5] },
  },
  {
    what: 'dollars of another country',
    text: lines('Item,Rate (A$)', 'Slab,12.5'),
    say: columns('Item=item; Rate (A$)=p'),
    refused: ['column-unit-other-kind', 'A$'],
  },
  {
    what: 'headings said again on the second page, in another unit',
    text: lines('Item,Vol (m3)', 'Slab,12.5', 'Item,Vol (CY)', 'Caps,3.5'),
    say: columns('Item=item; Vol (m3)=V'),
    refused: ['headings-change', 'line 3'],
  },
  {
    what: 'units in the brackets of Chinese and Japanese print',
    text: lines('品名,数量（m3）,面積【㎡】,長さ ㍍', '床版,12.5,40,3'),
    say: columns('品名=item; 数量（m3）=V; 面積【㎡】=A; 長さ ㍍=-'),
    cells: { item: ['床版'], V: [12.5], A: [40] },
  },
  {
    what: 'a unit that is one sign, without brackets',
    text: lines('Item,Vol ㎥', 'Slab,12.5'),
    say: columns('Item=item; Vol ㎥=V'),
    cells: { item: ['Slab'], V: [12.5] },
  },
  {
    what: 'money of another country in brackets of full width',
    text: lines('Item,Price（EUR）', 'Slab,12.5'),
    say: columns('Item=item; Price（EUR）=p'),
    refused: ['column-unit-other-kind', 'EUR'],
  },
  {
    what: 'words beside a unit that change nothing of its size',
    text: lines('Item,Vol (m3 net in place),Area (approx. m2)', 'Slab,12.5,3'),
    say: columns('Item=item; Vol (m3 net in place)=V; Area (approx. m2)=A'),
    cells: { item: ['Slab'], V: [12.5], A: [3] },
  },
  {
    what: 'hundreds of a unit',
    text: lines('Item,Vol (100 m3)', 'Slab,12.5'),
    say: columns('Item=item; Vol (100 m3)=V'),
    refused: ['column-multiple', '“100 m3”'],
  },
  {
    what: 'a word beside the unit that is not known',
    text: lines('Item,Vol (thsd. m3)', 'Slab,12.5'),
    say: columns('Item=item; Vol (thsd. m3)=V'),
    refused: ['column-multiple', '“thsd.”'],
  },
  {
    what: 'tens behind the brackets of the unit',
    text: lines('Item,Vol (m3) x10', 'Slab,12.5'),
    say: columns('Item=item; Vol (m3) x10=V'),
    refused: ['column-multiple', '“x10”'],
  },
  {
    what: 'dozens of a unit',
    text: lines('Item,Vol (dozen m3)', 'Slab,12.5'),
    say: columns('Item=item; Vol (dozen m3)=V'),
    refused: ['column-multiple', '“dozen m3”'],
  },
  {
    what: 'sections and feet of pages in a column that is left out',
    text: lines('No,Item,Vol (m3)', '1,Slab,12', 'B. TIMBER,,', '2,Piles,3', 'Page 1 of 2,,'),
    say: columns('No=-; Item=item; Vol (m3)=V'),
    refused: ['row-note', 'lines 3 and 5'],
  },
  {
    what: 'sections and feet of pages in a column that is left out, left out with the notes',
    text: lines('No,Item,Vol (m3)', '1,Slab,12', 'B. TIMBER,,', '2,Piles,3', 'Page 1 of 2,,'),
    say: [...columns('No=-; Item=item; Vol (m3)=V'), '--notes', 'out'],
    cells: { item: ['Slab', 'Piles'], V: [12, 3] },
  },
  {
    what: 'a word beside the unit that makes another one of it',
    text: lines('Item,Mass (imperial t)', 'Slab,12.5'),
    say: columns('Item=item; Mass (imperial t)=M'),
    refused: ['column-unit-unread', 'imperial t'],
  },
  {
    what: 'headings said again in another unit, in brackets of full width',
    text: lines('品名,数量（m3）', '床版,12.5', '品名,数量（cy）', '杭,3.5'),
    say: columns('品名=item; 数量（m3）=V'),
    refused: ['headings-change', 'line 3'],
  },
];
