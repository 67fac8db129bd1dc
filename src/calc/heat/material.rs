//! What the mould is made of.

use super::error::{HeatError, within};
use super::surroundings::{COLDEST_C, HOTTEST_C};

const MOST_ROWS: usize = 1000;
const MOST_EVENTS: usize = 20;

/// The set investment, by the kilogram it weighs when the flask goes into the kiln.
#[derive(Debug, Clone, PartialEq)]
pub struct Material {
    /// Density, in kg/m³; the kilograms of all other figures.
    pub density_kg_m3: f64,
    /// Conductivity, `[°C, W/(m·K)]`, straight between rows and constant beyond them.
    pub conductivity: Vec<[f64; 2]>,
    /// Conductivity of a place that has lost the water of the first latent event; where that went in part, in proportion.
    pub conductivity_dry: Option<Vec<[f64; 2]>>,
    /// Specific heat without the latent events, `[°C, J/(kg·K)]`, straight between rows and constant beyond them.
    pub specific_heat: Vec<[f64; 2]>,
    /// What takes latent heat on the way up; free water first.
    pub latent: Vec<LatentEvent>,
    /// Whether latent heat is given back on cooling and taken again. For comparison: water that left does not come back.
    pub reversible: bool,
}

/// Latent heat taken between two temperatures: in the specific heat a symmetric triangle over them.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LatentEvent {
    /// Where it begins, in °C.
    pub from_c: f64,
    /// Where it is over, in °C.
    pub to_c: f64,
    /// Heat, in J/kg.
    pub heat_j_kg: f64,
    /// Water that it drives off, in kg/kg.
    pub releases_kg_kg: f64,
}

impl LatentEvent {
    /// Share of it that is over at a temperature, 0 to 1.
    #[must_use]
    pub fn done_at(&self, temperature_c: f64) -> f64 {
        if temperature_c >= self.to_c {
            return 1.0;
        }
        let half = (self.to_c - self.from_c) / 2.0;
        let from_middle = ((temperature_c - self.from_c) / half - 1.0).max(-1.0);
        if from_middle < 0.0 { 0.5 * (1.0 + from_middle).powi(2) } else { 1.0 - 0.5 * (1.0 - from_middle).powi(2) }
    }

    /// What it adds to the specific heat at a temperature, in J/(kg·K).
    pub(super) fn specific_heat_at(&self, temperature_c: f64) -> f64 {
        let half = (self.to_c - self.from_c) / 2.0;
        let from_middle = (temperature_c - self.from_c) / half - 1.0;
        self.heat_j_kg / half * (1.0 - from_middle.abs()).max(0.0)
    }
}

impl Material {
    pub(super) fn check(&self) -> Result<(), HeatError> {
        within("Density of the mould in kg/m³", self.density_kg_m3, 1.0, 30_000.0)?;
        table("the mould's conductivity", &self.conductivity, "Conductivity of the mould in W/(m·K)", [1e-3, 1e5])?;
        if let Some(dry) = &self.conductivity_dry {
            table("the dry mould's conductivity", dry, "Conductivity of the dry mould in W/(m·K)", [1e-3, 1e5])?;
        }
        table("the mould's specific heat", &self.specific_heat, "Specific heat of the mould in J/(kg·K)", [1.0, 1e6])?;
        if self.latent.len() > MOST_EVENTS {
            return Err(HeatError::TooMany { what: "latent events", most: MOST_EVENTS });
        }
        for event in &self.latent {
            within("Begin of a latent event in °C", event.from_c, COLDEST_C, HOTTEST_C)?;
            within("End of a latent event in °C", event.to_c, event.from_c + 0.01, HOTTEST_C)?;
            within("Latent heat in J/kg", event.heat_j_kg, 0.0, 1e8)?;
            within("Water of a latent event in kg/kg", event.releases_kg_kg, 0.0, 1.0)?;
        }
        Ok(())
    }
}

/// What a table says at a temperature: straight between its rows, constant beyond them.
pub(super) fn read(rows: &[[f64; 2]], temperature_c: f64) -> f64 {
    let next = rows.partition_point(|row| row[0] <= temperature_c);
    match (next.checked_sub(1).and_then(|last| rows.get(last)), rows.get(next)) {
        (Some(&[t0, y0]), Some(&[t1, y1])) => y0 + (y1 - y0) * (temperature_c - t0) / (t1 - t0),
        (Some(&[_, only]), None) | (None, Some(&[_, only])) => only,
        (None, None) => 0.0,
    }
}

fn table(what: &'static str, rows: &[[f64; 2]], value: &'static str, [least, most]: [f64; 2]) -> Result<(), HeatError> {
    match rows.len() {
        0 => return Err(HeatError::Empty { what }),
        1..=MOST_ROWS => (),
        _ => return Err(HeatError::TooMany { what, most: MOST_ROWS }),
    }
    for &[temperature, number] in rows {
        within("Temperature of a table in °C", temperature, COLDEST_C, HOTTEST_C)?;
        within(value, number, least, most)?;
    }
    if rows.is_sorted_by(|a, b| a[0] < b[0]) { Ok(()) } else { Err(HeatError::Unsorted { what }) }
}
