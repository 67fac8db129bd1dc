//! Which of flasks that are alike stands on which place, by their wishes: exactly.

use super::room::{Point, Task};

/// One mm of the second wish counts this much less than one step of the first: more than all seconds together.
const FIRST: i64 = 1 << 30;

/// Larger than any sum.
const NEVER: i64 = i64::MAX / 4;

/// For each flask the number of its place, so that all together are worth most; `None` where there are fewer places than flasks.
pub(super) fn assign(task: &Task, flasks: &[usize], places: &[Point]) -> Option<Vec<usize>> {
    if flasks.len() > places.len() {
        return None;
    }
    let cost = |flask: usize, place: usize| {
        let [warm, late] = task.worth(flasks[flask], places[place]);
        -(warm * FIRST + late)
    };
    Some(cheapest(flasks.len(), places.len(), &cost))
}

/// The assignment of `rows` to as many or more `columns` that costs least, row by row along shortest paths with potentials.
fn cheapest(rows: usize, columns: usize, cost: &dyn Fn(usize, usize) -> i64) -> Vec<usize> {
    // Rows and columns count from 1; column 0 is where the row stands that is to be placed.
    let (mut of_row, mut of_column) = (vec![0; rows + 1], vec![0; columns + 1]);
    let mut row_in = vec![0; columns + 1];
    for row in 1..=rows {
        row_in[0] = row;
        let (mut least, mut from, mut seen) = (vec![NEVER; columns + 1], vec![0; columns + 1], vec![false; columns + 1]);
        let mut column = 0;
        while row_in[column] != 0 {
            seen[column] = true;
            let (here, mut step, mut next) = (row_in[column], NEVER, 0);
            for to in (1..=columns).filter(|to| !seen[*to]) {
                let reduced = cost(here - 1, to - 1) - of_row[here] - of_column[to];
                if reduced < least[to] {
                    (least[to], from[to]) = (reduced, column);
                }
                if least[to] < step {
                    (step, next) = (least[to], to);
                }
            }
            for to in 0..=columns {
                if seen[to] {
                    of_row[row_in[to]] += step;
                    of_column[to] -= step;
                } else {
                    least[to] -= step;
                }
            }
            column = next;
        }
        while column != 0 {
            row_in[column] = row_in[from[column]];
            column = from[column];
        }
    }
    let mut found = vec![0; rows];
    for column in 1..=columns {
        if row_in[column] > 0 {
            found[row_in[column] - 1] = column - 1;
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::cheapest;

    /// The cheapest by trying everything.
    fn tried(rows: usize, columns: usize, cost: &dyn Fn(usize, usize) -> i64, row: usize, taken: &mut Vec<usize>) -> i64 {
        if row == rows {
            return 0;
        }
        let mut best = i64::MAX / 2;
        for column in 0..columns {
            if !taken.contains(&column) {
                taken.push(column);
                best = best.min(cost(row, column) + tried(rows, columns, cost, row + 1, taken));
                taken.pop();
            }
        }
        best
    }

    #[test]
    fn it_is_the_cheapest_of_all() {
        let mut state = 7_u64;
        for case in 0..200 {
            let (rows, columns) = (1 + case % 5, 1 + case % 5 + case % 3);
            let mut numbers = Vec::new();
            for _ in 0..rows * columns {
                state = state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
                numbers.push((state >> 40) as i64 % 50 - 25);
            }
            let cost = |row: usize, column: usize| numbers[row * columns + column];
            let found = cheapest(rows, columns, &cost);
            let sum: i64 = found.iter().enumerate().map(|(row, column)| cost(row, *column)).sum();
            assert_eq!(sum, tried(rows, columns, &cost, 0, &mut Vec::new()), "case {case}");
            let mut columns_used = found.clone();
            columns_used.sort_unstable();
            columns_used.dedup();
            assert_eq!(columns_used.len(), rows);
        }
    }
}
