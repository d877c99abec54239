import { describeDimension, standardUnits } from '../../units/index.ts';
import { code, generated, table } from './markdown.ts';

const systems: Readonly<Record<string, string>> = { SI: 'SI', US: 'US customary', both: 'both' };

/** Every unit of the registry with its exact factor, and the symbols that are refused with their choices. */
export function unitsPage(): string {
  const known = [...standardUnits.infos.values()];
  const currencies = known.filter(({ source }) => source === 'ISO 4217').map(({ symbol }) => symbol);
  const rows = known
    .filter(({ source }) => source !== 'ISO 4217')
    .map(({ symbol, aliases, name, system, source }) => {
      const unit = standardUnits.units.get(symbol);
      return [
        code(symbol),
        aliases.map(code).join(' '),
        name,
        unit ? describeDimension(unit.dimension) : '',
        unit ? `${unit.factor}${unit.offset === 0 ? '' : `, offset ${unit.offset}`}` : '',
        systems[system] ?? system,
        source,
      ];
    });
  const refused = [...standardUnits.refused.values()].map(({ symbol, choices }) => [
    code(symbol),
    choices.map(code).join(' '),
  ]);
  return `# Units

${generated}

Values are kept in SI; a factor is the SI value of one unit. In a compound unit products are \`·\`, \`*\`, a hyphen or a
space, powers \`^2\`, \`²\` or, behind a length, a bare 2, 3 or 4 (\`kN/m3\`), one \`/\`, and what follows it in
parentheses if it is a product: \`kN·m\`, \`kip-ft\`, \`lbf/ft^2\`, \`kN/(m·s)\`. \`-\` or a blank is a plain number; an
entry \`0.05 -\` is one on a line of per cent too (5 %), where a bare 0.05 is 0.05 % and is pointed out with both
readings. \`degC\` and \`degF\` alone are absolute temperatures. An elevation is a length with its datum, \`ft MLLW\`.
A book may define units of its own, \`shift = 10 h\`, and base units, \`bcy\`.

${table(['symbol', 'also', 'name', 'dimension', 'factor to SI', 'system', 'source'], rows)}

## Currencies

Each is a dimension of its own; \`$\` is the book's. ISO 4217: ${currencies.join(' ')}.

## Refused symbols

What two careful people could read two ways is refused, with the choices.

${table(['written', 'choices'], refused)}
`;
}
