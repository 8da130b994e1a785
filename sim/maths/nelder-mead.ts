/**
 * The least of a smooth function of a few numbers, without derivatives: Nelder & Mead, Computer Journal 7, 308 (1965), with
 * the usual steps (reflect 1, expand 2, contract 1/2, shrink 1/2). Answers for: a status instead of a silent stop. Leaves
 * out: proof that no deeper valley lies elsewhere; begin again from the place found, or from another, to look.
 */

export interface Search {
  /** What is to be made small. It may return Infinity where the numbers make no sense; NaN counts as that. */
  readonly misfit: (at: readonly number[]) => number;
  readonly start: readonly number[];
  /** First step in each number, not 0: about as far as the answer may lie. */
  readonly steps: readonly number[];
  /** Settled when all corners lie within this share of `steps` of the best in every number. */
  readonly tolerance: number;
  /** Most times the misfit is asked. */
  readonly mostTries: number;
}

export interface Found {
  /** 'notSettled': the tries ran out; 'badStart': the misfit is not finite at the start, or a step is 0 or not finite. */
  readonly status: 'ok' | 'notSettled' | 'badStart';
  readonly at: readonly number[];
  readonly misfit: number;
  readonly tries: number;
}

interface Corner {
  readonly at: readonly number[];
  readonly value: number;
}

/** @returns the best place met, whatever the status */
export function findLeast({ misfit, start, steps, tolerance, mostTries }: Search): Found {
  let tries = 0;
  const corner = (at: readonly number[]): Corner => {
    tries++;
    const value = misfit(at);
    return { at, value: Number.isNaN(value) ? Number.POSITIVE_INFINITY : value };
  };
  const first = corner(start);
  const found = (status: Found['status'], { at, value }: Corner): Found => ({
    status,
    at,
    misfit: value,
    tries,
  });
  if (!Number.isFinite(first.value) || steps.length !== start.length) return found('badStart', first);
  if (steps.some((step) => !Number.isFinite(step) || step === 0)) return found('badStart', first);
  const corners = [
    first,
    ...start.map((_, which) => corner(start.map((value, i) => (i === which ? value + steps[i] : value)))),
  ];
  while (true) {
    corners.sort((one, other) => one.value - other.value);
    const [best] = corners;
    const worst = corners[corners.length - 1];
    const wide = corners.some(({ at }) =>
      at.some((value, i) => Math.abs(value - best.at[i]) > tolerance * Math.abs(steps[i])),
    );
    if (!wide) return found('ok', best);
    if (tries >= mostTries) return found('notSettled', best);
    const middle = start.map((_, i) =>
      corners.slice(0, -1).reduce((sum, { at }) => sum + at[i] / start.length, 0),
    );
    /** 1 reflects the worst corner through the middle of the others, 2 expands, 1/2 and -1/2 contract. */
    const through = (times: number): Corner =>
      corner(middle.map((value, i) => value + times * (value - worst.at[i])));
    const mirrored = through(1);
    let better = mirrored;
    if (mirrored.value < best.value) {
      const farther = through(2);
      if (farther.value < mirrored.value) better = farther;
    } else if (mirrored.value >= corners[corners.length - 2].value) {
      better = through(mirrored.value < worst.value ? 0.5 : -0.5);
      if (better.value >= Math.min(mirrored.value, worst.value)) {
        for (let i = 1; i < corners.length; i++)
          corners[i] = corner(corners[i].at.map((value, k) => (value + best.at[k]) / 2));
        continue;
      }
    }
    corners[corners.length - 1] = better;
  }
}
