//! How the mould is cut into rings.
//!
//! Nodes stand on the axis and on the surfaces, closer together towards the skin; the walls between rings stand half way between nodes.
//! Where both ends are alike the upper half stands for the whole.

use super::error::HeatError;
use super::flask::Flask;
use std::f64::consts::PI;

const MOST_CELLS: usize = 400;

/// How fine rings and steps are.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fineness {
    /// Rings from the axis to the skin.
    pub radial: usize,
    /// Layers from mid height to an end.
    pub axial: usize,
    /// How much closer nodes stand at the skin: 0 is evenly, below 1.
    pub grading: f64,
    /// How far off a step may be, in K.
    pub tolerance_k: f64,
}

impl Fineness {
    /// For what is shown while the studio plans.
    pub const PLAN: Self = Self { radial: 12, axial: 16, grading: 0.2, tolerance_k: 0.3 };
    /// For an independent finer run.
    pub const FINE: Self = Self { radial: 34, axial: 52, grading: 0.0, tolerance_k: 0.02 };

    pub(super) fn check(&self) -> Result<(), HeatError> {
        use super::error::within;
        for cells in [self.radial, self.axial] {
            if cells > MOST_CELLS {
                return Err(HeatError::TooMany { what: "rings or layers", most: MOST_CELLS });
            }
            within("Rings or layers", cells as f64, 2.0, MOST_CELLS as f64)?;
        }
        within("Grading of the rings", self.grading, 0.0, 0.95)?;
        within("Tolerance of a step in K", self.tolerance_k, 1e-7, 100.0)?;
        Ok(())
    }
}

/// The rings. A node is at `column * rows + row`: columns from the axis outwards, with the shell as one more; rows from below upwards.
#[derive(Debug, Clone)]
pub(super) struct Mesh {
    pub r: Vec<f64>,
    /// From mid height where it stands for the whole, else from the lower end.
    pub z: Vec<f64>,
    pub half: bool,
    /// Volume of each node of the mould, in m³.
    pub volume: Vec<f64>,
    /// Heat capacity of each node of the shell, in J/K.
    pub shell: Vec<f64>,
    /// Half of area over distance to the next column, in m, for each node of the mould but the last column.
    pub outwards: Vec<f64>,
    /// Conductance into the shell, in W/K, for each row.
    pub contact: Vec<f64>,
    /// Half of area over distance to the next row, in m, for each node of the mould; 0 in the last row.
    pub upwards: Vec<f64>,
    /// Area of the wall, in m², for each row.
    pub side: Vec<f64>,
    /// Area of an end, in m², for each column of the mould.
    pub end: Vec<f64>,
}

impl Mesh {
    /// The upper half.
    pub fn half(flask: &Flask, fineness: &Fineness) -> Self {
        let r = graded(flask.radius_m, fineness.radial, fineness.grading);
        let z = graded(flask.height_m / 2.0, fineness.axial, fineness.grading);
        Self::of(flask, r, z, true)
    }

    /// The whole, with the nodes of the upper half and their mirror images.
    pub fn whole(&self, flask: &Flask) -> Self {
        let middle = flask.height_m / 2.0;
        let below = self.z.iter().rev().map(|z| middle - z);
        let above = self.z.iter().skip(1).map(|z| middle + z);
        Self::of(flask, self.r.clone(), below.chain(above).collect(), false)
    }

    fn of(flask: &Flask, r: Vec<f64>, z: Vec<f64>, half: bool) -> Self {
        let (columns, rows) = (r.len(), z.len());
        let (walls, floors) = (walls(&r), walls(&z));
        let tall: Vec<f64> = floors.windows(2).map(|pair| pair[1] - pair[0]).collect();
        let end: Vec<f64> = walls.windows(2).map(|pair| PI * (pair[1] * pair[1] - pair[0] * pair[0])).collect();
        let side: Vec<f64> = tall.iter().map(|tall| 2.0 * PI * flask.radius_m * tall).collect();
        let volume = end.iter().flat_map(|area| tall.iter().map(move |tall| area * tall)).collect();
        let radial = (1..columns).map(|next| PI * walls[next] / (r[next] - r[next - 1]));
        let outwards = radial.flat_map(|each| tall.iter().map(move |tall| each * tall)).collect();
        let axial = |row: usize| if row + 1 < rows { 0.5 / (z[row + 1] - z[row]) } else { 0.0 };
        let upwards = end.iter().flat_map(|area| (0..rows).map(move |row| area * axial(row))).collect();
        let by_side = |each: f64| side.iter().map(|area| area * each).collect();
        let (shell, contact) = match flask.shell {
            Some(shell) => (by_side(shell.capacity_j_m2_k), by_side(shell.contact_w_m2_k)),
            None => (Vec::new(), Vec::new()),
        };
        Self { r, z, half, volume, shell, outwards, contact, upwards, side, end }
    }

    pub fn rows(&self) -> usize {
        self.z.len()
    }

    /// Nodes of the mould; those of the shell follow.
    pub fn mould(&self) -> usize {
        self.volume.len()
    }

    /// Nodes with the shell.
    pub fn nodes(&self) -> usize {
        self.volume.len() + self.shell.len()
    }

    /// The row at mid height.
    pub fn middle(&self) -> usize {
        if self.half { 0 } else { self.z.len() / 2 }
    }

    /// By how much what is counted stands for more.
    pub fn stands_for(&self) -> f64 {
        if self.half { 2.0 } else { 1.0 }
    }
}

/// Nodes from 0 to `length`, closer together towards its end.
fn graded(length: f64, cells: usize, grading: f64) -> Vec<f64> {
    let node = |index: usize| {
        let even = index as f64 / cells as f64;
        length * (even * (1.0 + grading) - grading * even * even)
    };
    (0..cells).map(node).chain([length]).collect()
}

/// Walls half way between nodes, and at both ends.
fn walls(nodes: &[f64]) -> Vec<f64> {
    let between = nodes.windows(2).map(|pair| f64::midpoint(pair[0], pair[1]));
    nodes.first().copied().into_iter().chain(between).chain(nodes.last().copied()).collect()
}
