//! The rows to key in.

use super::curve::Band;
use super::limits::{self, MOST_ROWS};
use super::merge::{TooMany, too_many};
use super::scale::HAIR;
use super::split::split;
use super::{Controller, ControllerError, Programme, Ramp, RampBy};

/// What is asked beside the programme.
#[derive(Debug, Clone, PartialEq)]
pub struct Wish {
    /// No set point goes over this true temperature, in °C; nothing where there is no ceiling.
    pub ceiling_c: Option<f64>,
    /// How far the steps of a ramp that is too slow for the controller may fall behind it, in K; infinite for as few steps as there can be.
    pub behind_k: f64,
    /// The kiln's bands, for the time of ramps without one; none where they are not known. Only the offer to merge segments needs them.
    pub bands: Vec<Band>,
}

/// A row to key in.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Row {
    /// The first and the last planned segment it stands for, from nought.
    pub segments: [usize; 2],
    /// The set point, in degrees of the controller's unit.
    pub set_point: i32,
    /// The ramp to it.
    pub ramp: Ramp,
    /// The hold, in min.
    pub hold_min: u32,
    /// The true temperature of the set point, in °C.
    pub true_c: f64,
    /// By how much that is above the planned target, in K. Nought for a row on the way to one.
    pub target_off_k: f64,
    /// By how much its ramp is longer than planned, in min; nothing where it is as fast as the kiln can.
    pub ramp_off_min: Option<f64>,
    /// Minutes of its hold that are planned as part of the next ramp, which is too slow for the controller.
    pub wait_min: f64,
    /// By how much its hold is longer than planned and to be waited, in min.
    pub hold_off_min: f64,
}

/// What had to be decided on the way. Segments are numbered from nought.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Note {
    /// A target over the ceiling was lowered, by so many K.
    Lowered {
        /// The segment.
        segment: usize,
        /// By how much.
        by_k: f64,
    },
    /// The controller has no word for as fast as it can; the fastest ramp it takes stands instead.
    NoFullSpeed {
        /// The segment.
        segment: usize,
    },
    /// The ramp is faster than the controller takes; its fastest stands instead.
    TooFast {
        /// The segment.
        segment: usize,
        /// As planned, in K/h.
        planned_k_h: f64,
        /// As keyed in, in K/h.
        most_k_h: f64,
    },
    /// The ramp is slower than the controller takes; it goes in steps.
    TooSlow {
        /// The segment.
        segment: usize,
        /// As planned, in K/h.
        planned_k_h: f64,
        /// So many steps.
        steps: usize,
        /// So far they fall behind at most, in K.
        behind_k: f64,
    },
    /// Neighbouring segments have one set point and became one row.
    Same {
        /// The first and the last.
        segments: [usize; 2],
    },
    /// A hold is longer than the controller takes and became several rows.
    LongHold {
        /// The segment.
        segment: usize,
        /// So many rows.
        rows: usize,
    },
}

/// The table to key in.
#[derive(Debug, Clone, PartialEq)]
pub struct Table {
    /// Its rows, also where there are too many.
    pub rows: Vec<Row>,
    /// What had to be decided.
    pub notes: Vec<Note>,
    /// Where there are more rows than the controller takes: by how many, and how there would be fewer.
    pub too_many: Option<TooMany>,
}

/// The table for a programme.
///
/// # Errors
/// Where a number makes no sense, and where holds would become thousands of rows.
pub fn key_in(programme: &Programme, controller: &Controller, wish: &Wish) -> Result<Table, ControllerError> {
    limits::programme(programme)?;
    limits::controller(controller)?;
    limits::bands(&wish.bands)?;
    if let Some(ceiling) = wish.ceiling_c {
        limits::temperature("Ceiling in °C", None, ceiling)?;
    }
    limits::within("Steps behind a ramp in K", None, wish.behind_k, 0.0, f64::INFINITY)?;
    let (rows, notes) = rows(programme, controller, wish)?;
    let too_many = too_many(programme, controller, wish, rows.len());
    Ok(Table { rows, notes, too_many })
}

/// Rows and notes of what is sound.
pub(super) fn rows(programme: &Programme, controller: &Controller, wish: &Wish) -> Result<(Vec<Row>, Vec<Note>), ControllerError> {
    let mut keying = Keying { controller, wish, drafts: Vec::new(), notes: Vec::new(), at_c: programme.start_c };
    let mut from_c = programme.start_c;
    for (number, segment) in programme.segments.iter().enumerate() {
        let set = keying.set_point(number, segment.target_c);
        let ramp_min = segment.ramp_min.filter(|minutes| *minutes > 0.0);
        keying.segment(number, set, ramp_min, (segment.target_c - from_c).abs());
        if let Some(draft) = keying.drafts.last_mut() {
            draft.hold_min += segment.hold_min;
            draft.target_off_k = controller.true_c(set) - segment.target_c;
        }
        from_c = segment.target_c;
    }
    keying.finish()
}

/// A row before its hold is rounded.
#[derive(Debug, Clone, Copy)]
pub(super) struct Draft {
    pub segments: [usize; 2],
    pub set: i64,
    pub ramp: Ramp,
    pub target_off_k: f64,
    pub ramp_off_min: Option<f64>,
    pub hold_min: f64,
    pub wait_min: f64,
}

/// Rows under way.
pub(super) struct Keying<'a> {
    pub controller: &'a Controller,
    pub wish: &'a Wish,
    pub drafts: Vec<Draft>,
    pub notes: Vec<Note>,
    /// Where the controller stands, true °C.
    pub at_c: f64,
}

impl Keying<'_> {
    fn set_point(&mut self, segment: usize, target_c: f64) -> i64 {
        let nearest = self.controller.steps(target_c).round() as i64;
        let Some(ceiling) = self.wish.ceiling_c else { return nearest };
        if target_c > ceiling + HAIR {
            self.notes.push(Note::Lowered { segment, by_k: target_c - ceiling });
        }
        let highest = (self.controller.steps(ceiling) + HAIR).floor() as i64;
        nearest.min(highest)
    }

    /// The rows of a segment but for its hold; `by_k` is how far it goes as planned.
    fn segment(&mut self, segment: usize, set: i64, ramp_min: Option<f64>, by_k: f64) {
        if let Some(last) = self.drafts.last_mut().filter(|last| last.set == set) {
            last.hold_min += ramp_min.unwrap_or(0.0);
            last.segments[1] = segment;
            self.notes.push(Note::Same { segments: last.segments });
            return;
        }
        let goes_k = (self.controller.true_c(set) - self.at_c).abs();
        let Some(minutes) = ramp_min else {
            if !self.controller.full_speed {
                self.notes.push(Note::NoFullSpeed { segment });
            }
            return self.push(segment, set, self.controller.fastest(), None);
        };
        // Where rounding made the way longer it takes longer: neither in less time nor faster.
        let takes_min = if by_k > 0.0 { minutes.max(minutes * goes_k / by_k) } else { minutes };
        if self.drafts.is_empty() && self.controller.steps(self.at_c).round() as i64 == set {
            // The kiln is there already, as near as the controller can say: it waits.
            self.push(segment, set, self.controller.fastest(), None);
            self.wait(minutes);
            return;
        }
        let Some(ramp) = self.keyed(goes_k, takes_min) else { return split(self, segment, set, minutes, takes_min) };
        let (planned_k_h, degrees) = (60.0 * goes_k / takes_min, self.controller.degrees());
        if let RampBy::Rate { most, .. } = self.controller.ramp
            && planned_k_h * degrees >= f64::from(most) + 1.0
        {
            self.notes.push(Note::TooFast { segment, planned_k_h, most_k_h: f64::from(most) / degrees });
        }
        self.push(segment, set, ramp, Some(minutes));
    }

    /// The last row waits longer.
    fn wait(&mut self, minutes: f64) {
        if let Some(last) = self.drafts.last_mut() {
            last.hold_min += minutes;
        }
    }

    /// The ramp that takes no less than this time; nothing where the controller takes none so slow.
    fn keyed(&self, goes_k: f64, takes_min: f64) -> Option<Ramp> {
        match self.controller.ramp {
            RampBy::Rate { least, most } => {
                let rate = (60.0 * goes_k / takes_min * self.controller.degrees() + HAIR).floor();
                (rate >= f64::from(least)).then(|| Ramp::Rate(rate.min(f64::from(most)) as u32))
            }
            RampBy::Minutes { least, most } => {
                let minutes = (takes_min - HAIR).ceil();
                (minutes <= f64::from(most)).then(|| Ramp::Minutes(minutes.max(f64::from(least)) as u32))
            }
        }
    }

    /// A row; `planned_min` is what its ramp is planned to take.
    pub fn push(&mut self, segment: usize, set: i64, ramp: Ramp, planned_min: Option<f64>) {
        let to_c = self.controller.true_c(set);
        let takes = self.controller.ramp_min(ramp, to_c - self.at_c);
        let ramp_off_min = takes.zip(planned_min).map(|(takes, planned)| takes - planned);
        self.drafts.push(Draft { segments: [segment; 2], set, ramp, target_off_k: 0.0, ramp_off_min, hold_min: 0.0, wait_min: 0.0 });
        self.at_c = to_c;
    }

    /// The rows: holds in whole minutes, and in several rows where they are too long.
    fn finish(mut self) -> Result<(Vec<Row>, Vec<Note>), ControllerError> {
        let most = self.controller.most_hold_min;
        let mut rows: Vec<Row> = Vec::new();
        for draft in &self.drafts {
            let planned = draft.hold_min + draft.wait_min;
            let mut left = (planned - HAIR).ceil().max(0.0) as u32;
            let parts = left.div_ceil(most).max(1) as usize;
            if rows.len() + parts > MOST_ROWS {
                return Err(ControllerError::TooMany { what: "rows", most: MOST_ROWS });
            }
            if parts > 1 {
                self.notes.push(Note::LongHold { segment: draft.segments[1], rows: parts });
            }
            let off_min = f64::from(left) - planned;
            for part in 0..parts {
                let hold_min = left.min(most);
                left -= hold_min;
                let (first, last) = (part == 0, part + 1 == parts);
                rows.push(Row {
                    segments: draft.segments,
                    set_point: (draft.set * i64::from(self.controller.step)) as i32,
                    ramp: if first { draft.ramp } else { self.controller.fastest() },
                    hold_min,
                    true_c: self.controller.true_c(draft.set),
                    target_off_k: draft.target_off_k,
                    ramp_off_min: if first { draft.ramp_off_min } else { None },
                    wait_min: if last { draft.wait_min } else { 0.0 },
                    hold_off_min: if last { off_min } else { 0.0 },
                });
            }
        }
        Ok((rows, self.notes))
    }
}
