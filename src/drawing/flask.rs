//! A flask with its tree, in section and from above, to scale. The button's end is at the foot, where the base closes the flask.

use super::primitive::{Anchor, Picture, Role, at};
use super::tree::{Place, Shown, Sight, tree};
use crate::calc::stand::Trunk;

/// A room around the tree: how much, in words and in millimetres, and how bad that is.
#[derive(Debug, Clone, PartialEq)]
pub struct Room {
    /// Written beside it.
    pub words: String,
    /// How much.
    pub mm: f64,
    /// [`Role::Ink`] where it is enough, otherwise a Caution or a Stop.
    pub role: Role,
}

/// Two places of the tree that are too near to each other.
#[derive(Debug, Clone, PartialEq)]
pub struct Tight {
    /// Where they are nearest.
    pub places: [Place; 2],
    /// How near.
    pub words: String,
    /// [`Role::Stop`] where they touch, otherwise [`Role::Caution`].
    pub role: Role,
}

/// The words on the drawing.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Labels {
    /// Diameter and height of the flask.
    pub size: String,
    /// The end the metal runs to last.
    pub far_end: String,
    /// The end the metal comes in at.
    pub button_end: String,
    /// How high the collar is.
    pub collar: String,
}

/// Everything a drawing of a flask is made from.
#[derive(Debug, Clone, PartialEq)]
pub struct Plan {
    /// Inner diameter of the steel.
    pub inner_mm: f64,
    /// Height of the steel.
    pub height_mm: f64,
    /// Height of the collar on it.
    pub collar_mm: f64,
    /// Thickness of the wall.
    pub wall_mm: f64,
    /// Volume of the dome.
    pub dome_cm3: f64,
    /// The wall lets air through.
    pub perforated: bool,
    /// Nobody chose the flask: what is known is drawn without its steel.
    pub bare: bool,
    /// The tree's trunk, where it is known.
    pub trunk: Option<Trunk>,
    /// The trunk freezes before what it should feed.
    pub trunk_starves: bool,
    /// Its pieces.
    pub pieces: Vec<Shown>,
    /// How far the whole is turned about its axis, in degrees.
    pub turn_deg: f64,
    /// Where it is too tight between its parts.
    pub tight: Vec<Tight>,
    /// Height of the dome.
    pub dome_mm: f64,
    /// The tree's outer diameter.
    pub tree_diameter_mm: Option<f64>,
    /// The tree's height over the base's rim.
    pub tree_height_mm: Option<f64>,
    /// Room to the wall.
    pub wall: Option<Room>,
    /// Room to the rim or the collar's edge.
    pub above: Option<Room>,
    /// The words.
    pub labels: Labels,
}

/// Radius of the foot of a dome, taken as the cap of a sphere of a volume and a height, and no wider than `most`.
#[must_use]
pub fn foot_of_dome(cm3: f64, height_mm: f64, most: f64) -> f64 {
    if cm3 <= 0.0 || height_mm <= 0.0 {
        return 0.0;
    }
    let square = 2.0 * cm3 * 1000.0 / (std::f64::consts::PI * height_mm) - height_mm * height_mm / 3.0;
    square.max(0.0).sqrt().clamp(0.0, most)
}

impl Plan {
    fn radius(&self) -> f64 {
        self.inner_mm / 2.0
    }

    fn rim(&self) -> f64 {
        self.height_mm + self.collar_mm
    }

    /// A hundredth of the larger measure: what margins and marks are counted in.
    fn step(&self) -> f64 {
        (self.rim().max(self.inner_mm) / 100.0).max(0.01)
    }
}

/// The flask in section.
#[must_use]
pub fn section(plan: &Plan) -> Picture {
    let (radius, rim, step) = (plan.radius(), plan.rim(), plan.step());
    // A tree that is too wide or too high is drawn as it is.
    let side = (radius + plan.wall_mm).max(plan.tree_diameter_mm.unwrap_or(0.0) / 2.0);
    let top = rim.max(plan.tree_height_mm.unwrap_or(0.0));
    // The words at the right are longest where there is a collar.
    let beside = if plan.collar_mm > 0.0 { 36.0 } else { 26.0 };
    let mut picture = Picture::new(at(-side - 16.0 * step, -16.0 * step), at(side + beside * step, top + 4.0 * step));
    if !plan.bare {
        picture.block(at(-radius, 0.0), at(radius, rim), Role::Mould);
    }
    steel(&mut picture, plan);
    outline(&mut picture, plan);
    if let Some(trunk) = &plan.trunk {
        tree(&mut picture, (trunk, plan.trunk_starves), &plan.pieces, Sight::Side(plan.turn_deg));
    }
    // A trunk or a piece may be longer than what was measured of the tree.
    picture.embrace();
    rule(&mut picture, plan);
    ends(&mut picture, plan);
    rooms(&mut picture, plan);
    tight(&mut picture, plan, Sight::Side(plan.turn_deg));
    picture
}

/// Wall, collar, base and dome.
fn steel(picture: &mut Picture, plan: &Plan) {
    let (radius, step) = (plan.radius(), plan.step());
    let wall = plan.wall_mm.max(step * 0.6);
    for side in [-1.0, 1.0].into_iter().filter(|_| !plan.bare) {
        picture.block(at(side * radius, 0.0), at(side * (radius + wall), plan.height_mm), Role::Steel);
        if plan.perforated {
            holes(picture, plan, side, wall);
        }
        if plan.collar_mm > 0.0 {
            picture.line(at(side * radius, plan.height_mm), at(side * radius, plan.rim()), 1.0, Role::Steel);
        }
    }
    let plate = radius + wall + 3.0 * step;
    picture.block(at(-plate, -2.5 * step), at(plate, 0.0), Role::Steel);
    let foot = foot_of_dome(plan.dome_cm3, plan.dome_mm, radius);
    if foot > 0.0 {
        let arc = arc(foot, plan.dome_mm);
        picture.area(arc.clone(), Role::Dome);
        for pair in arc.windows(2) {
            picture.line(pair[0], pair[1], 1.2, Role::Steel);
        }
    }
}

/// The holes of a perforated wall, from a tenth of its height to its rim.
fn holes(picture: &mut Picture, plan: &Plan, side: f64, wall: f64) {
    let (radius, each) = (plan.radius(), plan.height_mm / 14.0);
    for n in 1..13_u8 {
        let low = f64::from(n) * each + 0.3 * each;
        picture.block(at(side * radius, low), at(side * (radius + wall), low + 0.4 * each), Role::Ground);
    }
}

/// The outline of a dome from its left foot to its right one, as half an ellipse: steep at the foot, flat at the crown.
fn arc(foot: f64, height: f64) -> Vec<super::primitive::Point> {
    (0..=24)
        .map(|n| {
            let (sin, cos) = (std::f64::consts::PI * (1.0 - f64::from(n) / 24.0)).sin_cos();
            at(foot * cos, height * sin)
        })
        .collect()
}

/// The outer measures of the tree.
fn outline(picture: &mut Picture, plan: &Plan) {
    if let (Some(diameter), Some(height)) = (plan.tree_diameter_mm, plan.tree_height_mm) {
        let half = diameter / 2.0;
        picture.broken(at(-half, 0.0), at(-half, height), Role::Label);
        picture.broken(at(half, 0.0), at(half, height), Role::Label);
        picture.broken(at(-half, height), at(half, height), Role::Label);
    }
}

/// Places that are written as too tight at most: more would hide the tree.
const MOST_TIGHT: usize = 6;

/// Where it is too tight between parts of the tree, written beside it. Of several in one spot the tightest is written.
fn tight(picture: &mut Picture, plan: &Plan, sight: Sight) {
    let step = plan.step();
    let mut written_at: Vec<super::primitive::Point> = Vec::new();
    for tight in &plan.tight {
        let [from, to] = tight.places.map(|place| sight.see(place).0);
        let beside = at(from.x.max(to.x) + 2.0 * step, f64::midpoint(from.y, to.y));
        let crowded = |other: &super::primitive::Point| (other.x - beside.x).abs() < 22.0 * step && (other.y - beside.y).abs() < 7.0 * step;
        if written_at.len() == MOST_TIGHT || written_at.iter().any(crowded) {
            continue;
        }
        written_at.push(beside);
        measure(picture, from, to, tight.role);
        written(picture, &tight.words, tight.role, beside, step);
    }
}

/// A rule in millimetres along the height, at the left.
fn rule(picture: &mut Picture, plan: &Plan) {
    let (step, rim) = (plan.step(), plan.rim());
    let x = -plan.radius() - plan.wall_mm - 6.0 * step;
    picture.line(at(x, 0.0), at(x, rim), 1.0, Role::Label);
    let each = if rim <= 130.0 { 10 } else { 20 };
    let mut mm = 0_u32;
    while f64::from(mm) <= rim && mm <= 2000 {
        let numbered = mm.is_multiple_of(each * 2);
        let y = f64::from(mm);
        picture.line(at(x - if numbered { 2.5 } else { 1.5 } * step, y), at(x, y), 1.0, Role::Label);
        if numbered {
            picture.text(at(x - 3.5 * step, y), &mm.to_string(), Anchor::Right, Role::Label);
        }
        mm += each;
    }
}

/// Diameter and height under the flask, its two ends at the right.
fn ends(picture: &mut Picture, plan: &Plan) {
    let (radius, step) = (plan.radius(), plan.step());
    let y = -7.0 * step;
    picture.line(at(-radius, y), at(radius, y), 1.0, Role::Label);
    for side in [-radius, radius] {
        picture.line(at(side, y - 1.5 * step), at(side, y + 1.5 * step), 1.0, Role::Label);
    }
    picture.text(at(0.0, y - 5.5 * step), &plan.labels.size, Anchor::Middle, Role::Ink);
    let right = radius + plan.wall_mm + 3.0 * step;
    picture.text(at(right, plan.height_mm - 2.5 * step), &plan.labels.far_end, Anchor::Left, Role::Label);
    picture.text(at(right, 4.0 * step), &plan.labels.button_end, Anchor::Left, Role::Label);
    // A low collar has no room for words of its own above those of the far end.
    if plan.collar_mm > 8.0 * step {
        picture.text(at(right, plan.height_mm + plan.collar_mm / 2.0), &plan.labels.collar, Anchor::Left, Role::Label);
    }
}

/// The room to the wall and above the tree, written where it is.
fn rooms(picture: &mut Picture, plan: &Plan) {
    let (radius, step) = (plan.radius(), plan.step());
    if let (Some(room), Some(diameter)) = (&plan.wall, plan.tree_diameter_mm) {
        let y = plan.tree_height_mm.unwrap_or(plan.height_mm) * 0.55;
        measure(picture, at(diameter / 2.0, y), at(radius, y), room.role);
        let beside = at(radius + plan.wall_mm + 3.0 * step, y);
        written(picture, &room.words, room.role, beside, step);
    }
    if let (Some(room), Some(height)) = (&plan.above, plan.tree_height_mm) {
        let x = 0.0;
        measure(picture, at(x, height), at(x, plan.rim()), room.role);
        written(picture, &room.words, room.role, at(x + 2.0 * step, (height + plan.rim()) / 2.0), step);
    }
}

/// A line between two places, with a cross stroke at each end.
fn measure(picture: &mut Picture, from: super::primitive::Point, to: super::primitive::Point, role: Role) {
    picture.line(from, to, 1.6, role);
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let length = dx.hypot(dy).max(1e-9);
    let (ux, uy) = (-dy / length * 1.5, dx / length * 1.5);
    for end in [from, to] {
        picture.line(at(end.x - ux, end.y - uy), at(end.x + ux, end.y + uy), 1.6, role);
    }
}

/// The words of a room, behind the mark of its weight where there is too little of it.
fn written(picture: &mut Picture, words: &str, role: Role, place: super::primitive::Point, step: f64) {
    let half = 2.2 * step;
    let shift = match role {
        Role::Caution => {
            let corners = vec![at(place.x, place.y - half), at(place.x + 2.0 * half, place.y - half), at(place.x + half, place.y + half)];
            picture.area(corners, Role::Caution);
            2.0 * half + 1.5 * step
        }
        Role::Stop => {
            let corner = |n: u8| {
                let (sin, cos) = (std::f64::consts::TAU * (f64::from(n) + 0.5) / 8.0).sin_cos();
                at(place.x + half + half * cos, place.y + half * sin)
            };
            picture.area((0..8).map(corner).collect(), Role::Stop);
            2.0 * half + 1.5 * step
        }
        _ => 0.0,
    };
    picture.text(at(place.x + shift, place.y), words, Anchor::Left, role);
}

/// The flask from above.
#[must_use]
pub fn from_above(plan: &Plan) -> Picture {
    let (radius, step) = (plan.radius(), plan.inner_mm.max(0.01) / 100.0);
    let side = radius + plan.wall_mm.max(step * 0.6);
    let mut picture = Picture::new(at(-side - 2.0 * step, -side - 2.0 * step), at(side + 2.0 * step, side + 2.0 * step));
    if !plan.bare {
        picture.circle(at(0.0, 0.0), side, Some(Role::Steel), None);
        picture.circle(at(0.0, 0.0), radius, Some(Role::Mould), None);
    }
    let narrow = plan.wall.as_ref().map(|room| room.role).filter(|role| *role != Role::Ink);
    if let Some(diameter) = plan.tree_diameter_mm {
        picture.circle(at(0.0, 0.0), diameter / 2.0, None, Some(narrow.unwrap_or(Role::Label)));
    }
    if let Some(trunk) = &plan.trunk {
        tree(&mut picture, (trunk, plan.trunk_starves), &plan.pieces, Sight::Above(plan.turn_deg));
    }
    picture.embrace();
    tight(&mut picture, plan, Sight::Above(plan.turn_deg));
    picture
}

#[cfg(test)]
mod tests {
    use super::super::primitive::Primitive;
    use super::super::tree::facets_of;
    use super::*;
    use crate::calc::stand::{Form, Hang, stand};

    fn plan() -> Plan {
        let trunk = Trunk { dome_mm: 12.0, diameter_mm: 8.0, length_mm: 60.0 };
        let form = Form::Sides([12.0, 8.0, 4.0]);
        let hang = |at: u8| Hang {
            joint_mm: 40.0,
            around_deg: 45.0 * f64::from(at),
            angle_deg: 45.0,
            twist_deg: 0.0,
            feed_diameter_mm: 2.0,
            feed_length_mm: 10.0,
            form: form.clone(),
        };
        let standing = stand(&trunk, &(0..8).map(hang).collect::<Vec<_>>());
        let pieces = standing.pieces.iter().map(|solid| Shown {
            order: 1,
            facets: facets_of(solid),
            feed: [[0.0, 0.0, 40.0], [8.0, 0.0, 47.0]],
            feed_diameter_mm: 2.0,
            starved: false,
            chosen: false,
        });
        Plan {
            inner_mm: 89.0,
            height_mm: 102.0,
            collar_mm: 20.0,
            wall_mm: 1.6,
            dome_cm3: 15.0,
            perforated: true,
            bare: false,
            trunk: Some(trunk),
            trunk_starves: false,
            pieces: pieces.collect(),
            turn_deg: 20.0,
            tight: vec![Tight { places: [[10.0, 0.0, 40.0], [12.0, 0.0, 41.0]], words: "2 mm".to_owned(), role: Role::Caution }],
            dome_mm: 12.0,
            tree_diameter_mm: Some(60.0),
            tree_height_mm: Some(85.0),
            wall: Some(Room { words: "5 mm".to_owned(), mm: 5.0, role: Role::Caution }),
            above: Some(Room { words: "37 mm".to_owned(), mm: 37.0, role: Role::Ink }),
            labels: Labels { size: "Ø 89 × 102".to_owned(), ..Labels::default() },
        }
    }

    #[test]
    fn a_dome_of_known_volume_has_its_foot() {
        // A hemisphere of radius 20: its foot is as wide as it is high.
        let cm3 = 2.0 / 3.0 * std::f64::consts::PI * 8.0;
        assert!((foot_of_dome(cm3, 20.0, 100.0) - 20.0).abs() < 1e-9);
        assert!((foot_of_dome(cm3, 20.0, 15.0) - 15.0).abs() < 1e-9);
        assert!(foot_of_dome(0.0, 20.0, 15.0).abs() < 1e-9);
    }

    #[test]
    fn everything_stands_in_the_picture() {
        for picture in [section(&plan()), from_above(&plan())] {
            let inside = |point: &super::super::primitive::Point| {
                point.x >= picture.from.x && point.x <= picture.to.x && point.y >= picture.from.y && point.y <= picture.to.y
            };
            for primitive in &picture.primitives {
                match primitive {
                    Primitive::Line { from, to, .. } => assert!(inside(from) && inside(to), "{primitive:?}"),
                    Primitive::Polygon { corners, .. } => assert!(corners.iter().all(inside), "{primitive:?}"),
                    Primitive::Facets { corners, .. } => assert!(corners.iter().flatten().all(inside), "{primitive:?}"),
                    Primitive::Circle { centre, .. } => assert!(inside(centre), "{primitive:?}"),
                    Primitive::Text { place, .. } => assert!(inside(place), "{primitive:?}"),
                }
            }
        }
    }

    #[test]
    fn tight_room_has_its_mark_and_its_words() {
        let picture = section(&plan());
        let marked = |primitive: &Primitive| matches!(primitive, Primitive::Polygon { fill: Role::Caution, .. });
        let said = |primitive: &Primitive| matches!(primitive, Primitive::Text { words, role: Role::Caution, .. } if words == "5 mm");
        assert!(picture.primitives.iter().any(marked) && picture.primitives.iter().any(said));
    }

    #[test]
    fn every_piece_has_its_shape_in_both_views() {
        let shapes = |picture: &Picture| {
            picture.primitives.iter().filter(|one| matches!(one, Primitive::Facets { fill: Role::Piece(1), .. })).count()
        };
        assert_eq!((shapes(&section(&plan())), shapes(&from_above(&plan()))), (8, 8));
    }
}
