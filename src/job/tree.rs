//! Trees: which pieces hang where, on what sprues, and what the scale says.

use std::collections::BTreeSet;

use super::id::{LineId, TreeId};
use super::order::Weighing;
use super::serial::document;
use crate::quantity::{Finite, Grams};
use crate::stock::EntryId;

document! {
    /// One tree.
    pub struct Tree {
        /// The tree's id.
        id: TreeId,
        /// What the caster calls it.
        name: String,
        /// The base it stands on, by shelf id.
        base: Option<EntryId>,
        /// The number scratched into that base, whose tare counts.
        base_number: String,
        /// The pieces on it.
        pieces: Vec<Hung>,
        /// What it weighs, each material apart.
        weighed: Vec<WeighedPart>,
        /// The main sprue.
        main_sprue: Option<MainSprue>,
        /// The feed sprues, in runs of equal ones.
        sprues: Vec<SprueRun>,
        /// Its tiers from the button's end, where their heights were said; the others are spread evenly.
        tiers: Vec<Tier>,
        /// Pieces whose own place was said.
        placed: Vec<Placed>,
        /// Widest and highest measure of the finished tree, where it was measured.
        envelope: Option<Envelope>,
        /// Remarks.
        notes: String,
    }
}

document! {
    /// Pieces of one line on this tree.
    pub struct Hung {
        /// The line.
        line: LineId,
        /// Which of its pieces; all of them where this is empty.
        numbers: BTreeSet<u32>,
        /// The tier, from 1 at the button's end.
        tier: Option<u32>,
        /// Direction around the main sprue, in degrees.
        around_deg: Option<Finite>,
        /// The run of feed sprues it hangs on, from 1.
        sprue: Option<u32>,
    }
}

document! {
    /// A tier of the tree.
    pub struct Tier {
        /// How high over the base's dome its sprues are joined, in mm.
        height_mm: Option<Finite>,
    }
}

document! {
    /// Where one piece hangs. What is not said here is as its row says.
    pub struct Placed {
        /// Its line.
        line: LineId,
        /// Its number within the line.
        number: u32,
        /// The tier, from 1 at the button's end.
        tier: Option<u32>,
        /// How high over the base's dome its sprue is joined, in mm, where it is not as its tier.
        height_mm: Option<Finite>,
        /// Direction around the main sprue, in degrees.
        around_deg: Option<Finite>,
        /// How far it is turned about its sprue, in degrees.
        turn_deg: Option<Finite>,
        /// The run of feed sprues it hangs on, from 1.
        sprue: Option<u32>,
    }
}

document! {
    /// All of one material on the tree, on the scale.
    pub struct WeighedPart {
        /// The material, by shelf id.
        material: Option<EntryId>,
        /// What the scale said.
        weight: Option<Weighing>,
        /// The scale it was weighed on, by its name in the studio's register.
        scale: String,
    }
}

document! {
    /// The main sprue.
    pub struct MainSprue {
        /// What it is made of.
        material: Option<EntryId>,
        /// Its diameter in mm.
        diameter_mm: Option<Finite>,
        /// Its length above the base's dome in mm.
        length_mm: Option<Finite>,
    }
}

document! {
    /// A run of equal feed sprues.
    pub struct SprueRun {
        /// What they are made of.
        material: Option<EntryId>,
        /// How many.
        count: u32,
        /// Diameter in mm.
        diameter_mm: Option<Finite>,
        /// Length in mm.
        length_mm: Option<Finite>,
        /// Angle to the main sprue in degrees; 45 where not said.
        angle_deg: Option<Finite>,
    }
}

document! {
    /// Outer measures of the whole tree.
    pub struct Envelope {
        /// The widest diameter in mm.
        diameter_mm: Option<Finite>,
        /// Height from the base's rim to the far end in mm.
        height_mm: Option<Finite>,
    }
}

document! {
    /// The button this flask is to have.
    pub struct ButtonWish {
        /// At least so much.
        least: Option<Grams>,
        /// At least this share of the tree's metal.
        share: Option<Finite>,
    }
}
