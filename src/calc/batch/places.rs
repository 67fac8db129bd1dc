//! How many pieces of one size a tree takes in a flask: tiers times pieces around.
//!
//! An estimate for planning, and a careful one: every piece hangs at the end of the usual feed, all tiers alike. A piece counts as a body that
//! fills an ellipse of its box. A search that lays out the very pieces may find room for more.

/// More pieces than anybody hangs in a tier, or tiers on a tree.
const MOST: u32 = 60;

/// The usual tree, in mm and degrees.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct UsualTree {
    /// Diameter of the main sprue.
    pub main_mm: f64,
    /// Diameter of a feed.
    pub feed_diameter_mm: f64,
    /// Length of a feed.
    pub feed_mm: f64,
    /// Angle of a feed to the main sprue.
    pub angle_deg: f64,
    /// Room between two pieces.
    pub gap_mm: f64,
}

/// The inside of a flask, in mm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Inside {
    /// Its diameter.
    pub diameter_mm: f64,
    /// Its height.
    pub height_mm: f64,
    /// How high the base's dome stands in it.
    pub dome_mm: f64,
    /// Room above the tree.
    pub top_mm: f64,
}

/// A piece as the box around it, and what it asks for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Body {
    /// Along the feed, across it, and the third way, in mm.
    pub sides_mm: [f64; 3],
    /// Somebody said how it hangs. A file's box may hang with its long side across.
    pub hang_known: bool,
    /// Room it needs to the wall in mm.
    pub wall_mm: f64,
}

impl Body {
    /// The ways it may hang that are to be allowed for: as a tree's own reach does.
    fn ways(&self, tree: &UsualTree) -> Vec<[f64; 3]> {
        let [along, across, deep] = self.sides_mm;
        let steep_or_flat = !(27.0..=63.0).contains(&tree.angle_deg.abs());
        let turned = !self.hang_known && steep_or_flat;
        std::iter::once([along, across, deep]).chain(turned.then_some([across, along, deep])).collect()
    }
}

/// How many pieces of this box a tree takes in this flask; none where one does not go in.
#[must_use]
pub fn places(tree: &UsualTree, inside: &Inside, piece: &Body) -> u32 {
    let of = |sides| around(tree, sides) * tiers(tree, inside, sides);
    let goes_in = |sides| 2.0 * (reach(tree, sides) + piece.wall_mm) <= inside.diameter_mm;
    piece.ways(tree).into_iter().map(|sides| if goes_in(sides) { of(sides) } else { 0 }).min().unwrap_or(0)
}

/// The least inside, diameter and height in mm, that takes one piece of this box under this dome.
#[must_use]
pub fn needs_mm(tree: &UsualTree, inside: &Inside, piece: &Body) -> [f64; 2] {
    let of = |sides: [f64; 3]| {
        let wide = 2.0 * (reach(tree, sides) + piece.wall_mm);
        let [low, high] = heights(tree, sides);
        [wide, inside.dome_mm + inside.top_mm + high - low.min(0.0)]
    };
    let most = |a: [f64; 2], b: [f64; 2]| [a[0].max(b[0]), a[1].max(b[1])];
    piece.ways(tree).into_iter().map(of).fold([0.0, 0.0], most)
}

/// How far a piece of this box rises at most over the joint of its feed, in mm.
#[must_use]
pub fn rise(tree: &UsualTree, piece: &Body) -> f64 {
    piece.ways(tree).into_iter().map(|sides| heights(tree, sides)[1]).fold(0.0, f64::max)
}

/// How many hang side by side in a tier. Two neighbours are parted by flat sides that meet at the axis; they are nearest at their inner ends.
fn around(tree: &UsualTree, [_, across, deep]: [f64; 3]) -> u32 {
    let (sin, cos) = tree.angle_deg.to_radians().sin_cos();
    // Half way between the joint with its feed and the inner corner of its box.
    let inner = (tree.main_mm / 2.0 + tree.feed_mm * sin.abs() - across / 4.0 * cos.abs()).max(tree.main_mm / 2.0);
    let room = |many: u32| {
        let (sin, cos) = (std::f64::consts::PI / f64::from(many)).sin_cos();
        2.0 * inner * sin - deep * cos
    };
    (2..=MOST).take_while(|many| room(*many) >= tree.gap_mm).last().unwrap_or(1)
}

/// How many tiers stand one over the other.
fn tiers(tree: &UsualTree, inside: &Inside, sides: [f64; 3]) -> u32 {
    let [low, high] = heights(tree, sides);
    let free = inside.height_mm - inside.dome_mm - inside.top_mm - (high - low.min(0.0));
    if free < 0.0 {
        return 0;
    }
    let [along, across, _] = sides;
    let (sin, cos) = tree.angle_deg.to_radians().sin_cos();
    // Over one another, or beside one another along their feeds, whichever takes less.
    let over = along * cos.abs() + across * sin.abs() + tree.gap_mm;
    let beside = if sin.abs() > 1e-6 { (across + tree.gap_mm) / sin.abs() } else { f64::INFINITY };
    (1..MOST).take_while(|more| f64::from(*more) * over.min(beside) <= free).last().unwrap_or(0) + 1
}

/// How far the farthest corner of its box reaches from the axis, as the rule of a tree's reach says.
fn reach(tree: &UsualTree, [along, across, deep]: [f64; 3]) -> f64 {
    let (sin, cos) = tree.angle_deg.to_radians().sin_cos();
    let out = tree.main_mm / 2.0 + (tree.feed_mm + along) * sin.abs() + across / 2.0 * cos.abs();
    out.hypot(deep / 2.0)
}

/// How far its lowest and highest corners are above the joint of its feed.
fn heights(tree: &UsualTree, [along, across, _]: [f64; 3]) -> [f64; 2] {
    let (sin, cos) = tree.angle_deg.to_radians().sin_cos();
    let half = across / 2.0 * sin.abs();
    [tree.feed_mm * cos.abs() - half, (tree.feed_mm + along) * cos.abs() + half]
}

#[cfg(test)]
mod tests {
    use super::*;

    const TREE: UsualTree = UsualTree { main_mm: 8.0, feed_diameter_mm: 3.0, feed_mm: 10.0, angle_deg: 45.0, gap_mm: 3.0 };
    const INSIDE: Inside = Inside { diameter_mm: 88.9, height_mm: 101.6, dome_mm: 17.8, top_mm: 12.0 };

    fn of(sides_mm: [f64; 3]) -> Body {
        Body { sides_mm, hang_known: true, wall_mm: 6.0 }
    }

    #[test]
    fn by_hand_for_rings() {
        // Inner ends at 4 + 10·sin 45° − 22/4·cos 45° = 7.18 mm. Six: 2·7.18·sin 30° − 4·cos 30° = 3.72 ≥ 3; seven: 6.23 − 3.60 = 2.63.
        assert_eq!(around(&TREE, [22.0, 22.0, 4.0]), 6);
        // One takes 30.41 + 0.71 of 71.8 mm; the next one 25/sin 45° or 34.1 more.
        assert_eq!(tiers(&TREE, &INSIDE, [22.0, 22.0, 4.0]), 2);
        assert_eq!(places(&TREE, &INSIDE, &of([22.0, 22.0, 4.0])), 12);
    }

    #[test]
    fn what_does_not_go_in_has_no_place() {
        // It reaches to 4 + (10 + 40)·sin 45° + 5·cos 45° = 42.9 mm, and 6 mm are wanted beside it.
        assert_eq!(places(&TREE, &INSIDE, &of([40.0, 10.0, 4.0])), 0);
        assert_eq!(places(&TREE, &Inside { height_mm: 60.0, ..INSIDE }, &of([22.0, 22.0, 4.0])), 0);
        let [wide, high] = needs_mm(&TREE, &INSIDE, &of([40.0, 10.0, 4.0]));
        assert!((wide - 2.0 * (42.890_87_f64.hypot(2.0) + 6.0)).abs() < 0.01, "{wide}");
        assert!((high - (29.8 + 38.89)).abs() < 0.01, "{high}");
        assert!(places(&TREE, &Inside { diameter_mm: wide + 0.01, height_mm: high + 0.01, ..INSIDE }, &of([40.0, 10.0, 4.0])) > 0);
    }

    #[test]
    fn a_wider_a_higher_or_a_smaller_one_never_has_fewer() {
        let at = |diameter_mm: f64, height_mm: f64, side: f64| {
            places(&TREE, &Inside { diameter_mm, height_mm, ..INSIDE }, &of([side, side, 0.4 * side]))
        };
        for step in 0..40 {
            let more = f64::from(step);
            let here = at(60.0 + more, 70.0 + 3.0 * more, 20.0);
            assert!(at(61.0 + more, 70.0 + 3.0 * more, 20.0) >= here);
            assert!(at(60.0 + more, 73.0 + 3.0 * more, 20.0) >= here);
            assert!(at(60.0 + more, 70.0 + 3.0 * more, 19.5) >= here);
        }
        assert!(at(99.0, 180.0, 20.0) > at(99.0, 90.0, 20.0), "something grows at all");
    }

    #[test]
    fn a_file_may_hang_with_its_long_side_across_a_steep_feed() {
        let steep = UsualTree { angle_deg: 20.0, ..TREE };
        let wide = Inside { diameter_mm: 90.0, ..INSIDE };
        let known = Body { hang_known: true, ..of([30.0, 8.0, 4.0]) };
        assert!(places(&steep, &wide, &Body { hang_known: false, ..known }) < places(&steep, &wide, &known));
    }
}
