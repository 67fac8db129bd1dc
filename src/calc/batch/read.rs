//! What a plan means: which pieces go into which flask, what it pours, and why a piece is in none.

use std::ops::RangeInclusive;

use super::places::needs_mm;
use super::rules::{HUNG_METAL, PLANNED_TREE};
use super::settle::{Settled, Stands};
use super::{Ask, GroupOf, LockOf, Piece, SizeOf, Unknown};
use crate::calc::book::Id;
use crate::calc::melt::USABLE;
use crate::calc::plan::{Filled, Group, Why, Wish};
use crate::job::{FlaskId, PieceId, Place};
use crate::stock::{Crucible, EntryId, Shelf};

/// One flask of a plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Row {
    /// The flask of the job that takes these pieces; none for a new one.
    pub flask: Option<FlaskId>,
    /// The caster keeps it from an earlier plan.
    pub kept: bool,
    /// Its steel.
    pub vessel: EntryId,
    /// Ø×H.
    pub size: String,
    /// The base that closes it.
    pub base: Option<EntryId>,
    /// Its alloy.
    pub alloy: EntryId,
    /// The pieces that are to be hung, in the order of the job.
    pub pieces: Vec<PieceId>,
    /// Metal of its tree in g, main sprue and feeds included.
    pub metal_g: f64,
    /// How full the crucible is with its charge; none where no crucible was reckoned with.
    pub fill: Option<f64>,
    /// The crucible.
    pub crucible: Option<EntryId>,
    /// Temperatures of the mould that all its pieces bear, in °C.
    pub mould_c: RangeInclusive<i32>,
    /// How long its main sprue may be, in mm.
    pub main_mm: f64,
    /// Its pieces are of sections that are not poured alike: its mould is to be set so that all bear it.
    pub mixed: bool,
    /// How its tree stands.
    pub stands: Stands,
}

/// Pieces that are in no flask of a plan, and why.
#[derive(Debug, Clone, PartialEq)]
pub struct Left {
    /// The pieces; those that go together stand together.
    pub pieces: Vec<PieceId>,
    /// Why.
    pub why: WhyLeft,
}

/// Why pieces are in no flask.
#[derive(Debug, Clone, PartialEq)]
pub enum WhyLeft {
    /// Something is not known of them.
    Unknown(Unknown),
    /// No flask is large enough.
    TooLarge {
        /// What it takes, diameter and height in mm.
        needs_mm: [f64; 2],
        /// The largest flask there is.
        largest: Option<String>,
    },
    /// The flasks that are large enough are all in use.
    NoneFree,
    /// They take more metal than their crucible pours.
    TooMuchMetal {
        /// Their metal in g.
        metal_g: f64,
        /// The most that is left for pieces in any flask that takes them, in g.
        most_g: f64,
        /// The crucible.
        crucible: Option<EntryId>,
    },
    /// By their measures they go in, but arranged on the usual tree they find no place.
    NoPlace {
        /// The largest flask there is.
        largest: String,
    },
    /// They are to stay together and are too many for one tree.
    TooMany {
        /// The share of a tree that they take.
        share: f64,
        /// The flask of that tree.
        size: String,
    },
    /// They go together, and no temperature of the mould suits all of them.
    MouldsApart {
        /// The hottest of their lower ends, in °C.
        least_c: i32,
        /// The coolest of their upper ends, in °C.
        most_c: i32,
    },
    /// They were kept in a flask that does not take them any more.
    KeptInVain,
    /// There are not flasks enough, and others go first.
    NoRoom {
        /// Flasks in the plan.
        flasks: usize,
        /// Places the kiln still has for it.
        kiln: Option<u32>,
    },
}

/// What a plan comes to.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// Its flasks.
    pub rows: Vec<Row>,
    /// What is in none.
    pub left: Vec<Left>,
    /// The insides of all its flasks, in cm³: what investment they take, trees and domes not taken off.
    pub volume_cm3: f64,
    /// No plan of what was placed has fewer flasks.
    pub least_flasks: u32,
    /// No plan with so few flasks has less volume, in cm³.
    pub least_volume_cm3: f64,
    /// Nothing better is possible.
    pub proven: bool,
    /// Somebody stopped the search.
    pub stopped: bool,
}

impl Ask {
    /// Says what a plan of this wish means.
    #[must_use]
    pub fn read(&mut self, settled: &Settled, shelf: &Shelf) -> Outcome {
        let (plan, wish) = (&settled.plan, &settled.wish);
        let rows = plan.flasks.iter().zip(&settled.stands).map(|(flask, stands)| self.row(flask, stands, shelf)).collect();
        let unknown = self.unknown.iter().map(|(piece, why)| Left { pieces: vec![*piece], why: WhyLeft::Unknown(why.clone()) });
        let waiting = plan.left.iter().map(|(group, why)| self.left(wish, *group, *why, plan.flasks.len()));
        Outcome {
            left: unknown.chain(waiting).collect(),
            rows,
            volume_cm3: plan.volume_mm3(wish) as f64 / 1000.0,
            least_flasks: plan.bound.flasks,
            least_volume_cm3: plan.bound.volume_mm3 as f64 / 1000.0,
            proven: plan.is_proven(wish),
            stopped: plan.stopped,
        }
    }

    /// The pieces of a group; none for what hangs already.
    fn of_group(&self, group: usize) -> Vec<&Piece> {
        match &self.groups[group] {
            GroupOf::Open(places) => places.iter().map(|at| &self.pieces[*at]).collect(),
            GroupOf::Hung(_) => Vec::new(),
        }
    }

    fn row(&mut self, flask: &Filled, stands: &Stands, shelf: &Shelf) -> Row {
        let lock = self.wish.locks.iter().position(|lock| lock.groups.iter().any(|group| flask.groups.contains(group)));
        let lock = lock.map(|at| self.locks[at]);
        // Nothing is moved on a tree that stands: room was found, but its places are the caster's.
        let stands = match (lock, stands) {
            (Some(LockOf::Flask(_)), Stands::All(_)) => &Stands::NotSeen,
            _ => stands,
        };
        let groups: Vec<&Group> = flask.groups.iter().map(|group| &self.wish.groups[*group]).collect();
        let low = groups.iter().map(|group| *group.mould_c.start()).max().unwrap_or(0);
        let high = groups.iter().map(|group| *group.mould_c.end()).min().unwrap_or(0);
        let mixed = groups.iter().any(|group| group.mould_c != (low..=high));
        let hung_mg: u64 = groups.iter().map(|group| group.metal_mg).sum();
        let mut pieces: Vec<&Piece> = flask.groups.iter().flat_map(|group| self.of_group(*group)).collect();
        pieces.sort_by_key(|piece| piece.id);
        let size = &self.sizes[flask.size];
        let rise = pieces.iter().map(|piece| super::places::rise(&self.tree, &piece.body)).fold(0.0, f64::max);
        let main_mm = match stands {
            Stands::All(tree) => tree.trunk.length_mm,
            _ => (size.inside.height_mm - size.inside.dome_mm - size.inside.top_mm - rise).max(0.0),
        };
        let (size, alloy) = (size.clone(), self.alloys[flask.alloy].clone());
        let pieces = pieces.into_iter().map(|piece| piece.id).collect();
        let trunk_g = self.trunks_g[flask.size][flask.alloy];
        let metal = [hung_mg as f64 / 1000.0, trunk_g].map(|grams| self.book.laid_out(&HUNG_METAL, Place::Job, grams));
        let tree = self.book.derive_over(&PLANNED_TREE, Place::Job, &metal);
        let fill = alloy.crucible.as_ref().and_then(|id| self.fill(tree, shelf.get::<Crucible>(id.as_str())?, &alloy.id, shelf));
        Row {
            flask: lock.and_then(|lock| if let LockOf::Flask(id) = lock { Some(id) } else { None }),
            kept: lock == Some(LockOf::Kept),
            vessel: size.vessel,
            size: size.words,
            base: size.base,
            alloy: alloy.id,
            pieces,
            metal_g: self.book.number(tree).unwrap_or_default(),
            fill,
            crucible: alloy.crucible,
            mould_c: low..=high,
            main_mm,
            mixed,
            stands: stands.clone(),
        }
    }

    /// How full a crucible is with the charge for a tree.
    fn fill(&mut self, tree: Id, crucible: &Crucible, alloy: &EntryId, shelf: &Shelf) -> Option<f64> {
        let alloy = shelf.get::<crate::stock::Alloy>(alloy.as_str())?;
        let book = &mut self.book;
        let charge = crate::calc::metal::usual_charge(book, tree, alloy);
        let liquid = alloy.thermal.as_ref().map_or(&alloy.density_g_cm3, |thermal| &thermal.liquid_density_g_cm3);
        let liquid = book.shelf(&crate::calc::alloy::LIQUID_DENSITY, &alloy.id, liquid);
        let molten = book.derive(&crate::calc::melt::MOLTEN, Place::Job, [charge, liquid]);
        let usable = book.shelf(&USABLE, &crucible.id, &crucible.usable_cm3);
        let fill = book.derive(&crate::calc::melt::FILL, Place::Job, [molten, usable]);
        book.number(fill)
    }

    fn left(&self, wish: &Wish, group: usize, why: Why, flasks: usize) -> Left {
        let pieces = self.of_group(group);
        let of = &wish.groups[group];
        let why = match why {
            Why::FitsNone if of.fits.iter().any(|fits| *fits) => WhyLeft::NoneFree,
            Why::FitsNone => {
                let most = |a: [f64; 2], b: [f64; 2]| [a[0].max(b[0]), a[1].max(b[1])];
                let needs = |size: &SizeOf| pieces.iter().map(|piece| needs_mm(&self.tree, &size.inside, &piece.body)).reduce(most);
                let needs = |size: &SizeOf| needs(size).unwrap_or_default();
                let holds = |size: &SizeOf, [wide, high]: [f64; 2]| wide <= size.inside.diameter_mm && high <= size.inside.height_mm;
                match self.roomiest.as_ref() {
                    Some(size) if holds(size, needs(size)) => WhyLeft::NoPlace { largest: size.words.clone() },
                    Some(size) => WhyLeft::TooLarge { needs_mm: needs(size), largest: Some(size.words.clone()) },
                    None => WhyLeft::NoneFree,
                }
            }
            Why::TooMuchMetal { most_mg } => WhyLeft::TooMuchMetal {
                metal_g: of.metal_mg as f64 / 1000.0,
                most_g: most_mg as f64 / 1000.0,
                crucible: self.alloys[of.alloy].crucible.clone(),
            },
            Why::TooManyPlaces { size } => WhyLeft::TooMany {
                share: f64::from(of.places[size]) / f64::from(wish.sizes[size].places),
                size: self.sizes[size].words.clone(),
            },
            Why::Contradiction if of.mould_c.is_empty() => WhyLeft::MouldsApart { least_c: *of.mould_c.start(), most_c: *of.mould_c.end() },
            Why::Contradiction => WhyLeft::KeptInVain,
            Why::NoRoom => WhyLeft::NoRoom { flasks, kiln: wish.most_flasks },
        };
        Left { pieces: pieces.into_iter().map(|piece| piece.id).collect(), why }
    }
}
