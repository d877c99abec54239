/** A digit straight behind a symbol of a unit that reads: its power. */
const BARE_POWER = /(?<=\p{L}\.?)[2-4](?!\d)/gu;

/** A unit that reads with its powers, as in `kN/m3` and `m**3`, written by one sign: `kN/m^3`, `m^3`. */
export function withPowerSigns(unit: string): string {
  return unit.replaceAll('**', '^').replace(BARE_POWER, '^$&');
}
