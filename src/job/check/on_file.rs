//! What is noted of a pattern's file: its measures, places without a sprue, and where the sprue stands.

use super::mending::{Mending, range};
use crate::job::{KeptMeasures, PatternFile, Place};
use crate::quantity::Finite;

impl Mending {
    pub fn on_file(&mut self, place: Place, file: &mut PatternFile) {
        if let Some(kept) = &mut file.kept {
            self.kept(place, kept);
        }
        file.no_go.retain_mut(|no_go| {
            let whole = no_go.at.is_some() && no_go.radius.is_some();
            self.three(place, "file.no_go.at", &mut no_go.at, range::FILE_PLACE);
            self.number(place, "file.no_go.radius", &mut no_go.radius, range::FILE_LENGTH);
            // A place that is nowhere, or of no size, keeps no sprue away.
            !whole || (no_go.at.is_some() && no_go.radius.is_some())
        });
        if let Some(sprue) = &mut file.sprue {
            self.three(place, "file.sprue.at", &mut sprue.at, range::FILE_PLACE);
            self.number(place, "file.sprue.ball", &mut sprue.ball, range::FILE_LENGTH);
            self.number(place, "file.sprue.modulus", &mut sprue.modulus, range::FILE_LENGTH);
        }
    }

    fn kept(&mut self, place: Place, kept: &mut KeptMeasures) {
        self.number(place, "file.kept.volume", &mut kept.volume, range::FILE_VOLUME);
        self.number(place, "file.kept.fills", &mut kept.fills, range::FILE_VOLUME);
        self.number(place, "file.kept.void", &mut kept.void, range::FILE_VOLUME);
        self.number(place, "file.kept.inner", &mut kept.inner, range::FILE_VOLUME);
        self.number(place, "file.kept.area", &mut kept.area, range::FILE_AREA);
        self.three(place, "file.kept.size", &mut kept.size, range::FILE_LENGTH);
        self.three(place, "file.kept.walls", &mut kept.walls, range::FILE_LENGTH);
    }

    /// Blanks three numbers where one of them is outside its range.
    fn three(&mut self, place: Place, field: &'static str, numbers: &mut Option<[Finite; 3]>, range: (f64, f64)) {
        let Some(three) = *numbers else { return };
        for one in three {
            let mut one = Some(one);
            self.number(place, field, &mut one, range);
            if one.is_none() {
                *numbers = None;
                return;
            }
        }
    }
}
