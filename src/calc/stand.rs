//! A tree as it stands: where its trunk, its feeds and its pieces are, and how much room is between them, to the wall, above and below.
//!
//! The axis of the trunk is z, upwards from the rim of the base. A piece stands at the end of its feed, along the feed's own way: out from the
//! trunk's surface and up by the feed's angle to the trunk. That is how a caster thinks of it, and what the rules of a tree's reach and rise say.

use super::solid::{Apart, Block, Point, Rod, Solid, apart};

/// The trunk, in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trunk {
    /// Its diameter.
    pub diameter_mm: f64,
    /// Its length over the dome.
    pub length_mm: f64,
    /// How high the base's dome stands over its rim.
    pub dome_mm: f64,
}

/// A piece on its feed.
#[derive(Debug, Clone, PartialEq)]
pub struct Hang {
    /// How high over the base's rim its feed is joined to the trunk, in mm.
    pub joint_mm: f64,
    /// The way it hangs around the trunk, in degrees.
    pub around_deg: f64,
    /// The angle of its feed to the trunk: 90 stands straight out, less leans to the far end.
    pub angle_deg: f64,
    /// How far it is turned about its feed, in degrees.
    pub twist_deg: f64,
    /// The feed's diameter in mm.
    pub feed_diameter_mm: f64,
    /// The feed's length in mm.
    pub feed_length_mm: f64,
    /// Its form.
    pub form: Form,
}

/// The form of a piece.
#[derive(Debug, Clone, PartialEq)]
pub enum Form {
    /// Its sides: along its feed, across it (upright, untwisted), and deep (around the trunk), in mm.
    Sides([f64; 3]),
    /// The hull of these points in mm: first along the feed from where it is joined, then across, then deep.
    Hull(Vec<Point>),
}

/// The solids of a tree.
#[derive(Debug, Clone, PartialEq)]
pub struct Standing {
    /// The trunk.
    pub trunk: Solid,
    /// The feeds, in the order of their pieces.
    pub feeds: Vec<Solid>,
    /// The pieces.
    pub pieces: Vec<Solid>,
    /// How each piece hangs.
    pub frames: Vec<Frame>,
}

/// Where every solid of a tree is.
#[must_use]
pub fn stand(trunk: &Trunk, hangs: &[Hang]) -> Standing {
    let radius = 0.5 * trunk.diameter_mm;
    // With the round end of a rod, the trunk ends where it is said to.
    let top = (trunk.dome_mm + trunk.length_mm - radius).max(0.0);
    let body = Solid::Rod(Rod { ends: [[0.0; 3], [0.0, 0.0, top]], radius });
    let (mut feeds, mut pieces) = (Vec::with_capacity(hangs.len()), Vec::with_capacity(hangs.len()));
    let mut frames = Vec::with_capacity(hangs.len());
    for hang in hangs {
        let frame = Frame::new(hang, radius);
        let ends = [frame.from, frame.place([0.0; 3])];
        feeds.push(Solid::Rod(Rod { ends, radius: 0.5 * hang.feed_diameter_mm }));
        pieces.push(match &hang.form {
            Form::Sides([along, across, deep]) => Solid::Block(Block {
                centre: frame.place([0.5 * along, 0.0, 0.0]),
                axes: frame.axes,
                half: [0.5 * along, 0.5 * across, 0.5 * deep],
            }),
            Form::Hull(points) => Solid::Hull(points.iter().map(|point| frame.place(*point)).collect()),
        });
        frames.push(frame);
    }
    Standing { trunk: body, feeds, pieces, frames }
}

/// Where a piece hangs and how it is turned.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Frame {
    /// Where its feed leaves the trunk.
    from: Point,
    /// Where it is joined to its feed.
    foot: Point,
    /// Its ways along, across and deep.
    axes: [Point; 3],
}

impl Frame {
    fn new(hang: &Hang, trunk_radius: f64) -> Self {
        let (around_sin, around_cos) = hang.around_deg.to_radians().sin_cos();
        let (sin, cos) = hang.angle_deg.to_radians().sin_cos();
        let out = [around_cos, around_sin, 0.0];
        let along = [sin * out[0], sin * out[1], cos];
        let up = [-cos * out[0], -cos * out[1], sin];
        let side = [-around_sin, around_cos, 0.0];
        let (twist_sin, twist_cos) = hang.twist_deg.to_radians().sin_cos();
        let turned = |a: f64, b: f64| [0, 1, 2].map(|k| a * up[k] + b * side[k]);
        let axes = [along, turned(twist_cos, twist_sin), turned(-twist_sin, twist_cos)];
        let from = [trunk_radius * out[0], trunk_radius * out[1], hang.joint_mm];
        let foot = [0, 1, 2].map(|k| from[k] + hang.feed_length_mm * along[k]);
        Self { from, foot, axes }
    }

    /// The two ends of its feed's middle line.
    #[must_use]
    pub const fn feed(&self) -> [Point; 2] {
        [self.from, self.foot]
    }

    /// Where a point of the piece is, given along its feed from where it is joined, across it, and the third way, in mm.
    #[must_use]
    pub fn place(&self, point: Point) -> Point {
        [0, 1, 2].map(|k| self.foot[k] + (0..3).map(|axis| point[axis] * self.axes[axis][k]).sum::<f64>())
    }
}

/// A part of a tree, by the number of its piece.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// The trunk.
    Trunk,
    /// The feed of a piece.
    Feed(usize),
    /// A piece.
    Piece(usize),
}

/// How near two parts of a tree are that are not joined to each other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Between {
    /// The two.
    pub parts: [Part; 2],
    /// How far they are apart, and where they are nearest.
    pub apart: Apart,
}

/// The room of a tree in a flask.
#[derive(Debug, Clone, PartialEq)]
pub struct Room {
    /// From each piece to the wall, in mm; less than nought where it does not go in.
    pub wall_mm: Vec<f64>,
    /// From the highest part to the flask's far rim, in mm.
    pub top_mm: f64,
    /// From the lowest piece or feed to the rim of the base, in mm.
    pub bottom_mm: f64,
    /// Parts nearer to each other than was asked for, as [`between`] gives them.
    pub tight: Vec<Between>,
}

/// The room of a tree in a flask of this inside, with every two parts nearer to each other than `near_mm`. A piece and its own feed are
/// joined.
#[must_use]
pub fn room(tree: &Standing, inner_diameter_mm: f64, height_mm: f64, near_mm: f64) -> Room {
    let wall_mm = tree.pieces.iter().map(|piece| 0.5 * inner_diameter_mm - piece.reach()).collect();
    let hung = || tree.pieces.iter().chain(&tree.feeds);
    let highest = hung().chain([&tree.trunk]).map(|solid| solid.heights()[1]).fold(f64::NEG_INFINITY, f64::max);
    let lowest = hung().map(|solid| solid.heights()[0]).fold(f64::INFINITY, f64::min);
    let bottom_mm = if lowest.is_finite() { lowest } else { 0.0 };
    Room { wall_mm, top_mm: height_mm - highest, bottom_mm, tight: between(tree, near_mm) }
}

/// Every two parts of a tree that are nearer to each other than `near_mm` and not joined, the nearest first. Sprues may run into each other at
/// the trunk: nothing is lost there.
#[must_use]
pub fn between(tree: &Standing, near_mm: f64) -> Vec<Between> {
    let pieces = || (0..tree.pieces.len()).map(Part::Piece);
    let feeds = || (0..tree.feeds.len()).map(Part::Feed);
    let all: Vec<(Part, &Solid, Around)> = [Part::Trunk]
        .into_iter()
        .chain(feeds())
        .chain(pieces())
        .map(|part| {
            let solid = tree.solid(part);
            (part, solid, Around::new(solid))
        })
        .collect();
    let mut found = Vec::new();
    for (at, (one, solid, around)) in all.iter().enumerate() {
        for (other, beside, around_other) in &all[at + 1..] {
            // Upright boxes around them that are farther apart say enough.
            if are_joined(*one, *other) || around.apart(around_other) >= near_mm {
                continue;
            }
            let apart = apart(solid, beside);
            if apart.at_least_mm < near_mm {
                found.push(Between { parts: [*one, *other], apart });
            }
        }
    }
    found.sort_by(|a: &Between, b| a.apart.at_least_mm.total_cmp(&b.apart.at_least_mm).then(a.parts.cmp(&b.parts)));
    found
}

fn are_joined(one: Part, other: Part) -> bool {
    match (one, other) {
        (Part::Trunk | Part::Feed(_), Part::Feed(_)) | (Part::Feed(_), Part::Trunk) => true,
        (Part::Feed(feed), Part::Piece(piece)) | (Part::Piece(piece), Part::Feed(feed)) => feed == piece,
        _ => false,
    }
}

impl Standing {
    /// The solid of a part.
    #[must_use]
    pub fn solid(&self, part: Part) -> &Solid {
        match part {
            Part::Trunk => &self.trunk,
            Part::Feed(at) => &self.feeds[at],
            Part::Piece(at) => &self.pieces[at],
        }
    }
}

/// The upright box around a solid.
struct Around {
    low: Point,
    high: Point,
}

impl Around {
    fn new(solid: &Solid) -> Self {
        let ([low, high], round) = solid.box_around();
        Self { low: low.map(|end| end - round), high: high.map(|end| end + round) }
    }

    /// They are at least so far apart.
    fn apart(&self, other: &Self) -> f64 {
        let gap = |k: usize| (self.low[k] - other.high[k]).max(other.low[k] - self.high[k]).max(0.0);
        (0..3).map(|k| gap(k).powi(2)).sum::<f64>().sqrt()
    }
}
