//! The flask: how wide, how high, and its steel.

use super::error::{HeatError, within};

/// A round flask full of investment.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Flask {
    /// Radius of the mould, in m.
    pub radius_m: f64,
    /// Height of the mould, in m.
    pub height_m: f64,
    /// The steel around it, where it is counted.
    pub shell: Option<Shell>,
}

/// A thin steel wall, of one temperature through its thickness. Along the wall no heat flows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Shell {
    /// Heat it holds, in J/(m²·K) of wall: thickness × density × specific heat.
    pub capacity_j_m2_k: f64,
    /// How well it lies against the mould, in W/(m²·K). With 0 it does not touch.
    pub contact_w_m2_k: f64,
}

impl Flask {
    /// Errors where a size is no size: from 1 mm to 2 m are taken.
    pub(super) fn check(&self) -> Result<(), HeatError> {
        within("Radius of the mould in m", self.radius_m, 0.001, 2.0)?;
        within("Height of the mould in m", self.height_m, 0.001, 2.0)?;
        if let Some(shell) = self.shell {
            within("Heat capacity of the shell in J/(m²·K)", shell.capacity_j_m2_k, 1.0, 1e7)?;
            within("Contact of the shell in W/(m²·K)", shell.contact_w_m2_k, 0.0, 1e6)?;
        }
        Ok(())
    }
}
