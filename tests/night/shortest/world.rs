//! Moulds, kilns and tables that the checks share.

use pourbook::calc::heat::{Fineness, Flask, LatentEvent, Material, Surface, Surfaces};
use pourbook::calc::labour::Labour;
use pourbook::calc::mould_heat::Places;
use pourbook::calc::shortest::{
    Inversion, Kept, KilnBand, Least, Limits, Load, Mould, Needs, Outcome, Programme, Segment, Soak, shortest_by,
};

/// The set mould of general gypsum-bonded powder, mixed 40 parts of water to 100, from low to high conductivity: the numbers of
/// `resources/stock/powders.ron` ("powder-gypsum") put together as `calc/mould_heat/material.rs` does.
pub fn gypsum() -> [Material; 3] {
    // Density: 2.55 g/cm³ of powder, 0.998 g/cm³ of water. Binder: 0.28 of the powder, which binds 0.1862 of its weight of water.
    let (ratio, binder) = (0.40, 0.28);
    let density_kg_m3 = 1000.0 / (1.0 / 2.55 + ratio / 0.998);
    let bound = binder * 0.1862;
    let free = ratio - bound;
    let latent = |from_c: f64, to_c: f64, kj: f64| LatentEvent {
        from_c,
        to_c,
        heat_j_kg: kj * 1000.0 * binder,
        releases_kg_kg: bound * kj / (587.0 + 227.0),
    };
    let latent = vec![
        LatentEvent { from_c: 95.0, to_c: 105.0, heat_j_kg: free * 2.257e6, releases_kg_kg: free },
        latent(95.0, 170.0, 587.0),
        latent(150.0, 250.0, 227.0),
    ];
    [(0.8, 0.3), (1.0, 0.5), (1.2, 0.8)].map(|(wet, dry)| Material {
        density_kg_m3,
        conductivity: vec![[20.0, wet], [95.0, wet], [105.0, dry]],
        conductivity_dry: Some(vec![[20.0, dry]]),
        specific_heat: specific_heat(ratio, binder),
        latent: latent.clone(),
        reversible: false,
    })
}

/// Dry 850, 970, 1100, 1120 J/(kg·K) at 25, 200, 400, 800 °C; 4186 J/(kg·K) of water up to 95 °C; the anhydrite gives 92 kJ a kilogram of
/// binder from 350 to 450 °C.
fn specific_heat(ratio: f64, binder: f64) -> Vec<[f64; 2]> {
    let dry = [[25.0, 850.0], [200.0, 970.0], [400.0, 1100.0], [800.0, 1120.0]];
    let of = |at: f64| {
        let next = dry.iter().position(|row| row[0] > at).unwrap_or(dry.len());
        let dry = match next {
            0 => dry[0][1],
            next if next == dry.len() => dry[next - 1][1],
            next => dry[next - 1][1] + (dry[next][1] - dry[next - 1][1]) * (at - dry[next - 1][0]) / (dry[next][0] - dry[next - 1][0]),
        };
        let water = if at <= 95.0 { ratio * 4186.0 } else { 0.0 };
        let given = if at > 350.0 && at < 450.0 { 92_000.0 * binder / 100.0 } else { 0.0 };
        [at, dry + water - given]
    };
    [20.0, 25.0, 95.0, 105.0, 200.0, 350.0, 350.01, 400.0, 449.99, 450.0, 800.0].map(of).to_vec()
}

pub fn flask(diameter_mm: f64, height_mm: f64) -> Flask {
    Flask { radius_m: diameter_mm / 2000.0, height_m: height_mm / 1000.0, shell: None }
}

pub fn bare() -> Surfaces {
    // 10 W/(m²·K) in moving air from memory; emissivity 0.87 of the bare mould.
    Surfaces::all(Surface { h_w_m2_k: 10.0, emissivity: 0.87 })
}

/// Finer than the planned runs, and quick enough for many checks.
pub const VERIFIED: Fineness = Fineness { radial: 14, axial: 20, grading: 0.1, tolerance_k: 0.1 };

pub fn mould(diameter_mm: f64, height_mm: f64, needs: Needs) -> Mould {
    let flask = flask(diameter_mm, height_mm);
    let [r, h] = [flask.radius_m, flask.height_m];
    let places = Places { cavity_m: [r * 2.0 / 3.0, h * 0.8], wall_m: [r, h / 2.0], corner_m: [r, h] };
    Mould { flask, materials: gypsum(), surfaces: bare(), places, start_c: 20.0, needs }
}

/// Cristobalite and quartz with their most, and minutes above 700 °C.
pub fn needs(cristobalite_k: f64, quartz_k: f64, above_min: f64) -> Needs {
    let inversions =
        vec![Inversion { within_c: [220.0, 270.0], most_k: cristobalite_k }, Inversion { within_c: [563.0, 583.0], most_k: quartz_k }];
    Needs { above_c: 700.0, above_min, inversions }
}

pub fn load(moulds: Vec<Mould>, kept: Kept) -> Load {
    Load { moulds, room_c: 20.0, kept }
}

/// The studio's kiln of `resources/stock/kilns.ron`, wax out at up to 150 °C, and a pour at 538 °C.
pub fn limits() -> Limits {
    let band = |up_to_c: f64, rise_k_h: f64, fall_k_h: f64| KilnBand { up_to_c, rise_k_h, fall_k_h };
    Limits {
        start_c: 20.0,
        bands: vec![band(300.0, 400.0, 40.0), band(600.0, 300.0, 90.0), band(1100.0, 200.0, 150.0)],
        offset_k: 0.0,
        ceiling_c: 750.0,
        caps: Vec::new(),
        least: vec![Least { within_c: [120.0, 150.0], minutes: 60.0 }],
        soak: Soak { mould_c: 538.0, least_min: 60.0, within_k: 10.0, dip_k: 0.0 },
        most_segments: Some(16),
        step_c: 1.0,
    }
}

/// A table: set points and hours held, with the way there besides, as fast as the kiln goes.
pub fn table(stages: &[[f64; 2]], limits: &Limits) -> Vec<Segment> {
    let mut from = limits.start_c;
    let segment = |&[target_c, hours]: &[f64; 2]| {
        let ramp_min = own_minutes(from, target_c, &limits.bands).ceil();
        from = target_c;
        Segment { target_c, ramp_min, hold_min: hours * 60.0 }
    };
    stages.iter().map(segment).collect()
}

/// Band by band at the kiln's own rate.
pub fn own_minutes(from: f64, to: f64, bands: &[KilnBand]) -> f64 {
    let (mut low, mut sum) = (f64::NEG_INFINITY, 0.0);
    for band in bands {
        let overlap = (from.max(to).min(band.up_to_c) - from.min(to).max(low)).max(0.0);
        sum += overlap / if to > from { band.rise_k_h } else { band.fall_k_h } * 60.0;
        low = band.up_to_c;
    }
    sum
}

pub fn found(outcome: Outcome) -> Programme {
    match outcome {
        Outcome::Found(programme) => *programme,
        other => panic!("{other:?}"),
    }
}

pub fn solve(load: &Load, limits: &Limits, table: Option<&[Segment]>) -> Outcome {
    shortest_by(load, limits, table, &VERIFIED, &Labour::ALONE)
}

/// Numbers that look drawn by lot and are the same every time: a 64-bit linear congruence (Knuth's MMIX constants, from memory).
pub struct Lot(pub u64);

impl Lot {
    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        low + (high - low) * (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }
}
