//! Where the pieces of a tree stand. Tier and direction are as the caster said them; what was not said is spread evenly.

use std::collections::BTreeMap;

/// Pieces that are drawn at most: more would only be a cloud.
pub const MOST: usize = 300;
/// Pieces to a tier where nobody said otherwise.
const TO_A_TIER: usize = 6;

/// A piece to be hung.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Piece {
    /// The place of its order in the key.
    pub order: usize,
    /// Its tier from 1 at the button's end, where it was said.
    pub tier: Option<u32>,
    /// Direction around the main sprue in degrees, where it was said.
    pub around_deg: Option<f64>,
    /// Along the sprue and across it, where they are known.
    pub size_mm: Option<[f64; 2]>,
}

/// The trunk and its feed sprues.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Trunk {
    /// Height of the dome it stands on.
    pub dome_mm: f64,
    /// Diameter of the main sprue.
    pub diameter_mm: f64,
    /// Its length above the dome.
    pub length_mm: f64,
    /// Length of a feed sprue.
    pub feed_mm: f64,
    /// Its angle to the main sprue.
    pub angle_deg: f64,
    /// Outer diameter of the tree, where it is known.
    pub tree_diameter_mm: Option<f64>,
    /// Its height over the base's rim, where it is known.
    pub tree_height_mm: Option<f64>,
}

/// A piece in its place.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Placed {
    /// The place of its order in the key.
    pub order: usize,
    /// To the right in the section.
    pub x: f64,
    /// Towards the eye in the section.
    pub z: f64,
    /// Over the base's rim.
    pub height: f64,
    /// Where its sprue leaves the main sprue, over the base's rim.
    pub joint: f64,
    /// Its radius as a disc.
    pub radius: f64,
}

/// Hangs pieces on a trunk.
#[must_use]
pub fn arrange(trunk: &Trunk, pieces: &[Piece]) -> Vec<Placed> {
    let tiers = tiers(pieces);
    // Tiers without a piece keep their place, so that what is said to be on tier 3 stands on the third.
    let count = tiers.keys().copied().max().unwrap_or(1).max(1);
    let mut placed = Vec::with_capacity(pieces.len().min(MOST));
    for (tier, here) in &tiers {
        let joint = trunk.dome_mm + trunk.length_mm * f64::from(*tier) / f64::from(count);
        let free = here.iter().filter(|piece| piece.around_deg.is_none()).count();
        let mut next = 0_u32;
        for piece in here {
            let degrees = piece.around_deg.unwrap_or_else(|| {
                let turn = 360.0 * f64::from(next) / f64::from(u32::try_from(free).unwrap_or(1).max(1));
                next += 1;
                // Every other tier stands in the gaps of the one below.
                turn + if tier % 2 == 0 { 180.0 / f64::from(u32::try_from(free).unwrap_or(1).max(1)) } else { 0.0 }
            });
            placed.push(place(trunk, piece, joint, degrees));
        }
    }
    placed
}

/// Pieces by tier; those without one fill tiers of their own, from the button's end.
fn tiers(pieces: &[Piece]) -> BTreeMap<u32, Vec<Piece>> {
    let mut tiers: BTreeMap<u32, Vec<Piece>> = BTreeMap::new();
    let drawn = &pieces[..pieces.len().min(MOST)];
    for piece in drawn {
        if let Some(tier) = piece.tier {
            tiers.entry(tier.clamp(1, 100)).or_default().push(*piece);
        }
    }
    let said = tiers.keys().copied().max().unwrap_or(0);
    let rest: Vec<Piece> = drawn.iter().filter(|piece| piece.tier.is_none()).copied().collect();
    for (tier, here) in (said + 1..).zip(rest.chunks(TO_A_TIER)) {
        tiers.insert(tier, here.to_vec());
    }
    tiers
}

fn place(trunk: &Trunk, piece: &Piece, joint: f64, degrees: f64) -> Placed {
    let [along, across] = piece.size_mm.unwrap_or_else(|| {
        let side = trunk.tree_diameter_mm.unwrap_or(40.0) / 5.0;
        [side, side]
    });
    let radius = (along + across) / 4.0;
    let (sin, cos) = trunk.angle_deg.to_radians().sin_cos();
    let far = trunk.feed_mm + along / 2.0;
    let (mut out, mut height) = (trunk.diameter_mm / 2.0 + far * sin.abs(), joint + far * cos);
    // The measured or computed outline rules over the sketch of single pieces.
    if let Some(diameter) = trunk.tree_diameter_mm {
        out = out.min((diameter / 2.0 - radius).max(0.0));
    }
    if let Some(top) = trunk.tree_height_mm {
        height = height.min(top - radius);
    }
    let (z, x) = degrees.to_radians().sin_cos();
    Placed { order: piece.order, x: out * x, z: out * z, height, joint: joint.min(height), radius }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn trunk() -> Trunk {
        Trunk {
            dome_mm: 10.0,
            diameter_mm: 8.0,
            length_mm: 60.0,
            feed_mm: 10.0,
            angle_deg: 45.0,
            tree_diameter_mm: Some(50.0),
            tree_height_mm: Some(85.0),
        }
    }

    fn piece(tier: Option<u32>, around_deg: Option<f64>) -> Piece {
        Piece { order: 0, tier, around_deg, size_mm: Some([12.0, 8.0]) }
    }

    #[test]
    fn said_places_are_kept() {
        let placed = arrange(&trunk(), &[piece(Some(1), Some(0.0)), piece(Some(2), Some(90.0))]);
        assert!(placed[0].x > 10.0 && placed[0].z.abs() < 1e-9);
        assert!(placed[1].z > 10.0 && placed[1].x.abs() < 1e-9);
        assert!((placed[0].joint - 40.0).abs() < 1e-9 && (placed[1].joint - 70.0).abs() < 1e-9);
    }

    #[test]
    fn unsaid_places_are_spread_and_stay_in_the_outline() {
        let placed = arrange(&trunk(), &[piece(None, None); 20]);
        assert_eq!(placed.len(), 20);
        for one in &placed {
            assert!(one.x.hypot(one.z) + one.radius <= 25.0 + 1e-9);
            assert!(one.height + one.radius <= 85.0 + 1e-9);
        }
        let apart = |a: &Placed, b: &Placed| (a.x - b.x).hypot(a.z - b.z).hypot(a.height - b.height);
        assert!(placed.iter().enumerate().all(|(n, a)| placed.iter().skip(n + 1).all(|b| apart(a, b) > 1.0)));
    }

    #[test]
    fn no_more_than_can_be_told_apart() {
        assert_eq!(arrange(&trunk(), &vec![piece(None, None); 5000]).len(), MOST);
    }
}
