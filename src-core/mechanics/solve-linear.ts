/** What elimination finds: the unknowns, or the one that no equation settles, or the equation that cannot hold. */
export type LinearAnswer =
  | { readonly unknowns: readonly number[] }
  | { readonly undetermined: number }
  | { readonly contradicted: number; readonly by: number };

/** Relative to the largest coefficient: below this a pivot is rounding noise, and above it an equation fails. */
const noise = 1e-9;

/**
 * Solves `rows · x = right` by Gaussian elimination with pivoting. There may be more equations than unknowns, as long as
 * the surplus ones agree.
 */
export function solveLinear(rows: readonly (readonly number[])[], right: readonly number[]): LinearAnswer {
  const count = rows[0]?.length ?? 0;
  const work = rows.map((row, i) => ({ equation: i, values: [...row, right[i]!] }));
  const scale = Math.max(1e-300, ...work.flatMap(({ values }) => values.map(Math.abs)));
  for (let column = 0; column < count; column++) {
    let best = column;
    for (let i = column + 1; i < work.length; i++) {
      if (Math.abs(work[i]!.values[column]!) > Math.abs(work[best]?.values[column] ?? 0)) best = i;
    }
    const pivotRow = work[best];
    if (pivotRow === undefined || Math.abs(pivotRow.values[column]!) <= noise * scale) return { undetermined: column };
    work[best] = work[column]!;
    work[column] = pivotRow;
    const pivot = pivotRow.values[column]!;
    for (const { values } of work) {
      if (values === pivotRow.values) continue;
      const share = values[column]! / pivot;
      if (share === 0) continue;
      for (let j = column; j <= count; j++) values[j]! -= share * pivotRow.values[j]!;
    }
  }
  for (const { equation, values } of work.slice(count)) {
    if (Math.abs(values[count]!) > 1e-6 * scale) return { contradicted: equation, by: Math.abs(values[count]!) };
  }
  return { unknowns: work.slice(0, count).map(({ values }, i) => values[count]! / values[i]!) };
}
