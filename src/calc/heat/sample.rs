//! Reading the mould at instants within a step.

use super::body::{Body, State};
use super::curve::Past;
use super::mesh::Mesh;
use super::step::Stepper;

/// Where between nodes something is measured: nodes with their weights.
#[derive(Debug, Clone, Copy)]
pub(super) struct Probe([(usize, f64); 4]);

impl Probe {
    /// At a radius and a height from the lower end, in m; beyond a surface it stands on it.
    pub fn at(mesh: &Mesh, [r, z]: [f64; 2], height_m: f64) -> Self {
        let z = if mesh.half { (z - height_m / 2.0).abs() } else { z };
        // Near the axis temperature goes with the square of the radius.
        let (column, out) = between(&mesh.r, r, |r| r * r);
        let (row, up) = between(&mesh.z, z, |z| z);
        let node = column * mesh.rows() + row;
        let next = node + mesh.rows();
        Self([(node, (1.0 - out) * (1.0 - up)), (node + 1, (1.0 - out) * up), (next, out * (1.0 - up)), (next + 1, out * up)])
    }

    pub fn read(&self, temperature: &[f64]) -> f64 {
        self.0.iter().map(|&(node, weight)| weight * temperature[node]).sum()
    }
}

/// The cell a value is in, and how far in it is, 0 to 1.
fn between(nodes: &[f64], value: f64, scale: fn(f64) -> f64) -> (usize, f64) {
    let cell = nodes.partition_point(|&node| node <= value).clamp(1, nodes.len() - 1) - 1;
    let (low, high) = (scale(nodes[cell]), scale(nodes[cell + 1]));
    (cell, ((scale(value.max(0.0)) - low) / (high - low)).clamp(0.0, 1.0))
}

/// The mould at one instant.
#[derive(Debug, Clone)]
pub(super) struct Instant {
    pub enthalpy: Vec<f64>,
    pub temperature: Vec<f64>,
    hint: Vec<u16>,
}

/// A step that was taken, from one state to the next.
pub(super) struct Taken<'a> {
    pub from: &'a State,
    pub to: &'a State,
    /// Its length in s.
    pub step: f64,
    /// With the flows at both ends.
    pub stepper: &'a Stepper,
}

impl Instant {
    pub fn new(state: &State) -> Self {
        Self { enthalpy: state.enthalpy.clone(), temperature: state.temperature.clone(), hint: state.hint.clone() }
    }

    /// A share of a step, by the cubic through the enthalpies at both ends with their gains there; never beyond the ends, so that nothing is
    /// read that was not there.
    pub fn within(&mut self, body: &Body, past: &[Past], taken: &Taken<'_>, share: f64) {
        let (s, rest) = (share, 1.0 - share);
        let late = s * s * (3.0 - 2.0 * s);
        let (bend_from, bend_to) = (s * rest * rest * taken.step, -s * s * rest * taken.step);
        let ends = taken.from.enthalpy.iter().zip(&taken.to.enthalpy);
        let gains = taken.stepper.now.gain.iter().zip(&taken.stepper.then.gain).zip(&body.mass);
        for (enthalpy, ((from, to), ((gain_from, gain_to), mass))) in self.enthalpy.iter_mut().zip(ends.zip(gains)) {
            let bend = (bend_from * gain_from + bend_to * gain_to) / mass;
            *enthalpy = (from + (to - from) * late + bend).max(from.min(*to)).min(from.max(*to));
        }
        self.hint.copy_from_slice(&taken.from.hint);
        let places = self.enthalpy.iter().zip(past).zip(&mut self.hint);
        for (temperature, ((enthalpy, past), hint)) in self.temperature.iter_mut().zip(places) {
            *temperature = body.curve.place(*enthalpy, past, hint).temperature;
        }
        self.temperature[past.len()..].copy_from_slice(&self.enthalpy[past.len()..]);
    }

    /// Water that a latent event has not driven off yet, in kg/kg, mean over the mould.
    pub fn held(&self, body: &Body, past: &[Past], event: usize) -> f64 {
        let event = &body.curve.events[event];
        let highest = |own: f64, past: &Past| if body.curve.reversible { own } else { own.max(past.peak_c) };
        let places = self.temperature.iter().zip(past).zip(&body.mesh.volume);
        let left: f64 = places.map(|((own, past), volume)| volume * (1.0 - event.done_at(highest(*own, past)))).sum();
        event.releases_kg_kg * left / body.volume
    }

    /// Steepest rise outwards or inwards between two neighbouring columns of the mould, in K/m.
    pub fn steepest(&self, mesh: &Mesh) -> f64 {
        let rows = mesh.rows();
        let column = |index: usize| &self.temperature[index * rows..(index + 1) * rows];
        let steepest = |index: usize| {
            let differences = column(index).iter().zip(column(index + 1)).map(|(near, far)| (far - near).abs());
            differences.fold(0.0, f64::max) / (mesh.r[index + 1] - mesh.r[index])
        };
        (0..mesh.r.len() - 1).map(steepest).fold(0.0, f64::max)
    }
}
