/** Columns of the design and what a column must bring to be kept. */
interface Design {
  /** Columns of equal length. */
  readonly columns: readonly Float64Array[];
  /** Squared size against which a column's own part is judged; the column's own squared norm by default. */
  readonly scale?: readonly number[];
  /** A column whose own part is no larger than this share of its scale is left out; 1e-10 by default. */
  readonly minShare?: number;
  /** A kept column's own part must have at least this many effective values, (Σw²)²/Σw⁴; 0 by default. */
  readonly minEffective?: number;
}

/** A fit with every column that depends on earlier ones left out. */
export interface LinearFit {
  /** One a column; 0 for those left out. */
  readonly coefficients: Float64Array;
  /** Indices of the columns kept, ascending. */
  readonly kept: readonly number[];
  /** For each column its expression by the kept ones (unit vector for a kept one). */
  readonly expressed: readonly Float64Array[];
  readonly residuals: Float64Array;
  /** Inverse of the kept columns' cross-product matrix, row by row. */
  readonly inverse: readonly Float64Array[];
}

const dot = (a: Float64Array, b: Float64Array): number => {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
};

/** Takes the part of `v` along the orthonormal `basis` out of it, twice for orthogonality, and returns it. */
function project(v: Float64Array, basis: readonly Float64Array[]): Float64Array {
  const along = new Float64Array(basis.length);
  for (let pass = 0; pass < 2; pass++) {
    basis.forEach((q, k) => {
      const part = dot(q, v);
      along[k]! += part;
      for (let i = 0; i < v.length; i++) v[i]! -= part * q[i]!;
    });
  }
  return along;
}

/** Solves the upper triangular system R x = b. */
function backSolve(r: readonly Float64Array[], b: Float64Array): Float64Array {
  const x = new Float64Array(r.length);
  for (let k = r.length - 1; k >= 0; k--) {
    let rest = b[k]!;
    for (let j = k + 1; j < r.length; j++) rest -= r[j]![k]! * x[j]!;
    x[k] = rest / r[k]![k]!;
  }
  return x;
}

/**
 * Least squares in the order of the columns: a column that the earlier ones can express is left out rather than
 * making the fit singular, so that earlier terms take precedence and every coefficient is determined.
 * Gram–Schmidt with re-orthogonalisation (Björck 1967, quoted from memory).
 *
 * @example columns [1,1,1] and [0,1,2] on y = [1,3,5] // coefficients 1 and 2
 */
export function leastSquares(design: Design, y: Float64Array): LinearFit {
  const basis: Float64Array[] = [];
  // r[k] holds the k-th kept column in terms of the basis.
  const r: Float64Array[] = [];
  const kept: number[] = [];
  const along = design.columns.map((column, at) => {
    const own = Float64Array.from(column);
    const coordinates = project(own, basis);
    const size = dot(own, own);
    const fourth = own.reduce((sum, w) => sum + w ** 4, 0);
    const enough = fourth > 0 && (size * size) / fourth >= (design.minEffective ?? 0);
    if (size <= (design.minShare ?? 1e-10) * (design.scale?.[at] ?? dot(column, column)) || !enough)
      return coordinates;
    const norm = Math.sqrt(size);
    basis.push(own.map((w) => w / norm));
    kept.push(at);
    r.push(Float64Array.of(...coordinates, norm));
    return r.at(-1)!;
  });
  const residuals = Float64Array.from(y);
  const solution = backSolve(r, project(residuals, basis));
  const coefficients = new Float64Array(design.columns.length);
  kept.forEach((at, k) => {
    coefficients[at] = solution[k]!;
  });
  const pad = (v: Float64Array) => Float64Array.from({ length: r.length }, (_, k) => v[k] ?? 0);
  const rInverse = r.map((_, k) =>
    backSolve(
      r,
      Float64Array.from(r, (_row, j) => (j === k ? 1 : 0)),
    ),
  );
  const inverse = r.map((_, i) =>
    Float64Array.from(r, (_row, j) => rInverse.reduce((sum, column) => sum + column[i]! * column[j]!, 0)),
  );
  return { coefficients, kept, expressed: along.map((v) => backSolve(r, pad(v))), residuals, inverse };
}
