//! Flasks, materials and surroundings that the checks share.

use pourbook::calc::heat::{Fineness, Flask, LatentEvent, Material, Phase, Run, Surface, Surfaces, Surroundings, Watch};

/// A mould whose properties do not change.
pub fn plain(k: f64, density: f64, cp: f64) -> Material {
    Material {
        density_kg_m3: density,
        conductivity: vec![[0.0, k]],
        conductivity_dry: None,
        specific_heat: vec![[0.0, cp]],
        latent: Vec::new(),
        reversible: false,
    }
}

/// The illustrative investment of the independent solver: from memory, not a data sheet.
pub fn investment() -> Material {
    Material {
        density_kg_m3: 1700.0,
        conductivity: vec![[20.0, 0.95], [100.0, 0.90], [150.0, 0.55], [400.0, 0.42], [750.0, 0.46], [1000.0, 0.52]],
        conductivity_dry: None,
        specific_heat: vec![[20.0, 1250.0], [100.0, 1250.0], [150.0, 950.0], [400.0, 1000.0], [700.0, 1100.0], [1000.0, 1150.0]],
        latent: vec![
            LatentEvent { from_c: 95.0, to_c: 105.0, heat_j_kg: 451_400.0, releases_kg_kg: 0.20 },
            LatentEvent { from_c: 120.0, to_c: 180.0, heat_j_kg: 150_000.0, releases_kg_kg: 0.05 },
        ],
        reversible: false,
    }
}

pub fn flask(diameter_mm: f64, height_mm: f64) -> Flask {
    Flask { radius_m: diameter_mm / 2000.0, height_m: height_mm / 1000.0, shell: None }
}

pub fn convection(h: f64) -> Surface {
    Surface { h_w_m2_k: h, emissivity: 0.0 }
}

/// A kiln of these `[h, °C]`, with all surfaces alike.
pub fn kiln(schedule: &[[f64; 2]], surface: Surface) -> Surroundings {
    let temperature = schedule.iter().map(|[hours, c]| [hours * 3600.0, *c]).collect();
    Surroundings { temperature, phases: vec![Phase { from_s: 0.0, surfaces: Surfaces::all(surface) }] }
}

pub fn watch(probes: Vec<[f64; 2]>, every_s: f64, until_s: f64) -> Watch {
    Watch { probes, every_s, until_s }
}

pub fn run(case: (&Flask, &Material, f64), surroundings: &Surroundings, watch: &Watch, fineness: &Fineness) -> Run {
    let run = pourbook::calc::heat::run(case, surroundings, watch, fineness, &mut || false).unwrap();
    assert!(run.energy.open() < 1e-9, "the account of the heat is open by {:e}", run.energy.open());
    run
}

/// Rows of numbers of a file in `data`.
pub fn rows(file: &str) -> Vec<Vec<f64>> {
    let text = std::fs::read_to_string(format!("tests/heat/data/{file}")).unwrap();
    let number = |cell: &str| match cell.split_once('/') {
        Some((over, under)) => over.parse::<f64>().unwrap() / under.parse::<f64>().unwrap(),
        None => cell.parse().unwrap(),
    };
    let row = |line: &str| line.split(',').map(number).collect();
    text.lines().skip(1).map(row).collect()
}

pub fn worst(differences: impl IntoIterator<Item = f64>) -> f64 {
    differences.into_iter().fold(0.0, |worst: f64, each| worst.max(each.abs()))
}

pub fn mean(differences: impl IntoIterator<Item = f64>) -> f64 {
    let all: Vec<f64> = differences.into_iter().map(f64::abs).collect();
    all.iter().sum::<f64>() / all.len() as f64
}

/// Numbers that look drawn by lot and are the same every time: a 64-bit linear congruence (Knuth's MMIX constants, from memory).
pub struct Lot(pub u64);

impl Lot {
    /// Between 0 and 1.
    pub fn draw(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1u64 << 53) as f64
    }

    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.draw()
    }
}
