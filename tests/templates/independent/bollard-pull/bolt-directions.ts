import { positive } from './entries.ts';

/** A bolt on the base plate, m: from the toe, and along the berth from the bollard’s axis. */
export interface Bolt {
  readonly from: number;
  readonly beside: number;
}

/** The base plate, m: the bollard’s axis from its toe and from its side edge, and how it turns. */
export interface Plate {
  readonly toe: number;
  readonly side: number;
  readonly turnsAbout: 'edges' | 'centroid';
}

/** What a horizontal pull at a height and an uplift make of the bolts when the pull may turn: kN, m. */
export interface Turning {
  /** The largest tension of any bolt, the pull in any direction toward the water or along the berth. */
  readonly tension: (pull: number, height: number, uplift: number) => number;
  /** The largest shear of any bolt. */
  readonly shear: (pull: number) => number;
  readonly alongSquares: number;
  readonly sideSquares: number;
  readonly furthest: number;
  /** The distance of the two bolts that are nearest to each other; not a number where there is one. */
  readonly nearest: number;
  /** Sum of the tensions about the side edge, the pull straight along the berth. */
  readonly allBySide: (pull: number, height: number, uplift: number) => number;
}

const sum = (values: readonly number[]): number => values.reduce((all, value) => all + value, 0);

/** The bolts of rows that are spread evenly over their width, one by one. */
export function spread(
  rows: readonly { readonly from: number; readonly count: number; readonly width: number }[],
): Bolt[] {
  return rows.flatMap(({ from, count, width }) =>
    Array.from({ length: count }, (_, place) => ({
      from,
      beside: count === 1 ? 0 : -width / 2 + (width * place) / (count - 1),
    })),
  );
}

/** Works out, bolt by bolt, what the directions of the pull come to, by trying them. */
export function turning(bolts: readonly Bolt[], plate: Plate, centroid: number, squares: number): Turning {
  const count = bolts.length;
  const toeSquares = sum(bolts.map(({ from }) => from ** 2));
  const alongSquares = sum(bolts.map(({ beside }) => beside ** 2));
  const sideSquares = sum(bolts.map(({ beside }) => (plate.side + beside) ** 2));
  const each = bolts.map(({ from, beside }) => {
    const isEdges = plate.turnsAbout === 'edges';
    const square = isEdges ? from / positive(toeSquares) : (from - centroid) / positive(squares);
    const along = isEdges ? (plate.side + beside) / positive(sideSquares) : beside / positive(alongSquares);
    const lifts = isEdges
      ? // Some of the uplift turns the plate about its toe, the rest about its side edge.
        [0, 0.25, 0.5, 0.75, 1].map((part) => part * plate.toe * square + (1 - part) * plate.side * along)
      : [1 / count + (plate.toe - centroid) * square];
    return { perMoment: most((angle) => square * Math.cos(angle) + along * Math.sin(angle)), lifts };
  });
  const [share, arm] = [1 / count, Math.abs(plate.toe - centroid)];
  const turned = bolts.map(
    ({ from, beside }) => (arm * Math.hypot(from - centroid, beside)) / positive(squares + alongSquares),
  );
  const furthest = Math.max(...bolts.map(({ from, beside }) => Math.hypot(from - centroid, beside)));
  // A share of the pull, and a twist that points some other way.
  const shears = turned.map((twist) =>
    most((angle) => Math.hypot(share + twist * Math.cos(angle), twist * Math.sin(angle))),
  );
  const distances = bolts.flatMap((bolt, row) =>
    bolts.slice(row + 1).map((other) => Math.hypot(bolt.from - other.from, bolt.beside - other.beside)),
  );
  return {
    tension: (pull, height, uplift) =>
      Math.max(
        ...each.map(
          ({ perMoment, lifts }) =>
            pull * height * perMoment + Math.max(...lifts.map((lift) => uplift * lift)),
        ),
      ),
    shear: (pull) => pull * Math.max(...shears),
    alongSquares,
    sideSquares,
    furthest,
    nearest: count < 2 ? Number.NaN : Math.min(...distances),
    allBySide: (pull, height, uplift) =>
      sum(
        bolts.map(
          ({ beside }) =>
            ((pull * height + uplift * plate.side) * (plate.side + beside)) / positive(sideSquares),
        ),
      ),
  };
}

/** The most of a smooth value at any angle of half a turn, a quarter to either side of none. */
function most(of: (angle: number) => number): number {
  const steps = 36;
  const at = (step: number): number => (Math.PI * (step - steps / 2)) / steps;
  const values = Array.from({ length: steps + 1 }, (_, step) => of(at(step)));
  if (values.some((value) => Number.isNaN(value))) return Number.NaN;
  const top = values.indexOf(Math.max(...values));
  let [low, high] = [at(Math.max(0, top - 1)), at(Math.min(steps, top + 1))];
  for (let cut = 0; cut < 60; cut += 1) {
    const [third, other] = [low + (high - low) / 3, high - (high - low) / 3];
    if (of(third) < of(other)) low = third;
    else high = other;
  }
  return Math.max(...values, of((low + high) / 2));
}
