//! A shaded view of a pattern that turns, zooms and can be cut, worked out here and needing no graphics card.
//!
//! Start at [`Model::new`], which prepares triangles once, and [`render`], which makes a [`Picture`] of a [`Scene`]. The projection is
//! parallel, so that a millimetre is as long everywhere in the picture. Lengths are in mm, places in a picture in pixels from its upper left.

mod camera;
mod cluster;
mod colour;
mod cut;
mod fill;
mod layer;
pub(super) mod light;
mod lines;
mod model;
mod paint;
mod picture;
mod render;

pub use camera::{Camera, Projection, StandardView};
pub use cut::{Axis, Cut, Keep};
pub(super) use model::stand_in_of;
pub use model::{Model, STAND_IN_TRIANGLES};
pub use paint::{Lines, Paint, Palette, Plain, Tones};
pub use picture::{Hit, Picture};
pub use render::{Quality, Scene, pick, render};
