/** A digit straight behind a symbol of a unit that reads: its power. */
const BARE_POWER = /(?<=\p{L}\.?)[2-4](?!\d)/gu;

/** A unit that reads with its bare powers, as in `kN/m3`, written by a sign: `kN/m^3`. */
export function withPowerSigns(unit: string): string {
  return unit.replace(BARE_POWER, '^$&');
}
