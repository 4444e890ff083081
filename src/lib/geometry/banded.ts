/**
 * Solves a symmetric positive definite system by the root of Cholesky, in place: `rows[i]` holds the entries of row i at the columns
 * i − w ... i, where w is the band's width, and `right` becomes the solution. Throws RangeError when the system is not positive definite.
 */
export function solveBanded(rows: readonly number[][], right: number[]): void {
  const n = rows.length;
  const w = rows[0]!.length - 1;
  for (let i = 0; i < n; i++) {
    const row = rows[i]!;
    const first = Math.max(0, i - w);
    for (let j = first; j <= i; j++) {
      const other = rows[j]!;
      let sum = row[w - i + j]!;
      for (let k = Math.max(first, j - w); k < j; k++) sum -= row[w - i + k]! * other[w - j + k]!;
      if (i > j) row[w - i + j] = sum / other[w]!;
      else if (sum > 0) row[w] = Math.sqrt(sum);
      else throw new RangeError('the system is not positive definite');
    }
    let value = right[i]!;
    for (let k = first; k < i; k++) value -= row[w - i + k]! * right[k]!;
    right[i] = value / row[w]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    let value = right[i]!;
    for (let k = i + 1; k < Math.min(n, i + w + 1); k++) value -= rows[k]![w - k + i]! * right[k]!;
    right[i] = value / rows[i]![w]!;
  }
}
