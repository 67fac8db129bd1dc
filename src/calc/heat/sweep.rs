//! Implicit steps along one direction after the other: first along the radius, then along the axis.
//!
//! Solved is `(C + γΔt·Lr) C⁻¹ (C + γΔt·Lz) x = b`, which differs from the unsplit system by a term of second order in the step.

use super::flow::Flow;
use super::mesh::Mesh;

/// Both directions, factored.
#[derive(Debug, Clone)]
pub(super) struct Sweep {
    /// Heat capacity of each node, in J/K.
    capacity: Vec<f64>,
    radial: Lines,
    axial: Lines,
    /// Nodes of the mould row by row instead of column by column: capacities, links, and what is solved for.
    lying: [Vec<f64>; 3],
    /// No link across the axis.
    nothing: Vec<f64>,
    /// γΔt, in s.
    reach: f64,
}

impl Sweep {
    pub fn new(mesh: &Mesh) -> Self {
        let (nodes, mould, rows) = (mesh.nodes(), mesh.mould(), mesh.rows());
        Self {
            capacity: vec![0.0; nodes],
            radial: Lines::new(nodes, rows),
            axial: Lines::new(mould, mesh.r.len()),
            lying: [vec![0.0; mould], vec![0.0; mould], vec![0.0; mould]],
            nothing: vec![0.0; rows],
            reach: 0.0,
        }
    }

    pub fn capacity(&self) -> &[f64] {
        &self.capacity
    }

    pub fn capacity_mut(&mut self) -> &mut [f64] {
        &mut self.capacity
    }

    /// Factors for the capacities set.
    pub fn factor(&mut self, flow: &Flow, reach: f64) {
        self.reach = reach;
        self.radial.factor(&self.capacity, &flow.outwards, [&self.nothing, &flow.side], reach);
        let rows = self.nothing.len();
        let [capacity, upwards, _] = &mut self.lying;
        lay(&self.capacity, rows, capacity);
        lay(&flow.upwards, rows, upwards);
        self.axial.factor(capacity, upwards, [&flow.bottom, &flow.top], reach);
    }

    /// Solves for `x`, which holds the right side, in W, and then the rise, in K/s. Gives the heat through the surfaces that belongs to it, in W.
    pub fn solve(&mut self, flow: &Flow, x: &mut [f64]) -> f64 {
        let rows = self.nothing.len();
        self.radial.solve(x);
        let mut through = product(&x[x.len() - rows..], &flow.side);
        let [capacity, _, lying] = &mut self.lying;
        lay(x, rows, lying);
        for (x, capacity) in lying.iter_mut().zip(capacity.iter()) {
            *x *= capacity;
        }
        self.axial.solve(lying);
        let columns = flow.top.len();
        through += product(&lying[lying.len() - columns..], &flow.top) + product(lying, &flow.bottom);
        stand(lying, rows, x);
        -self.reach * through
    }
}

/// Tridiagonal systems side by side, `width` of them, eliminated: one over the pivots, and what each node takes from the one before it.
#[derive(Debug, Clone)]
struct Lines {
    width: usize,
    pivot: Vec<f64>,
    carry: Vec<f64>,
}

impl Lines {
    fn new(nodes: usize, width: usize) -> Self {
        Self { width, pivot: vec![0.0; nodes], carry: vec![0.0; nodes] }
    }

    /// `links` are conductances to the next node of each line, 0 from the last on; `ends` those beyond the first and the last node.
    fn factor(&mut self, capacity: &[f64], links: &[f64], [first, last]: [&[f64]; 2], reach: f64) {
        let width = self.width;
        for (pivot, (capacity, link)) in self.pivot.iter_mut().zip(capacity.iter().zip(links)) {
            *pivot = capacity + reach * link;
        }
        let end = self.pivot.len() - width;
        for (at, beyond) in [(0, first), (end, last)] {
            for (pivot, beyond) in self.pivot[at..].iter_mut().zip(beyond) {
                *pivot += reach * beyond;
            }
        }
        for pivot in &mut self.pivot[..width] {
            *pivot = 1.0 / *pivot;
        }
        for at in (width..=end).step_by(width) {
            let (before, here) = self.pivot[at - width..at + width].split_at_mut(width);
            let (carry, links) = (&mut self.carry[at..at + width], &links[at - width..at]);
            for (((here, before), carry), link) in here.iter_mut().zip(before).zip(carry).zip(links) {
                let link = reach * link;
                *carry = link * *before;
                *here = 1.0 / (*here + link - link * *carry);
            }
        }
    }

    fn solve(&self, x: &mut [f64]) {
        let width = self.width;
        let end = x.len() - width;
        for at in (width..=end).step_by(width) {
            let (before, here) = x[at - width..at + width].split_at_mut(width);
            for ((here, before), carry) in here.iter_mut().zip(before).zip(&self.carry[at..at + width]) {
                *here += carry * *before;
            }
        }
        for (x, pivot) in x.iter_mut().zip(&self.pivot) {
            *x *= pivot;
        }
        for at in (width..end + width).step_by(width).rev() {
            let (before, here) = x[at - width..at + width].split_at_mut(width);
            for ((here, before), carry) in here.iter().zip(before).zip(&self.carry[at..at + width]) {
                *before += carry * here;
            }
        }
    }
}

/// Row by row, from column by column.
fn lay(standing: &[f64], rows: usize, lying: &mut [f64]) {
    let columns = lying.len() / rows;
    for (row, line) in lying.chunks_exact_mut(columns).enumerate() {
        for (lies, stands) in line.iter_mut().zip(standing[row..].iter().step_by(rows)) {
            *lies = *stands;
        }
    }
}

/// Column by column, from row by row.
fn stand(lying: &[f64], rows: usize, standing: &mut [f64]) {
    let columns = lying.len() / rows;
    for (row, line) in lying.chunks_exact(columns).enumerate() {
        for (lies, stands) in line.iter().zip(standing[row..].iter_mut().step_by(rows)) {
            *stands = *lies;
        }
    }
}

fn product(a: &[f64], b: &[f64]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}
