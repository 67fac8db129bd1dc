//! Enthalpy and temperature of the mould, each from the other, exactly.
//!
//! Between any two neighbouring temperatures of the tables the specific heat is straight, so the enthalpy is a parabola and can be inverted in
//! closed form. A place that is hotter than it ever was follows the **heating** parabolas, which hold the latent heat; one that has been
//! hotter follows the **sensible** ones.

use super::material::{LatentEvent, Material, read};

/// Rises smaller than this give no secant, in K.
const NO_RISE_K: f64 = 1e-6;
/// A capacity that changes by a smaller share counts as constant.
const HARDLY: f64 = 0.05;

/// What a place is like at some enthalpy.
#[derive(Debug, Clone, Copy)]
pub(super) struct Place {
    /// Temperature in °C.
    pub temperature: f64,
    /// Heat capacity along the curve it is on, in J/(kg·K).
    pub capacity: f64,
    /// Conductivity in W/(m·K).
    pub conductivity: f64,
}

/// What is known of where a place is.
#[derive(Debug, Clone, Copy)]
pub(super) struct Here {
    /// Temperature in °C.
    pub temperature: f64,
    /// Heat capacity along the curve it is on, in J/(kg·K).
    pub capacity: f64,
}

/// What a place has been through.
#[derive(Debug, Clone, Copy)]
pub(super) struct Past {
    /// Enthalpy at its highest temperature so far, in J/kg; minus infinity where everything is reversible.
    pub peak: f64,
    /// Latent heat it has taken, in J/kg.
    pub latent: f64,
    /// Share of the first latent event that is over.
    pub dry: f64,
    /// Highest temperature so far, in °C.
    pub peak_c: f64,
}

/// Values and slopes from one break of the tables to the next, along one of the two curves.
#[derive(Debug, Clone, Copy)]
struct Piece {
    /// Heat where it begins and ends, in J/kg.
    from: f64,
    to: f64,
    /// Heat and temperature it is measured from: where it begins, but for the piece below all breaks.
    base: f64,
    base_c: f64,
    capacity: [f64; 2],
    wet: [f64; 2],
    dry: [f64; 2],
}

/// A material made ready. Heats are 0 at the first break of its tables.
#[derive(Debug, Clone)]
pub(super) struct Curve {
    /// With latent heat.
    heating: Vec<Piece>,
    /// Without; piece by piece over the same temperatures.
    sensible: Vec<Piece>,
    pub density: f64,
    pub events: Vec<LatentEvent>,
    /// The event that dries, where a dry mould conducts differently.
    dries: Option<LatentEvent>,
    pub reversible: bool,
}

impl Curve {
    /// The material must have been checked.
    pub fn new(material: &Material) -> Self {
        let dry_table = material.conductivity_dry.as_ref().unwrap_or(&material.conductivity);
        let latent_at = |t: f64| material.latent.iter().map(|event| event.specific_heat_at(t)).sum::<f64>();
        let sensible = |t: f64| [read(&material.specific_heat, t), read(&material.conductivity, t), read(dry_table, t)];
        let heating = |t: f64| [read(&material.specific_heat, t) + latent_at(t), read(&material.conductivity, t), read(dry_table, t)];
        let breaks = breaks(material);
        Self {
            heating: pieces(&breaks, heating),
            sensible: pieces(&breaks, sensible),
            density: material.density_kg_m3,
            events: material.latent.clone(),
            dries: if material.conductivity_dry.is_some() { material.latent.first().copied() } else { None },
            reversible: material.reversible,
        }
    }

    /// The enthalpy and the past of a place that was never hotter than this.
    pub fn fresh(&self, temperature_c: f64) -> (f64, Past) {
        let at = self.heating.iter().skip(1).take_while(|piece| piece.base_c <= temperature_c).count();
        let enthalpy = self.heating[at].heat_at(temperature_c);
        let latent = enthalpy - self.sensible[at].heat_at(temperature_c);
        let peak = if self.reversible { f64::NEG_INFINITY } else { enthalpy };
        (enthalpy, Past { peak, latent, dry: self.dry_at(temperature_c), peak_c: temperature_c })
    }

    /// What a place with this past is like at an enthalpy. `hint` is the piece it was found in last, and is kept.
    #[inline]
    pub fn place(&self, enthalpy: f64, past: &Past, hint: &mut u16) -> Place {
        let heats = enthalpy >= past.peak;
        let (pieces, heat) = if heats { (&self.heating, enthalpy) } else { (&self.sensible, enthalpy - past.latent) };
        let piece = find(pieces, heat, hint);
        let [capacity, slope] = piece.capacity;
        let beyond = heat - piece.base;
        // The root of a parabola, without cancellation.
        let there = (capacity * capacity + 2.0 * slope * beyond).max(0.0).sqrt();
        let along = 2.0 * beyond / (capacity + there);
        let temperature = piece.base_c + along;
        let mut conductivity = piece.wet[0] + piece.wet[1] * along;
        if let Some(event) = &self.dries {
            let share = if heats { event.done_at(temperature) } else { past.dry };
            conductivity += (piece.dry[0] + piece.dry[1] * along - conductivity) * share;
        }
        Place { temperature, capacity: there, conductivity }
    }

    /// The capacity from an enthalpy to one that is `gain` more: the secant. `here` is where it is now, `hint` its piece.
    #[inline]
    pub fn secant(&self, enthalpy: f64, gain: f64, here: Here, past: &Past, hint: u16) -> f64 {
        let expected = enthalpy + gain;
        let (pieces, heat, least) = if enthalpy >= past.peak {
            (&self.heating, expected, past.peak)
        } else {
            (&self.sensible, expected - past.latent, f64::NEG_INFINITY)
        };
        // Most places stay on a piece along which the capacity hardly changes.
        let stays = pieces.get(usize::from(hint)).is_some_and(|piece| {
            let most = if least > f64::NEG_INFINITY { f64::INFINITY } else { past.peak };
            heat >= piece.from
                && heat < piece.to
                && expected >= least
                && (expected < most || self.reversible)
                && (piece.capacity[1] * gain).abs() < HARDLY * here.capacity * here.capacity
        });
        if stays { here.capacity } else { self.chord(enthalpy, gain, here, past, hint) }
    }

    fn chord(&self, enthalpy: f64, gain: f64, here: Here, past: &Past, mut hint: u16) -> f64 {
        let rise = self.place(enthalpy + gain, past, &mut hint).temperature - here.temperature;
        if rise.abs() > NO_RISE_K { gain / rise } else { here.capacity }
    }

    /// Takes a new peak into a past, where it is one.
    #[inline]
    pub fn remember(&self, past: &mut Past, enthalpy: f64, temperature_c: f64, hint: u16) {
        if self.reversible {
            past.peak_c = temperature_c;
        } else if enthalpy > past.peak {
            past.peak = enthalpy;
            past.peak_c = temperature_c;
            past.latent = enthalpy - self.sensible[usize::from(hint)].heat_at(temperature_c);
            past.dry = self.dry_at(temperature_c);
        }
    }

    fn dry_at(&self, temperature_c: f64) -> f64 {
        self.dries.map_or(0.0, |event| event.done_at(temperature_c))
    }
}

/// All temperatures where a table or a latent event bends, in order.
fn breaks(material: &Material) -> Vec<f64> {
    let tables = [Some(&material.conductivity), material.conductivity_dry.as_ref(), Some(&material.specific_heat)];
    let mut breaks: Vec<f64> = tables.into_iter().flatten().flatten().map(|row| row[0]).collect();
    breaks.extend(material.latent.iter().flat_map(|event| [event.from_c, f64::midpoint(event.from_c, event.to_c), event.to_c]));
    breaks.sort_by(f64::total_cmp);
    breaks.dedup();
    breaks
}

/// Pieces between the breaks, and those beyond them in which nothing changes, from capacity, wet and dry conductivity at a temperature.
fn pieces(breaks: &[f64], at: impl Fn(f64) -> [f64; 3]) -> Vec<Piece> {
    let (first, last) = (breaks.first().copied().unwrap_or_default(), breaks.last().copied().unwrap_or_default());
    let piece = |[from_c, to_c]: [f64; 2], base: f64| {
        let (low, high) = (at(from_c), at(to_c));
        let straight = |which: usize| [low[which], (high[which] - low[which]) / (to_c - from_c).max(f64::MIN_POSITIVE)];
        let piece = Piece { from: base, to: base, base, base_c: from_c, capacity: straight(0), wet: straight(1), dry: straight(2) };
        Piece { to: piece.heat_at(to_c), ..piece }
    };
    let mut pieces = vec![Piece { from: f64::NEG_INFINITY, ..piece([first; 2], 0.0) }];
    let mut base = 0.0;
    for pair in breaks.windows(2) {
        pieces.push(piece([pair[0], pair[1]], base));
        base = pieces[pieces.len() - 1].to;
    }
    pieces.push(Piece { to: f64::INFINITY, ..piece([last; 2], base) });
    pieces
}

impl Piece {
    fn heat_at(&self, temperature_c: f64) -> f64 {
        let along = temperature_c - self.base_c;
        self.base + along * (self.capacity[0] + 0.5 * self.capacity[1] * along)
    }
}

/// The piece in which a heat lies, looked for first where it was last.
#[inline]
fn find<'a>(pieces: &'a [Piece], heat: f64, hint: &mut u16) -> &'a Piece {
    match pieces.get(usize::from(*hint)) {
        Some(piece) if heat >= piece.from && heat < piece.to => piece,
        _ => look_for(pieces, heat, hint),
    }
}

#[cold]
fn look_for<'a>(pieces: &'a [Piece], heat: f64, hint: &mut u16) -> &'a Piece {
    let at = pieces.partition_point(|piece| piece.to <= heat).min(pieces.len() - 1);
    *hint = at as u16;
    &pieces[at]
}
