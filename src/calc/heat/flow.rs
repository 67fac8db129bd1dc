//! Heat that flows between the rings, and through the around.surfaces.

use super::body::State;
use super::mesh::Mesh;
use super::surroundings::Around;

/// Conductances and flows at one instant.
#[derive(Debug, Clone)]
pub(super) struct Flow {
    /// To the next column outwards, in W/K, for each node; 0 in the last column.
    pub outwards: Vec<f64>,
    /// To the next row upwards, in W/K, for each node of the mould; 0 in the last row.
    pub upwards: Vec<f64>,
    /// Net gain of each node, in W.
    pub gain: Vec<f64>,
    /// By how much less the wall gains by 1 K, in W/K, for each row.
    pub side: Vec<f64>,
    /// The same of the upper end, for each column of the mould.
    pub top: Vec<f64>,
    /// The same of the lower end.
    pub bottom: Vec<f64>,
    /// What comes in through all surfaces, in W.
    pub through_surfaces: f64,
}

impl Flow {
    pub fn new(mesh: &Mesh) -> Self {
        let ends = mesh.r.len();
        Self {
            outwards: vec![0.0; mesh.nodes()],
            upwards: vec![0.0; mesh.mould()],
            gain: vec![0.0; mesh.nodes()],
            side: vec![0.0; mesh.rows()],
            top: vec![0.0; ends],
            bottom: vec![0.0; ends],
            through_surfaces: 0.0,
        }
    }

    /// Flows at a state.
    pub fn find(&mut self, mesh: &Mesh, state: &State, around: &Around) {
        let (temperature, conductivity) = (state.temperature.as_slice(), state.conductivity.as_slice());
        self.between_columns(mesh, temperature, conductivity);
        self.between_rows(mesh, temperature, conductivity);
        self.through_surfaces(mesh, temperature, around);
    }

    fn between_columns(&mut self, mesh: &Mesh, temperature: &[f64], conductivity: &[f64]) {
        let rows = mesh.rows();
        let mould = mesh.mould();
        self.gain.fill(0.0);
        let inner = mould - rows;
        let (near, far) = (&conductivity[..inner], &conductivity[rows..mould]);
        for (((out, each), near), far) in self.outwards[..inner].iter_mut().zip(&mesh.outwards).zip(near).zip(far) {
            *out = each * (near + far);
        }
        if !mesh.shell.is_empty() {
            self.outwards[inner..mould].copy_from_slice(&mesh.contact);
        }
        for first in (0..temperature.len() - rows).step_by(rows) {
            let (near, far) = temperature[first..first + 2 * rows].split_at(rows);
            let (gain_near, gain_far) = self.gain[first..first + 2 * rows].split_at_mut(rows);
            let out = &self.outwards[first..first + rows];
            for row in 0..rows {
                let flow = out[row] * (far[row] - near[row]);
                gain_near[row] += flow;
                gain_far[row] -= flow;
            }
        }
    }

    fn between_rows(&mut self, mesh: &Mesh, temperature: &[f64], conductivity: &[f64]) {
        let rows = mesh.rows();
        for first in (0..mesh.mould()).step_by(rows) {
            let all = first..first + rows;
            let (t, k) = (&temperature[all.clone()], &conductivity[all.clone()]);
            let (each, up, gain) = (&mesh.upwards[all.clone()], &mut self.upwards[all.clone()], &mut self.gain[all]);
            let mut from_below = 0.0;
            for row in 0..rows - 1 {
                up[row] = each[row] * (k[row] + k[row + 1]);
                let flow = up[row] * (t[row + 1] - t[row]);
                gain[row] += flow - from_below;
                from_below = flow;
            }
            gain[rows - 1] -= from_below;
        }
    }

    fn through_surfaces(&mut self, mesh: &Mesh, temperature: &[f64], around: &Around) {
        let rows = mesh.rows();
        let outermost = temperature.len() - rows;
        let mut total = 0.0;
        for row in 0..rows {
            let (gain, less) = around.surfaces.side.gain(around.temperature_c, temperature[outermost + row]);
            let area = mesh.side[row];
            self.gain[outermost + row] += area * gain;
            self.side[row] = area * less;
            total += area * gain;
        }
        for (column, area) in mesh.end.iter().enumerate() {
            let (low, high) = (column * rows, column * rows + rows - 1);
            let (gain, less) = around.surfaces.top.gain(around.temperature_c, temperature[high]);
            self.gain[high] += area * gain;
            self.top[column] = area * less;
            total += area * gain;
            if !mesh.half {
                let (gain, less) = around.surfaces.bottom.gain(around.temperature_c, temperature[low]);
                self.gain[low] += area * gain;
                self.bottom[column] = area * less;
                total += area * gain;
            }
        }
        self.through_surfaces = total;
    }
}
