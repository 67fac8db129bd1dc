//! Transient heat in an investment-filled flask: a round mould that warms, dries, burns out, and cools.
//!
//! The mould is a finite cylinder, alike all round its axis, cut into rings. Each ring keeps its **enthalpy**; its temperature and conductivity
//! follow from that by tables, so latent heat is neither missed nor taken twice, and what enters through the surfaces is what the rings gain.
//!
//! ```text
//! ρ ∂H/∂t = ∇·(k ∇T)        in the mould,                         H(T) = ∫ cp dT + latent heat taken so far
//! −k ∂T/∂n = h (T − T∞) + ε σ (T⁴ − T∞⁴)      at side, top and bottom; behind a steel shell, through its contact
//! ```
//!
//! Water that has left does not come back: latent heat is taken only where a ring goes beyond the highest temperature it ever had. What heats
//! and cools alike (quartz and cristobalite inversions) belongs in the table of specific heats.
//!
//! Not modelled: the sprue's cavity, wax and metal in the mould, steam that flows through it, the weight the mould loses.
//!
//! [`Field`] is the state; it can be cloned, and advanced in pieces. [`run`] is a whole programme at once.

mod advance;
mod body;
mod curve;
mod error;
mod field;
mod flask;
mod flow;
mod material;
mod mesh;
mod run;
mod sample;
mod step;
mod surroundings;
mod sweep;

pub use error::HeatError;
pub use field::Field;
pub use flask::{Flask, Shell};
pub use material::{LatentEvent, Material};
pub use mesh::Fineness;
pub use run::{Energy, Run, Watch, first_at, run};
pub use surroundings::{Phase, Surface, Surfaces, Surroundings};
