//! Matrices of three rows, and six equations.

use super::radial::{cross, dot};

pub(super) type Matrix = [[f64; 3]; 3];

/// Eigenvalues, largest first, and vectors in rows of a symmetric matrix, by Jacobi's rotations.
pub(super) fn principal(mut m: Matrix) -> ([f64; 3], Matrix) {
    let mut vectors = [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]];
    for _ in 0..30 {
        for (p, q) in [(0, 1), (0, 2), (1, 2)] {
            if m[p][q].abs() < 1e-300 {
                continue;
            }
            let theta = 0.5 * (2.0 * m[p][q]).atan2(m[q][q] - m[p][p]);
            let (s, c) = theta.sin_cos();
            for row in &mut m {
                (row[p], row[q]) = (c * row[p] - s * row[q], s * row[p] + c * row[q]);
            }
            for k in 0..3 {
                (m[p][k], m[q][k]) = (c * m[p][k] - s * m[q][k], s * m[p][k] + c * m[q][k]);
                (vectors[p][k], vectors[q][k]) = (c * vectors[p][k] - s * vectors[q][k], s * vectors[p][k] + c * vectors[q][k]);
            }
        }
    }
    let mut order = [0, 1, 2];
    order.sort_by(|&a, &b| m[b][b].total_cmp(&m[a][a]));
    (order.map(|k| m[k][k]), order.map(|k| vectors[k]))
}

pub(super) fn times(m: &Matrix, v: [f64; 3]) -> [f64; 3] {
    m.map(|row| dot(row, v))
}

pub(super) fn product(a: &Matrix, b: &Matrix) -> Matrix {
    std::array::from_fn(|i| std::array::from_fn(|j| (0..3).map(|k| a[i][k] * b[k][j]).sum()))
}

pub(super) fn flipped(m: &Matrix) -> Matrix {
    std::array::from_fn(|i| std::array::from_fn(|j| m[j][i]))
}

pub(super) fn determinant(m: &Matrix) -> f64 {
    dot(m[0], cross(m[1], m[2]))
}

/// A turn about an axis of length one (Rodrigues).
pub(super) fn turn(axis: [f64; 3], angle: f64) -> Matrix {
    let (s, c) = angle.sin_cos();
    std::array::from_fn(|i| {
        std::array::from_fn(|j| {
            let (k, sign) = if (i + 1) % 3 == j { ((i + 2) % 3, -1.0) } else { ((j + 2) % 3, 1.0) };
            if i == j { c + axis[i] * axis[i] * (1.0 - c) } else { axis[i] * axis[j] * (1.0 - c) + sign * axis[k] * s }
        })
    })
}

/// Six equations by elimination with the largest first.
pub(super) fn solve(mut left: [[f64; 6]; 6], mut right: [f64; 6]) -> Option<[f64; 6]> {
    for k in 0..6 {
        let pivot = (k..6).max_by(|&a, &b| left[a][k].abs().total_cmp(&left[b][k].abs()))?;
        left.swap(k, pivot);
        right.swap(k, pivot);
        if left[k][k].abs() < f64::MIN_POSITIVE {
            return None;
        }
        for row in k + 1..6 {
            let share = left[row][k] / left[k][k];
            (k..6).for_each(|column| left[row][column] -= share * left[k][column]);
            right[row] -= share * right[k];
        }
    }
    let mut found = [0.0; 6];
    for k in (0..6).rev() {
        let rest: f64 = (k + 1..6).map(|column| left[k][column] * found[column]).sum();
        found[k] = (right[k] - rest) / left[k][k];
    }
    Some(found)
}
