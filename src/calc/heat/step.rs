//! One step in time: a linearly implicit method of second order whose order does not hang on how exactly it is linearised.
//!
//! ```text
//! (C + γΔt·L) k₁ = F(t, H)
//! (C + γΔt·L) k₂ = F(t + Δt, H + Δt·C k₁) − 2 C k₁
//! H ← H + Δt·C (3 k₁ + k₂)/2,            off by about Δt (k₁ + k₂)/2
//! ```
//!
//! J. G. Verwer, E. J. Spee, J. G. Blom, W. Hundsdorfer, "A second-order Rosenbrock method applied to photochemical dispersion problems",
//! SIAM J. Sci. Comput. 20 (1999), from memory; its order is tested here. C is the secant of the enthalpy over the rise that the
//! last step lets expect, L the conduction, split by directions. Enthalpies are added to, never set: what flows in is what they gain.

use super::body::{Body, State};
use super::curve::{Here, Past};
use super::flow::Flow;
use super::surroundings::Around;
use super::sweep::Sweep;

/// γ = (3 + √3)/6: with it the method is of third order where all is linear, and damps what is stiff.
const GAMMA: f64 = 0.788_675_134_594_812_9;
/// How much a single place counts beside the mean over the mould: a corner may be five times less exact.
const WORST_SHARE: f64 = 0.2;

/// Where a step goes.
#[derive(Debug, Clone, Copy)]
pub(super) struct Goal {
    /// Its length, in s.
    pub step: f64,
    /// What is around at its end.
    pub around: Around,
    /// From what misfit on the secants are taken anew, in K.
    pub misfit_k: f64,
}

/// Room to work in, and what the last attempt came to.
#[derive(Debug, Clone)]
pub(super) struct Stepper {
    /// Flows at the state.
    pub now: Flow,
    /// Flows at the end of the step taken.
    pub then: Flow,
    sweep: Sweep,
    secant: Vec<f64>,
    first: Vec<f64>,
    second: Vec<f64>,
    stage: State,
    /// Heat that came in, in J.
    pub heat: f64,
}

impl Stepper {
    pub fn new(body: &Body, state: &State) -> Self {
        let nodes = body.mass.len();
        Self {
            now: Flow::new(&body.mesh),
            then: Flow::new(&body.mesh),
            sweep: Sweep::new(&body.mesh),
            secant: vec![1.0; nodes],
            first: vec![0.0; nodes],
            second: vec![0.0; nodes],
            stage: state.clone(),
            heat: 0.0,
        }
    }

    /// Finds the flows at a state.
    pub fn look(&mut self, body: &Body, state: &State, around: &Around) {
        self.now.find(&body.mesh, state, around);
    }

    /// Goes `step` seconds ahead, from the flows last looked at to what is around by then; `next` gets the enthalpies there. Gives how far off
    /// they may be, in K.
    pub fn attempt(&mut self, body: &Body, (state, past): (&State, &[Past]), next: &mut State, goal: &Goal) -> f64 {
        let Goal { step, around, misfit_k } = *goal;
        self.linearise(body, state, past, step);
        let mut through_first = self.first_stage(body, state, past, step);
        if self.bend(body, state, step, misfit_k) {
            through_first = self.first_stage(body, state, past, step);
        }
        self.then.find(&body.mesh, &self.stage, &around);
        let gains = self.then.gain.iter().zip(&self.first).zip(self.sweep.capacity());
        for (second, ((gain, first), capacity)) in self.second.iter_mut().zip(gains) {
            *second = gain - 2.0 * capacity * first;
        }
        let through_second = self.then.through_surfaces - 2.0 * through_first + self.sweep.solve(&self.now, &mut self.second);
        self.heat = step * (1.5 * through_first + 0.5 * through_second);
        self.finish(body, state, next, step)
    }

    /// Factors, solves and settles the first stage. Gives the heat through the surfaces that belongs to it, in W.
    fn first_stage(&mut self, body: &Body, state: &State, past: &[Past], step: f64) -> f64 {
        self.sweep.factor(&self.now, GAMMA * step);
        self.first.copy_from_slice(&self.now.gain);
        let through = self.now.through_surfaces + self.sweep.solve(&self.now, &mut self.first);
        let risen = state.enthalpy.iter().zip(&self.secant).zip(&self.first);
        for (stage, ((enthalpy, secant), first)) in self.stage.enthalpy.iter_mut().zip(risen) {
            *stage = enthalpy + step * secant * first;
        }
        self.stage.settle(&body.curve, past);
        through
    }

    /// Takes the secants up to the first stage where latent heat begins or ends within the step, so that the temperature missed what was
    /// linear. Whether there are such places.
    fn bend(&mut self, body: &Body, state: &State, step: f64, misfit_k: f64) -> bool {
        let mut bent = false;
        let before = state.temperature.iter().zip(&state.enthalpy);
        let stage = self.stage.temperature.iter().zip(&self.stage.enthalpy).zip(&self.first);
        let linear = self.secant.iter_mut().zip(self.sweep.capacity_mut()).zip(&body.mass);
        for (((before_c, before), ((stage_c, stage), first)), ((secant, capacity), mass)) in before.zip(stage).zip(linear) {
            let rise = stage_c - before_c;
            if (rise - step * first).abs() > misfit_k && (stage - before) / rise > 0.0 {
                bent = true;
                *secant = (stage - before) / rise;
                *capacity = *secant * mass;
            }
        }
        bent
    }

    /// Settles the state ahead and finds the flows there.
    pub fn take(&mut self, body: &Body, past: &[Past], next: &mut State, around: &Around) {
        next.hint.copy_from_slice(&self.stage.hint);
        next.settle(&body.curve, past);
        self.then.find(&body.mesh, next, around);
    }

    /// The capacities of the step: secants over the rise that the last step lets expect.
    fn linearise(&mut self, body: &Body, state: &State, past: &[Past], step: f64) {
        self.stage.hint.copy_from_slice(&state.hint);
        let places = state.temperature.iter().zip(&state.capacity).map(|(&temperature, &capacity)| Here { temperature, capacity });
        let rises = state.enthalpy.iter().zip(&state.rate).zip(past.iter().zip(&state.hint));
        for ((secant, here), ((enthalpy, rate), (past, hint))) in self.secant.iter_mut().zip(places).zip(rises) {
            *secant = body.curve.secant(*enthalpy, step * rate, here, past, *hint);
        }
        for ((capacity, secant), mass) in self.sweep.capacity_mut().iter_mut().zip(&self.secant).zip(&body.mass) {
            *capacity = secant * mass;
        }
    }

    fn finish(&self, body: &Body, state: &State, next: &mut State, step: f64) -> f64 {
        let (mut off, mut worst): (f64, f64) = (0.0, 0.0);
        let stages = self.first.iter().zip(&self.second).zip(&self.secant);
        let ahead = next.enthalpy.iter_mut().zip(&mut next.rate).zip(&state.enthalpy);
        for ((((first, second), secant), ((next, rate), now)), weight) in stages.zip(ahead).zip(&body.weight) {
            *rate = secant * (1.5 * first + 0.5 * second);
            *next = now + step * *rate;
            let error = first + second;
            off += weight * error * error;
            worst = worst.max(error.abs());
        }
        let (off, worst) = (0.5 * step * off.sqrt(), 0.5 * step * worst);
        // A maximum would lose what is no number.
        if off.is_finite() { off.max(worst * WORST_SHARE) } else { f64::NAN }
    }
}
