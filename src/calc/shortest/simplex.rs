//! Small linear programmes by the simplex method, in a dense tableau.

/// What is nought.
const NOUGHT: f64 = 1e-9;
/// Most pivots; after the first half the choice is by Bland's rule, which cannot go round in circles.
const MOST_PIVOTS: usize = 3000;

/// `coefficients · x ≤ most`, or it costs `weight` for each 1 that it is exceeded by.
#[derive(Debug, Clone)]
pub(super) struct Row {
    pub coefficients: Vec<f64>,
    pub most: f64,
    pub weight: f64,
}

/// The cheapest `x` within bounds. Where the pivots run out, the best that was come to: it keeps the bounds all the same.
pub(super) fn solve(cost: &[f64], rows: &[Row], bounds: &[[f64; 2]]) -> Vec<f64> {
    let mut tableau = Tableau::new(cost, rows, bounds);
    for pivot in 0..MOST_PIVOTS {
        let Some(column) = tableau.entering(pivot > MOST_PIVOTS / 2) else { break };
        let Some(row) = tableau.leaving(column) else { break };
        tableau.pivot(row, column);
    }
    let risen = tableau.solution(cost.len());
    risen.iter().zip(bounds).map(|(risen, [low, high])| (low + risen).clamp(*low, high.max(*low))).collect()
}

/// Columns: what x is above its lower bound, what each row is exceeded by, slacks, and the right side.
struct Tableau {
    rows: Vec<Vec<f64>>,
    /// Reduced costs.
    cost: Vec<f64>,
    basis: Vec<usize>,
}

impl Tableau {
    fn new(cost: &[f64], rows: &[Row], bounds: &[[f64; 2]]) -> Self {
        let (n, k) = (cost.len(), rows.len());
        let (width, right) = (2 * n + 2 * k + 1, 2 * n + 2 * k);
        let mut reduced = vec![0.0; width];
        reduced[..n].copy_from_slice(cost);
        let mut made = Self { rows: Vec::with_capacity(n + k), cost: reduced, basis: Vec::with_capacity(n + k) };
        for (at, row) in rows.iter().enumerate() {
            let below: f64 = row.coefficients.iter().zip(bounds).map(|(each, [low, _])| each * low).sum();
            let most = row.most - below;
            let sign = if most < 0.0 { -1.0 } else { 1.0 };
            let mut line = vec![0.0; width];
            for (place, each) in line.iter_mut().zip(&row.coefficients) {
                *place = sign * each;
            }
            line[n + at] = -sign;
            line[n + k + at] = sign;
            line[right] = sign * most;
            made.cost[n + at] = row.weight;
            made.basis.push(if most < 0.0 { n + at } else { n + k + at });
            made.rows.push(line);
        }
        for (at, [low, high]) in bounds.iter().enumerate() {
            let mut line = vec![0.0; width];
            line[at] = 1.0;
            line[n + 2 * k + at] = 1.0;
            line[right] = (high - low).max(0.0);
            made.basis.push(n + 2 * k + at);
            made.rows.push(line);
        }
        // What is exceeded to begin with costs already.
        for at in 0..k {
            let weight = made.cost[made.basis[at]];
            if weight != 0.0 {
                let Self { rows, cost, .. } = &mut made;
                cost.iter_mut().zip(&rows[at]).for_each(|(cost, each)| *cost -= weight * each);
            }
        }
        made
    }

    fn entering(&self, first: bool) -> Option<usize> {
        let costs = &self.cost[..self.cost.len() - 1];
        let mut gaining = costs.iter().enumerate().filter(|(_, cost)| **cost < -NOUGHT);
        let found = if first { gaining.next() } else { gaining.min_by(|a, b| a.1.total_cmp(b.1)) };
        found.map(|(at, _)| at)
    }

    fn leaving(&self, column: usize) -> Option<usize> {
        let right = self.cost.len() - 1;
        let ratios = self.rows.iter().enumerate().filter(|(_, row)| row[column] > NOUGHT).map(|(at, row)| (at, row[right] / row[column]));
        ratios.min_by(|a, b| a.1.total_cmp(&b.1).then(self.basis[a.0].cmp(&self.basis[b.0]))).map(|(at, _)| at)
    }

    fn pivot(&mut self, row: usize, column: usize) {
        let by = self.rows[row][column];
        self.rows[row].iter_mut().for_each(|each| *each /= by);
        let line = self.rows[row].clone();
        let others = self.rows.iter_mut().enumerate().filter(|(at, _)| *at != row).map(|(_, other)| other);
        for other in others.chain([&mut self.cost]) {
            let times = other[column];
            if times != 0.0 {
                other.iter_mut().zip(&line).for_each(|(each, pivot)| *each -= times * pivot);
            }
        }
        self.basis[row] = column;
    }

    fn solution(&self, n: usize) -> Vec<f64> {
        let right = self.cost.len() - 1;
        let mut x = vec![0.0; n];
        for (row, &column) in self.rows.iter().zip(&self.basis) {
            if let Some(place) = x.get_mut(column) {
                *place = row[right];
            }
        }
        x
    }
}

#[cfg(test)]
mod tests {
    use super::{Row, solve};

    fn row(coefficients: &[f64], most: f64) -> Row {
        Row { coefficients: coefficients.to_vec(), most, weight: 1e3 }
    }

    /// Most of 3x + 5y with x ≤ 4, 2y ≤ 12, 3x + 2y ≤ 18: the corners are (0,6) 30, (2,6) 36, (4,3) 27, (4,0) 12.
    #[test]
    fn finds_the_best_corner() {
        let found = solve(&[-3.0, -5.0], &[row(&[0.0, 2.0], 12.0), row(&[3.0, 2.0], 18.0)], &[[0.0, 4.0], [0.0, 100.0]]);
        assert!((found[0] - 2.0).abs() < 1e-9 && (found[1] - 6.0).abs() < 1e-9, "{found:?}");
    }

    /// x + y at least 3 within −5 to 2 each, least 2x + y: y as far as it goes, 2, then x = 1.
    #[test]
    fn keeps_a_row_that_is_broken_to_begin_with() {
        let found = solve(&[2.0, 1.0], &[row(&[-1.0, -1.0], -3.0)], &[[-5.0, 2.0], [-5.0, 2.0]]);
        assert!((found[0] - 1.0).abs() < 1e-9 && (found[1] - 2.0).abs() < 1e-9, "{found:?}");
    }

    /// Where a row cannot be kept, it is broken by the least: x ≥ 7 within 0 to 2.
    #[test]
    fn breaks_what_cannot_be_kept_by_the_least() {
        assert!((solve(&[1.0], &[row(&[-1.0], -7.0)], &[[0.0, 2.0]])[0] - 2.0).abs() < 1e-9);
    }

    /// Beside every corner of a box cut by random planes: none is better.
    #[test]
    fn is_never_beaten_by_a_grid() {
        let mut state = 7_u64;
        let mut draw = || {
            state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            (state >> 11) as f64 / (1_u64 << 53) as f64 * 2.0 - 1.0
        };
        for _ in 0..200 {
            let cost = [draw(), draw(), draw()];
            let rows: Vec<Row> = (0..4).map(|_| Row { coefficients: vec![draw(), draw(), draw()], most: draw(), weight: 2.0 }).collect();
            let value = |x: &[f64]| {
                let over =
                    rows.iter().map(|row| 2.0 * (row.coefficients.iter().zip(x).map(|(a, b)| a * b).sum::<f64>() - row.most).max(0.0));
                cost.iter().zip(x).map(|(a, b)| a * b).sum::<f64>() + over.sum::<f64>()
            };
            let found = value(&solve(&cost, &rows, &[[-1.0, 1.0]; 3]));
            for at in 0..1331 {
                let x = [at % 11, at / 11 % 11, at / 121].map(|step| f64::from(step) / 5.0 - 1.0);
                assert!(found <= value(&x) + 1e-9);
            }
        }
    }
}
