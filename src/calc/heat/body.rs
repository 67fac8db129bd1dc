//! The mould with its shell: what does not change, and the state that does.

use super::curve::{Curve, Past};
use super::mesh::Mesh;

/// Rings and what they are made of.
#[derive(Debug, Clone)]
pub(super) struct Body {
    pub mesh: Mesh,
    pub curve: Curve,
    /// kg of the mould's nodes, J/K of the shell's.
    pub mass: Vec<f64>,
    /// Weight of each node in the error of a step; those of the mould sum up to 1.
    pub weight: Vec<f64>,
    /// Volume counted, in m³.
    pub volume: f64,
}

/// State of all nodes. Those of the shell follow those of the mould; their enthalpy is their temperature.
#[derive(Debug, Clone)]
pub(super) struct State {
    /// In J/kg.
    pub enthalpy: Vec<f64>,
    /// The piece of the curve each node of the mould was found on last.
    pub hint: Vec<u16>,
    /// In °C.
    pub temperature: Vec<f64>,
    /// Along the curve, in J/(kg·K).
    pub capacity: Vec<f64>,
    /// In W/(m·K).
    pub conductivity: Vec<f64>,
    /// How the enthalpy rose in the last step, in J/(kg·s).
    pub rate: Vec<f64>,
}

impl Body {
    pub fn new(mesh: Mesh, curve: Curve) -> Self {
        let mass = mesh.volume.iter().map(|volume| volume * curve.density).chain(mesh.shell.iter().copied()).collect();
        let volume: f64 = mesh.volume.iter().sum();
        let skin = &mesh.volume[mesh.mould() - mesh.shell.len()..];
        let weight = mesh.volume.iter().chain(skin).map(|each| each / volume).collect();
        Self { mesh, curve, mass, weight, volume }
    }

    /// All of one temperature, and never hotter.
    pub fn start(&self, temperature_c: f64) -> (State, Vec<Past>) {
        let (nodes, mould) = (self.mesh.nodes(), self.mesh.mould());
        let (enthalpy, past) = self.curve.fresh(temperature_c);
        let past = vec![past; mould];
        let mut state = State {
            enthalpy: vec![enthalpy; nodes],
            hint: vec![0; mould],
            temperature: vec![temperature_c; nodes],
            capacity: vec![1.0; nodes],
            conductivity: vec![0.0; mould],
            rate: vec![0.0; nodes],
        };
        state.enthalpy[mould..].fill(temperature_c);
        state.settle(&self.curve, &past);
        (state, past)
    }

    /// Heat in the mould and its shell, in J.
    pub fn content(&self, enthalpy: &[f64]) -> f64 {
        self.mesh.stands_for() * enthalpy.iter().zip(&self.mass).map(|(each, mass)| each * mass).sum::<f64>()
    }
}

impl State {
    /// Temperature, capacity and conductivity from the enthalpy.
    pub fn settle(&mut self, curve: &Curve, past: &[Past]) {
        let known = self.enthalpy.iter().zip(past).zip(&mut self.hint);
        let sought = self.temperature.iter_mut().zip(&mut self.capacity).zip(&mut self.conductivity);
        for (((enthalpy, past), hint), ((temperature, capacity), conductivity)) in known.zip(sought) {
            let place = curve.place(*enthalpy, past, hint);
            *temperature = place.temperature;
            *capacity = place.capacity;
            *conductivity = place.conductivity;
        }
        let mould = past.len();
        self.temperature[mould..].copy_from_slice(&self.enthalpy[mould..]);
    }

    /// The same on the whole mould, from its upper half of `rows` rows.
    pub fn mirrored(&self, rows: usize) -> Self {
        Self {
            enthalpy: mirrored(&self.enthalpy, rows),
            hint: mirrored(&self.hint, rows),
            temperature: mirrored(&self.temperature, rows),
            capacity: mirrored(&self.capacity, rows),
            conductivity: mirrored(&self.conductivity, rows),
            rate: mirrored(&self.rate, rows),
        }
    }
}

/// Each column with its mirror image below it.
pub(super) fn mirrored<T: Copy>(half: &[T], rows: usize) -> Vec<T> {
    half.chunks(rows).flat_map(|column| column.iter().rev().chain(column.iter().skip(1)).copied()).collect()
}
