//! The moulds of a load and what they need.

use super::check::{MOST_MIN, at_most, between, celsius, within};
use crate::calc::heat::{Flask, HeatError, Material, Surfaces};
use crate::calc::mould_heat::{Conductivity, Places};

/// Most distinct moulds of a load.
const MOST_MOULDS: usize = 32;
/// Most inversions of a mould.
const MOST_INVERSIONS: usize = 8;

/// For which conductivities everything must hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Kept {
    /// For the likely one.
    Likely,
    /// For the lowest, the likely and the highest.
    #[default]
    WholeBand,
}

impl Kept {
    /// Those it must hold for.
    #[must_use]
    pub fn all(self) -> &'static [Conductivity] {
        match self {
            Self::Likely => &[Conductivity::Likely],
            Self::WholeBand => &Conductivity::ALL,
        }
    }
}

/// Temperatures between which a mould changes its lattice and its size at once, as cristobalite from 220 to 270 °C and quartz from 563 to
/// 583 °C.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Inversion {
    /// From and to, in °C.
    pub within_c: [f64; 2],
    /// How far wall and core may be apart while either is between them, on the way up and on the way down, in K.
    pub most_k: f64,
}

/// What a mould needs.
#[derive(Debug, Clone, PartialEq)]
pub struct Needs {
    /// Temperature that burns the last carbon, in °C.
    pub above_c: f64,
    /// Minutes that the core is at it or above; 0 where nothing is asked.
    pub above_min: f64,
    /// Inversions.
    pub inversions: Vec<Inversion>,
}

/// A mould. Equal ones of a load stand for each other.
#[derive(Debug, Clone, PartialEq)]
pub struct Mould {
    /// The flask.
    pub flask: Flask,
    /// What it is made of, from low to high conductivity.
    pub materials: [Material; 3],
    /// How heat goes into it in the kiln.
    pub surfaces: Surfaces,
    /// Where it is read.
    pub places: Places,
    /// Its temperature when it is loaded, in °C.
    pub start_c: f64,
    /// What it needs.
    pub needs: Needs,
}

/// A kiln load.
#[derive(Debug, Clone, PartialEq)]
pub struct Load {
    /// Distinct moulds.
    pub moulds: Vec<Mould>,
    /// The room, in °C: the kiln falls no lower.
    pub room_c: f64,
    /// For which conductivities all must hold.
    pub kept: Kept,
}

impl Load {
    pub(super) fn check(&self) -> Result<(), HeatError> {
        if self.moulds.is_empty() {
            return Err(HeatError::Empty { what: "the load's moulds" });
        }
        at_most("moulds of a load", self.moulds.len(), MOST_MOULDS)?;
        celsius("Room in °C", self.room_c)?;
        self.moulds.iter().try_for_each(Mould::check)
    }
}

impl Mould {
    /// Sizes, materials and surfaces are checked by the heat run itself.
    fn check(&self) -> Result<(), HeatError> {
        celsius("Mould when it is loaded in °C", self.start_c)?;
        celsius("Temperature that burns the carbon in °C", self.needs.above_c)?;
        within("Minutes of the core that burn the carbon", self.needs.above_min, 0.0, MOST_MIN)?;
        at_most("inversions of a mould", self.needs.inversions.len(), MOST_INVERSIONS)?;
        for inversion in &self.needs.inversions {
            between("Inversion in °C", inversion.within_c)?;
            within("Most that wall and core are apart in K", inversion.most_k, 0.0, 3000.0)?;
        }
        Ok(())
    }
}
