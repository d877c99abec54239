/** What a cell has of a number and the unit behind it, as far as it looks so. */
export interface NumberAndUnit {
  readonly digits: string;
  readonly unit: string;
}

const PATTERN = /^(.*?[\d½¼¾⅓⅔⅛⅜⅝⅞.](?:[eE][+\-−]?\d+)?)\s*([\p{L}㎀-㏟$€£%‰°#].*)$/su;

/** Parts a cell such as `350 mm` in its number and its unit. */
export function numberAndUnit(cell: string): NumberAndUnit | undefined {
  const [, digits, unit] = PATTERN.exec(cell) ?? [];
  return digits === undefined || unit === undefined ? undefined : { digits, unit };
}
