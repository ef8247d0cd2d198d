/**
 * Lower triangle L with LLᵀ = A, row by row, for a symmetric positive definite A; null where A is not.
 *
 * @example cholesky([[4, 2], [2, 5]]) // [[2, 0], [1, 2]]
 */
export function cholesky(a: readonly ArrayLike<number>[]): Float64Array[] | null {
  const l = a.map(() => new Float64Array(a.length));
  for (let i = 0; i < a.length; i++) {
    for (let j = 0; j <= i; j++) {
      let rest = a[i]![j]!;
      for (let k = 0; k < j; k++) rest -= l[i]![k]! * l[j]![k]!;
      if (i !== j) l[i]![j] = rest / l[j]![j]!;
      else if (rest > 1e-12 * a[i]![i]!) l[i]![i] = Math.sqrt(rest);
      else return null;
    }
  }
  return l;
}

/**
 * Solves Lx = b for a lower triangle.
 *
 * @example solveLower([[2, 0], [1, 2]], [2, 5]) // [1, 2]
 */
export function solveLower(l: readonly ArrayLike<number>[], b: ArrayLike<number>): Float64Array {
  const x = new Float64Array(b.length);
  for (let i = 0; i < b.length; i++) {
    let rest = b[i]!;
    for (let k = 0; k < i; k++) rest -= l[i]![k]! * x[k]!;
    x[i] = rest / l[i]![i]!;
  }
  return x;
}
