//! Implicit steps along one direction after the other: first along the radius, then along the axis.
//!
//! Solved is `(C + γΔt·Lr) C⁻¹ (C + γΔt·Lz) x = b`, which differs from the unsplit system by a term of second order in the step. Each direction
//! is a set of tridiagonal systems. They are eliminated once for both stages of a step: what is kept is one over each pivot, and what each node
//! takes from the one before it.

use super::flow::Flow;
use super::mesh::Mesh;

/// Both directions, factored.
#[derive(Debug, Clone)]
pub(super) struct Sweep {
    rows: usize,
    /// Heat capacity of each node, in J/K.
    capacity: Vec<f64>,
    radial: Eliminated,
    axial: Eliminated,
    /// γΔt, in s.
    reach: f64,
}

#[derive(Debug, Clone)]
struct Eliminated {
    pivot: Vec<f64>,
    carry: Vec<f64>,
}

impl Sweep {
    pub fn new(mesh: &Mesh) -> Self {
        let eliminated = |nodes: usize| Eliminated { pivot: vec![0.0; nodes], carry: vec![0.0; nodes] };
        let (nodes, mould) = (mesh.nodes(), mesh.mould());
        Self { rows: mesh.rows(), capacity: vec![0.0; nodes], radial: eliminated(nodes), axial: eliminated(mould), reach: 0.0 }
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
        self.factor_radial(flow);
        self.factor_axial(flow);
    }

    /// Solves for `x`, which holds the right side, in W, and then the rise, in K/s. Gives the heat through the surfaces that belongs to it, in W.
    pub fn solve(&self, flow: &Flow, x: &mut [f64]) -> f64 {
        let rows = self.rows;
        self.solve_radial(x);
        let outermost = &x[x.len() - rows..];
        let mut through: f64 = outermost.iter().zip(&flow.side).map(|(rise, less)| rise * less).sum();
        let mould = self.axial.pivot.len();
        self.solve_axial(&mut x[..mould]);
        for (column, (top, bottom)) in x.chunks_exact(rows).zip(flow.top.iter().zip(&flow.bottom)) {
            through += top * column[rows - 1] + bottom * column[0];
        }
        -self.reach * through
    }

    /// All columns at once, from the axis outwards.
    fn factor_radial(&mut self, flow: &Flow) {
        let (rows, reach) = (self.rows, self.reach);
        let Eliminated { pivot, carry } = &mut self.radial;
        for (pivot, (capacity, link)) in pivot.iter_mut().zip(self.capacity.iter().zip(&flow.outwards)) {
            *pivot = capacity + reach * link;
        }
        let last = pivot.len() - rows;
        for (pivot, less) in pivot[last..].iter_mut().zip(&flow.side) {
            *pivot += reach * less;
        }
        for pivot in &mut pivot[..rows] {
            *pivot = 1.0 / *pivot;
        }
        for at in (rows..last + rows).step_by(rows) {
            let (before, here) = pivot[at - rows..at + rows].split_at_mut(rows);
            let (carry, links) = (&mut carry[at..at + rows], &flow.outwards[at - rows..at]);
            for (((here, before), carry), link) in here.iter_mut().zip(before).zip(carry).zip(links) {
                let link = reach * link;
                *carry = link * *before;
                *here = 1.0 / (*here + link - link * *carry);
            }
        }
    }

    /// Column by column, from below upwards.
    fn factor_axial(&mut self, flow: &Flow) {
        let (rows, reach) = (self.rows, self.reach);
        let Eliminated { pivot, carry } = &mut self.axial;
        let columns = pivot.chunks_exact_mut(rows).zip(carry.chunks_exact_mut(rows));
        let given = self.capacity.chunks_exact(rows).zip(flow.upwards.chunks_exact(rows));
        for (((pivot, carry), (capacity, links)), (top, bottom)) in columns.zip(given).zip(flow.top.iter().zip(&flow.bottom)) {
            let (mut link_before, mut pivot_before) = (0.0, 0.0);
            let mut beyond = reach * bottom;
            for (((pivot, carry), capacity), link) in pivot.iter_mut().zip(carry).zip(capacity).zip(links) {
                let link = reach * link;
                *carry = link_before * pivot_before;
                *pivot = 1.0 / (capacity + link + link_before + beyond - link_before * *carry);
                (link_before, pivot_before, beyond) = (link, *pivot, 0.0);
            }
            // The last pivot also gives off heat upwards.
            if let Some(pivot) = pivot.last_mut() {
                *pivot = 1.0 / (1.0 / *pivot + reach * top);
            }
        }
    }

    fn solve_radial(&self, x: &mut [f64]) {
        let rows = self.rows;
        let Eliminated { pivot, carry } = &self.radial;
        let last = x.len() - rows;
        for at in (rows..last + rows).step_by(rows) {
            let (before, here) = x[at - rows..at + rows].split_at_mut(rows);
            for ((here, before), carry) in here.iter_mut().zip(before).zip(&carry[at..at + rows]) {
                *here += carry * *before;
            }
        }
        for (x, pivot) in x[last..].iter_mut().zip(&pivot[last..]) {
            *x *= pivot;
        }
        for at in (rows..last + rows).step_by(rows).rev() {
            let (before, here) = x[at - rows..at + rows].split_at_mut(rows);
            let kept = pivot[at - rows..at].iter().zip(&carry[at..at + rows]);
            for ((before, here), (pivot, carry)) in before.iter_mut().zip(here).zip(kept) {
                *before = pivot * *before + carry * *here;
            }
        }
    }

    /// The right side is what was solved for along the radius, times the capacities.
    fn solve_axial(&self, x: &mut [f64]) {
        let rows = self.rows;
        let Eliminated { pivot, carry } = &self.axial;
        let kept = pivot.chunks_exact(rows).zip(carry.chunks_exact(rows));
        for ((x, capacity), (pivot, carry)) in x.chunks_exact_mut(rows).zip(self.capacity.chunks_exact(rows)).zip(kept) {
            let mut before = 0.0;
            for ((x, capacity), carry) in x.iter_mut().zip(capacity).zip(carry) {
                before = capacity * *x + carry * before;
                *x = before;
            }
            let mut taken = 0.0;
            for ((x, pivot), carry) in x.iter_mut().zip(pivot).zip(carry).rev() {
                *x = pivot * *x + taken;
                taken = carry * *x;
            }
        }
    }
}
