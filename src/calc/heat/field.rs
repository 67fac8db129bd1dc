//! The mould at one time, with what it has been through.

use super::body::{Body, State, mirrored};
use super::curve::{Curve, Past};
use super::error::{HeatError, within};
use super::flask::Flask;
use super::material::Material;
use super::mesh::{Fineness, Mesh};
use super::sample::Probe;
use super::surroundings::{Around, COLDEST_C, HOTTEST_C};
use std::sync::Arc;

/// Length of the very first step, in s.
pub(super) const FIRST_STEP_S: f64 = 1.0;

/// The temperatures of a mould, and what each place has been through. Cheap to clone: an evening can go on from any of them.
#[derive(Debug, Clone)]
pub struct Field {
    pub(super) flask: Flask,
    pub(super) tolerance_k: f64,
    pub(super) body: Arc<Body>,
    pub(super) state: State,
    pub(super) past: Vec<Past>,
    pub(super) time_s: f64,
    /// What was around it last.
    pub(super) around: Option<Around>,
    /// The step it would take next, in s.
    pub(super) step_s: f64,
}

impl Field {
    /// A mould of one temperature that was never hotter, at time 0.
    ///
    /// # Errors
    ///
    /// Where a number makes no sense; see [`HeatError`].
    pub fn new(flask: &Flask, material: &Material, start_c: f64, fineness: &Fineness) -> Result<Self, HeatError> {
        flask.check()?;
        material.check()?;
        fineness.check()?;
        within("Temperature at the start in °C", start_c, COLDEST_C, HOTTEST_C)?;
        let body = Body::new(Mesh::half(flask, fineness), Curve::new(material));
        let (state, past) = body.start(start_c);
        let (flask, tolerance_k) = (*flask, fineness.tolerance_k);
        Ok(Self { flask, tolerance_k, body: Arc::new(body), state, past, time_s: 0.0, around: None, step_s: FIRST_STEP_S })
    }

    /// The time it is at, in s.
    #[must_use]
    pub fn time_s(&self) -> f64 {
        self.time_s
    }

    /// Temperature at a radius and a height from the lower end, both in m, in °C. Beyond a surface it is the surface's.
    #[must_use]
    pub fn at(&self, place: [f64; 2]) -> f64 {
        Probe::at(&self.body.mesh, place, self.flask.height_m).read(&self.state.temperature)
    }

    /// Temperature of the core, in °C.
    #[must_use]
    pub fn core_c(&self) -> f64 {
        self.state.temperature[self.body.mesh.middle()]
    }

    /// Temperature of the coldest place of the mould, in °C.
    #[must_use]
    pub fn coldest_c(&self) -> f64 {
        self.mould().iter().copied().fold(f64::INFINITY, f64::min)
    }

    /// Temperature of the hottest place of the mould, in °C.
    #[must_use]
    pub fn hottest_c(&self) -> f64 {
        self.mould().iter().copied().fold(f64::NEG_INFINITY, f64::max)
    }

    /// Temperature of the mould, mean over its volume, in °C.
    #[must_use]
    pub fn mean_c(&self) -> f64 {
        self.mould().iter().zip(&self.body.weight).map(|(each, weight)| each * weight).sum()
    }

    /// The whole mould from its upper half, where that was enough so far.
    pub(super) fn unfold(&mut self) {
        if self.body.mesh.half {
            let rows = self.body.mesh.rows();
            self.state = self.state.mirrored(rows);
            self.past = mirrored(&self.past, rows);
            self.body = Arc::new(Body::new(self.body.mesh.whole(&self.flask), self.body.curve.clone()));
        }
    }

    fn mould(&self) -> &[f64] {
        &self.state.temperature[..self.body.mesh.mould()]
    }
}
