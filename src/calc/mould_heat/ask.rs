//! What the heat of a mould is computed from, gathered from the documents.

use std::hash::{DefaultHasher, Hash, Hasher};

use super::material::materials;
use crate::calc::book::Book;
use crate::calc::burnout::BurnoutFigures;
use crate::calc::burnout::kiln_offset_k;
use crate::calc::flask::FlaskFigures;
use crate::calc::heat::{Flask, Material, Shell, Surface, Surfaces};
use crate::calc::pass::Pass;
use crate::calc::site::ROOM_DEFAULT;
use crate::calc::tree::TreeFigures;
use crate::job::{FlaskId, Job};
use crate::stock::{Flask as Vessel, FlaskWall, Kiln, Powder};

/// Convection at a flask in the kiln and on the bench, in W/(m²·K): 5 to 15 in still to moving air, from memory.
const CONVECTION_W_M2_K: f64 = 10.0;
/// Emissivity of a flask's steel after some burnouts: 0.6 to 0.8 for oxidised stainless steel, from memory.
const STEEL_EMISSIVITY: f64 = 0.7;
/// Emissivity of the bare mould where the shelf says none.
const BARE_EMISSIVITY: f64 = 0.87;
/// Heat that stainless steel holds in J/(m³·K): 7.9 g/cm³ and 0.5 kJ/(kg·K), from memory.
const STEEL_J_M3_K: f64 = 7900.0 * 500.0;
/// How well the steel lies against the mould, in W/(m²·K): plaster cast against steel, from memory; far better than the air outside.
const CONTACT_W_M2_K: f64 = 200.0;

/// Where in the mould the temperature is read, `[radius, height over the base]` in m. The core is always read.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Places {
    /// The outermost piece: the coldest cavity once the kiln falls or the flask is out.
    pub cavity_m: [f64; 2],
    /// The wall at half height.
    pub wall_m: [f64; 2],
    /// The corner at the upper end.
    pub corner_m: [f64; 2],
}

/// What the heat of a mould is computed from. Equal flasks of a load ask alike.
#[derive(Debug, Clone, PartialEq)]
pub struct HeatAsk {
    /// The flask.
    pub flask: Flask,
    /// The mould, from low to high conductivity.
    pub materials: [Material; 3],
    /// How it stands in the kiln, and later on the bench.
    pub surfaces: Surfaces,
    /// The kiln: minutes after it is started, and its true temperature in °C.
    pub kiln: Vec<[f64; 2]>,
    /// How much hotter than its reading the kiln is, in K; it is in `kiln` already.
    pub offset_k: f64,
    /// The mould when it is loaded, and the room it stands in afterwards, in °C.
    pub room_c: f64,
    /// Where it is read.
    pub places: Places,
}

impl HeatAsk {
    /// When it is poured, in minutes after the kiln is started.
    #[must_use]
    pub fn pour_min(&self) -> f64 {
        self.kiln.last().map_or(0.0, |point| point[0])
    }

    /// A number that equal questions share, and others do not but by a chance of one in 10³⁸.
    #[must_use]
    pub fn key(&self) -> u128 {
        // Every number of it is printed in full: no field is forgotten, and -0 is not 0.
        let words = format!("{self:?}");
        let half = |salt: u8| {
            let mut hasher = DefaultHasher::new();
            (salt, &words).hash(&mut hasher);
            u128::from(hasher.finish())
        };
        (half(1) << 64) | half(2)
    }
}

impl Pass<'_> {
    /// What is asked of a flask's mould; nothing where powder, flask, mix or programme are not known.
    pub(super) fn heat_ask(&self, flask: &FlaskFigures, load: &BurnoutFigures, trees: &[TreeFigures]) -> Option<HeatAsk> {
        let document = self.job.flasks.iter().find(|other| other.id == flask.id)?;
        let vessel = self.shelf.get::<Vessel>(document.vessel.as_ref()?.as_str())?;
        let powder = self.shelf.get::<Powder>(flask.powder.as_ref()?.as_str())?;
        let materials = materials(powder, self.book.number(flask.mix.ratio)?)?;
        let (radius_m, height_m) = (vessel.inner_diameter_mm / 2000.0, vessel.height_mm / 1000.0);
        let solid = vessel.wall == FlaskWall::Solid;
        let capacity_j_m2_k = vessel.wall_mm.value / 1000.0 * STEEL_J_M3_K;
        let shell = solid.then_some(Shell { capacity_j_m2_k, contact_w_m2_k: CONTACT_W_M2_K });
        let bare = powder.thermal.as_ref().map_or(BARE_EMISSIVITY, |thermal| thermal.emissivity.value);
        let surface = |emissivity: f64| Surface { h_w_m2_k: CONVECTION_W_M2_K, emissivity };
        let surfaces = Surfaces { side: surface(if solid { STEEL_EMISSIVITY } else { bare }), top: surface(bare), bottom: surface(bare) };
        let offset_k = self.offset_k(self.job, load);
        let kiln = curve(self.book, load, flask.id, offset_k)?;
        let places = self.places(flask, trees, [radius_m, height_m]);
        Some(HeatAsk {
            flask: Flask { radius_m, height_m, shell },
            materials,
            surfaces,
            kiln,
            offset_k,
            room_c: ROOM_DEFAULT.value,
            places,
        })
    }

    fn offset_k(&self, job: &Job, load: &BurnoutFigures) -> f64 {
        let kiln = job.burnouts.iter().find(|burnout| burnout.id == load.id).and_then(|burnout| burnout.kiln.as_ref());
        kiln.and_then(|id| self.shelf.get::<Kiln>(id.as_str())).map_or(0.0, |kiln| kiln_offset_k(self.studio, kiln))
    }

    /// The outermost piece hangs as far out as the tree reaches; where nobody knows that, two thirds out.
    fn places(&self, flask: &FlaskFigures, trees: &[TreeFigures], [radius_m, height_m]: [f64; 2]) -> Places {
        let outline = trees.iter().find(|tree| Some(tree.id) == flask.tree).map(|tree| &tree.outline);
        let number = |id: Option<crate::calc::Id>| id.and_then(|id| self.book.number(id));
        let reach_m = number(outline.and_then(|outline| outline.diameter)).map_or(radius_m * 2.0 / 3.0, |diameter| diameter / 2000.0);
        let top_m = number(outline.and_then(|outline| outline.height)).map_or(height_m / 2.0, |height| height / 1000.0);
        let middle = height_m / 2.0;
        Places {
            // The farthest piece from the middle: by the wall, at the tree's far end.
            cavity_m: [reach_m.clamp(0.0, radius_m), top_m.clamp(middle, height_m)],
            wall_m: [radius_m, middle],
            corner_m: [radius_m, height_m],
        }
    }
}

/// The kiln's true temperature over the minutes after its start, until a flask is poured.
fn curve(book: &Book, load: &BurnoutFigures, flask: FlaskId, offset_k: f64) -> Option<Vec<[f64; 2]>> {
    let mut now = 0.0;
    let mut points = vec![[now, book.number(load.start_c)? + offset_k]];
    for stage in &load.stages {
        let (minutes, hold, target) = (book.number(stage.minutes)?, book.number(stage.hold)?, book.number(stage.target)? + offset_k);
        points.extend([[now + (minutes - hold).max(0.0), target], [now + minutes, target]]);
        now += minutes;
    }
    // A flask of a later round stays in while the kiln falls for it.
    let round = load.rounds.iter().position(|round| round.flasks.contains(&flask)).unwrap_or(0);
    for later in load.rounds.iter().take(round + 1) {
        let Some([ramp, hold]) = later.wait else { continue };
        let (Some(ramp), Some(hold), Some(target)) = (book.number(ramp), book.number(hold), book.number(later.target)) else { break };
        let target = target + offset_k;
        points.extend([[now + ramp, target], [now + ramp + hold, target]]);
        now += ramp + hold;
    }
    // A programme of a second or a year is not for a mould.
    (points.len() > 1 && (1.0..=60.0 * 24.0 * 14.0).contains(&now)).then_some(points)
}
