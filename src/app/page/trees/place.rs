//! Changes of where single pieces hang.

use crate::calc::places::Spot;
use crate::job::{LineId, Placed, Tree};
use crate::quantity::Finite;

/// Changes the place of one piece; one that says nothing is none.
pub fn place(tree: &mut Tree, (line, number): (LineId, u32), change: impl FnOnce(&mut Placed)) {
    let at = tree.placed.iter().position(|placed| (placed.line, placed.number) == (line, number));
    let at = at.unwrap_or_else(|| {
        tree.placed.push(Placed { line, number, ..Placed::default() });
        tree.placed.len() - 1
    });
    change(&mut tree.placed[at]);
    if tree.placed[at] == (Placed { line, number, ..Placed::default() }) {
        tree.placed.remove(at);
    }
}

/// Holds every piece where it is drawn, so that the others stay when one of them is moved.
pub fn hold(tree: &mut Tree, spots: &[Spot]) {
    for spot in spots.iter().filter(|spot| !spot.said.place()) {
        place(tree, (spot.line, spot.number), |placed| {
            if !spot.said.height {
                (placed.tier, placed.height_mm) = (spot.tier, Finite::new(rounded(spot.height_mm, 0.1)).filter(|_| spot.tier.is_none()));
            }
            placed.around_deg = Finite::new(rounded(spot.around_deg, 0.1));
        });
    }
}

/// A number to so much: nobody hangs wax to the thousandth.
#[must_use]
pub fn rounded(value: f64, to: f64) -> f64 {
    let tenths = (value / to).round();
    // Dividing by ten keeps 12.3 what it is; multiplying by 0.1 does not.
    tenths / (1.0 / to).round()
}

/// A direction from 0 to 360 degrees.
#[must_use]
pub fn direction(degrees: f64) -> f64 {
    rounded(degrees.rem_euclid(360.0), 0.1) % 360.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::places::Said;

    #[test]
    fn a_place_comes_and_goes() {
        let mut tree = Tree::default();
        place(&mut tree, (LineId(1), 2), |placed| placed.tier = Some(3));
        place(&mut tree, (LineId(1), 2), |placed| placed.turn_deg = Finite::new(90.0));
        assert_eq!((tree.placed.len(), tree.placed[0].tier), (1, Some(3)));
        place(&mut tree, (LineId(1), 2), |placed| (placed.tier, placed.turn_deg) = (None, None));
        assert!(tree.placed.is_empty());
    }

    #[test]
    fn held_pieces_say_where_they_are() {
        let spot = |number, said| Spot {
            line: LineId(1),
            number,
            row: 1,
            pattern: None,
            run: None,
            tier: Some(2),
            height_mm: 20.0,
            around_deg: 33.333,
            turn_deg: 0.0,
            said: Said { height: said, around: said, run: true },
        };
        let mut tree = Tree::default();
        hold(&mut tree, &[spot(1, true), spot(2, false)]);
        assert_eq!(tree.placed.len(), 1);
        let held = &tree.placed[0];
        assert_eq!((held.number, held.tier, held.height_mm, held.around_deg), (2, Some(2), None, Finite::new(33.3)));
    }

    #[test]
    fn directions_go_once_round() {
        assert!((direction(-10.0) - 350.0).abs() < 1e-9 && direction(360.0).abs() < 1e-9 && direction(359.99).abs() < 1e-9);
        assert!((rounded(12.34, 0.1) - 12.3).abs() < 1e-12);
    }
}
