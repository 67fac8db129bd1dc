//! The form of a pattern as it hangs on its sprue: a solid around its file's shape, or a box of its outer size.

use std::collections::BTreeMap;
use std::sync::Arc;

use super::pass::Pass;
use super::pattern::PatternFigures;
use super::pattern_file::print_mm;
use super::setting::{PatternRun, PatternShape};
use super::solid::Point;
use super::stand::Form;
use crate::job::{Pattern, PatternFile, PatternId};
use crate::quantity::Finite;

/// The form of a pattern.
#[derive(Debug, Clone, PartialEq)]
pub struct PatternForm {
    /// What is kept clear of.
    pub form: Form,
    /// What is drawn, where a file says more than its box.
    pub shape: Option<(Arc<PatternShape>, FileFrame)>,
    /// Somebody said how it hangs: its measures along the sprue were typed in, or the place of the sprue was chosen on its file.
    pub hang_known: bool,
}

/// How a file's axes lie when the pattern hangs.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FileFrame {
    /// The axis of the file, and which way along it, that runs along the sprue, across it, and the third way.
    axes: [(usize, f64); 3],
    /// Where the sprue is joined, in the file's unit.
    foot: Point,
    /// Millimetres of the print in one unit of the file.
    mm: f64,
}

impl FileFrame {
    /// The frame of a file. With a place for the sprue, that lies on the side it is nearest to; otherwise the longest side runs along the
    /// sprue, which is joined in the middle of its end.
    fn new(shape: &PatternShape, file: &PatternFile) -> Option<Self> {
        let ends = |axis: usize| {
            let values = shape.around.iter().map(move |point| point[axis]);
            values.fold([f64::INFINITY, f64::NEG_INFINITY], |[low, high], value| [low.min(value), high.max(value)])
        };
        let bounds = [ends(0), ends(1), ends(2)];
        let side = |axis: &usize| bounds[*axis][1] - bounds[*axis][0];
        let longest_of = |axes: &[usize]| axes.iter().copied().max_by(|a, b| side(a).total_cmp(&side(b)).then(b.cmp(a)));
        let (along, sign, foot) = match file.sprue.as_ref().and_then(|sprue| sprue.at) {
            Some(at) => {
                let at = at.map(Finite::get);
                let depths = (0..3).flat_map(|axis| [(axis, 1.0, at[axis] - bounds[axis][0]), (axis, -1.0, bounds[axis][1] - at[axis])]);
                let (axis, sign, _) = depths.min_by(|a, b| a.2.abs().total_cmp(&b.2.abs()))?;
                (axis, sign, at)
            }
            None => {
                let axis = longest_of(&[0, 1, 2])?;
                let mut foot = bounds.map(|[low, high]| f64::midpoint(low, high));
                foot[axis] = bounds[axis][0];
                (axis, 1.0, foot)
            }
        };
        let others = [(along + 1) % 3, (along + 2) % 3];
        let across = longest_of(&others)?;
        let deep = 3 - along - across;
        // The third way is the one that keeps left and right.
        let even = (along + 1) % 3 == across;
        let axes = [(along, sign), (across, 1.0), (deep, if even { sign } else { -sign })];
        Some(Self { axes, foot, mm: print_mm(file) })
    }

    /// A point of the file: along the sprue from where it is joined, across it, and the third way, in mm.
    #[must_use]
    pub fn place(&self, point: Point) -> Point {
        self.axes.map(|(axis, sign)| sign * (point[axis] - self.foot[axis]) * self.mm)
    }
}

impl Pass<'_> {
    /// The forms of the patterns, where they are known.
    pub(super) fn forms(&self, patterns: &[PatternFigures]) -> BTreeMap<PatternId, PatternForm> {
        let mut forms = BTreeMap::new();
        for pattern in &self.job.patterns {
            let figures = patterns.binary_search_by_key(&pattern.id, |figures| figures.id).ok().map(|at| &patterns[at]);
            if let Some(form) = figures.and_then(|figures| self.form(pattern, figures)) {
                forms.insert(pattern.id, form);
            }
        }
        forms
    }

    fn form(&self, pattern: &Pattern, figures: &PatternFigures) -> Option<PatternForm> {
        let sides = figures.extents.map(|sides| sides.map(|side| self.book.number(side)));
        let sides = match sides {
            Some([Some(along), Some(across), Some(deep)]) => [along, across, deep],
            _ => return None,
        };
        let shape = pattern.file.as_ref().and_then(|file| {
            let PatternRun::Measured(measure) = self.runs.patterns.get(&pattern.id)? else { return None };
            // A file that changed since it was taken on is not the one the figures are of.
            let same = file.hash.as_ref().is_none_or(|hash| *hash == measure.hash);
            let shape = measure.shape.as_ref().filter(|_| same)?;
            Some((Arc::clone(shape), FileFrame::new(shape, file)?, file.sprue.as_ref().is_some_and(|sprue| sprue.at.is_some())))
        });
        // What was typed in rules over the file.
        let Some((shape, frame, said)) = shape.filter(|_| pattern.extents_mm.is_none()) else {
            return Some(PatternForm { form: Form::Sides(sides), shape: None, hang_known: figures.hang_known });
        };
        let corners = shape.around.iter().map(|point| frame.place(*point)).collect();
        Some(PatternForm { form: Form::Hull(corners), shape: Some((shape, frame)), hang_known: said })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::SpruePoint;

    /// A box of 10 × 4 × 6 whose corner lies at (1, 2, 3).
    fn shape() -> PatternShape {
        let corner = |n: u8| {
            [(n & 1, 10.0, 1.0), (n & 2, 4.0, 2.0), (n & 4, 6.0, 3.0)].map(|(bit, side, low)| if bit > 0 { low + side } else { low })
        };
        PatternShape { around: (0..8).map(corner).collect(), triangles: Vec::new() }
    }

    fn near(is: Point, wanted: Point) -> bool {
        (0..3).all(|k| (is[k] - wanted[k]).abs() < 1e-12)
    }

    #[test]
    fn the_longest_side_hangs_along_the_sprue() {
        let frame = FileFrame::new(&shape(), &PatternFile { scale: Finite::new(2.0), ..PatternFile::default() }).unwrap();
        assert!(near(frame.place([1.0, 4.0, 6.0]), [0.0; 3]));
        // x along, z across; the third way against y keeps left and right.
        assert!(near(frame.place([11.0, 5.0, 8.0]), [20.0, 4.0, -2.0]));
    }

    #[test]
    fn a_chosen_place_for_the_sprue_says_how_it_hangs() {
        let at = [6.0, 5.9, 4.0].map(|part| Finite::new(part).unwrap());
        let sprue = SpruePoint { at: Some(at), ..SpruePoint::default() };
        let frame = FileFrame::new(&shape(), &PatternFile { sprue: Some(sprue), ..PatternFile::default() }).unwrap();
        // Nearest to the far side in y: the sprue comes from there, x lies across.
        assert!(near(frame.place([6.0, 5.9, 4.0]), [0.0; 3]));
        assert!(near(frame.place([7.0, 4.9, 5.0]), [1.0, 1.0, 1.0]));
    }

    #[test]
    fn left_and_right_stay_what_they_are() {
        for at in [[1.0, 4.0, 6.0], [11.0, 4.0, 6.0], [5.0, 2.0, 5.0], [5.0, 6.0, 5.0], [5.0, 4.0, 3.0], [5.0, 4.0, 9.0]] {
            let sprue = SpruePoint { at: Some(at.map(|part| Finite::new(part).unwrap())), ..SpruePoint::default() };
            let frame = FileFrame::new(&shape(), &PatternFile { sprue: Some(sprue), ..PatternFile::default() }).unwrap();
            let [o, x, y, z] = [[0.0; 3], [1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]].map(|point| frame.place(point));
            let way = |point: Point| [0, 1, 2].map(|k| point[k] - o[k]);
            let (x, y, z) = (way(x), way(y), way(z));
            let turning = x[0] * (y[1] * z[2] - y[2] * z[1]) - x[1] * (y[0] * z[2] - y[2] * z[0]) + x[2] * (y[0] * z[1] - y[1] * z[0]);
            assert!((turning - 1.0).abs() < 1e-12, "{at:?}: {turning}");
        }
    }
}
