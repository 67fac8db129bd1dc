//! Checks a tree against its task by nothing but the task's own words and the room between every two solids.

use super::super::solid::apart;
use super::super::stand::{Between, Hang, Part, Standing, room, stand};
use super::{Task, Wanted};

/// What is wrong with a tree. Pieces are numbered as in the task.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Fault {
    /// It has not as many pieces as were asked for.
    Count {
        /// So many it has.
        has: usize,
        /// So many were asked for.
        needs: usize,
    },
    /// A number is not finite.
    Number {
        /// The piece.
        piece: usize,
    },
    /// Form, feed or angle of a piece are not as asked for.
    NotAsked {
        /// The piece.
        piece: usize,
    },
    /// A piece that is held hangs elsewhere.
    Moved {
        /// The piece.
        piece: usize,
    },
    /// The feed of a piece is not joined to the trunk between the dome and its end.
    OffTrunk {
        /// The piece.
        piece: usize,
        /// Where it is joined, in mm over the base's rim.
        joint_mm: f64,
        /// The lowest and the highest it may be.
        from_to_mm: [f64; 2],
    },
    /// Too little room to the wall.
    Wall {
        /// The piece.
        piece: usize,
        /// Room it has, in mm.
        has_mm: f64,
        /// Room it needs.
        needs_mm: f64,
    },
    /// Too little room above.
    Top {
        /// Room there is, in mm.
        has_mm: f64,
        /// Room that is needed.
        needs_mm: f64,
    },
    /// Too little room below.
    Bottom {
        /// Room there is, in mm.
        has_mm: f64,
        /// Room that is needed.
        needs_mm: f64,
    },
    /// Two parts are too near to each other.
    Between {
        /// The two.
        parts: [Part; 2],
        /// Room there is at least, in mm.
        has_mm: f64,
        /// Room that is needed.
        needs_mm: f64,
    },
}

/// What rounding may take off a length, in mm.
pub(super) const ROUNDING_MM: f64 = 1e-9;

/// The lowest and the highest a feed may be joined, in mm over the base's rim: all of it over the dome, and its middle line by its radius below the
/// trunk's end.
#[must_use]
pub(super) fn on_trunk(task: &Task, wanted: &Wanted) -> [f64; 2] {
    let radius = 0.5 * wanted.feed_diameter_mm;
    // A round feed that leans meets the trunk in a longer patch.
    let down = radius / wanted.angle_deg.to_radians().sin();
    // Heights over the dome are written down to a hundredth: the ends are ones that can be.
    let (low, high) = ((down * 100.0).ceil() / 100.0, ((task.trunk.length_mm - radius) * 100.0).floor() / 100.0);
    [task.trunk.dome_mm + low, task.trunk.dome_mm + high]
}

/// Checks a tree: every piece as asked for, every limit, every two solids.
///
/// # Errors
/// The first thing that is wrong.
pub fn check(task: &Task, hangs: &[Hang]) -> Result<(), Fault> {
    if hangs.len() != task.pieces.len() {
        return Err(Fault::Count { has: hangs.len(), needs: task.pieces.len() });
    }
    for (piece, (hang, wanted)) in hangs.iter().zip(&task.pieces).enumerate() {
        as_asked(task, piece, hang, wanted)?;
    }
    let tree = stand(&task.trunk, hangs);
    if let Some(piece) = tree.pieces.iter().zip(&tree.feeds).position(|(piece, feed)| !piece.is_sound() || !feed.is_sound()) {
        return Err(Fault::Number { piece });
    }
    let limits = &task.limits;
    let room = room(&tree, limits.inner_diameter_mm, limits.height_mm, limits.between_mm.max(limits.trunk_mm));
    for (piece, feed) in tree.feeds.iter().enumerate() {
        let has_mm = room.wall_mm[piece].min(0.5 * limits.inner_diameter_mm - feed.reach());
        if has_mm < limits.wall_mm - ROUNDING_MM {
            return Err(Fault::Wall { piece, has_mm, needs_mm: limits.wall_mm });
        }
    }
    if room.top_mm < limits.top_mm - ROUNDING_MM {
        return Err(Fault::Top { has_mm: room.top_mm, needs_mm: limits.top_mm });
    }
    if !hangs.is_empty() && room.bottom_mm < limits.bottom_mm - ROUNDING_MM {
        return Err(Fault::Bottom { has_mm: room.bottom_mm, needs_mm: limits.bottom_mm });
    }
    for Between { parts, apart } in room.tight.into_iter().chain(feeds(&tree)) {
        let has_mm = apart.at_least_mm;
        if let Some(needs_mm) = limits.needs_mm(parts).filter(|needs| has_mm < needs - ROUNDING_MM) {
            return Err(Fault::Between { parts, has_mm, needs_mm });
        }
    }
    Ok(())
}

/// Every two feeds, which are joined as far as the room of a tree is asked for.
fn feeds(tree: &Standing) -> impl Iterator<Item = Between> {
    let many = tree.feeds.len();
    let pairs = (0..many).flat_map(move |one| (one + 1..many).map(move |other| (one, other)));
    pairs.map(|(one, other)| Between { parts: [Part::Feed(one), Part::Feed(other)], apart: apart(&tree.feeds[one], &tree.feeds[other]) })
}

#[allow(clippy::float_cmp, reason = "what was asked for is handed on as it is")]
fn as_asked(task: &Task, piece: usize, hang: &Hang, wanted: &Wanted) -> Result<(), Fault> {
    if ![hang.joint_mm, hang.around_deg, hang.twist_deg].iter().all(|number| number.is_finite()) {
        return Err(Fault::Number { piece });
    }
    if hang.form != wanted.form
        || [hang.feed_diameter_mm, hang.feed_length_mm, hang.angle_deg]
            != [wanted.feed_diameter_mm, wanted.feed_length_mm, wanted.angle_deg]
    {
        return Err(Fault::NotAsked { piece });
    }
    if wanted.held.is_some_and(|held| [held.joint_mm, held.around_deg, held.twist_deg] != [hang.joint_mm, hang.around_deg, hang.twist_deg])
    {
        return Err(Fault::Moved { piece });
    }
    let from_to_mm = on_trunk(task, wanted);
    if hang.joint_mm < from_to_mm[0] - ROUNDING_MM || hang.joint_mm > from_to_mm[1] + ROUNDING_MM {
        return Err(Fault::OffTrunk { piece, joint_mm: hang.joint_mm, from_to_mm });
    }
    Ok(())
}

/// Checks those pieces alone that hang, with the numbers of the whole task.
pub(super) fn some(task: &Task, hangs: &[Option<Hang>]) -> Result<(), Fault> {
    let those: Vec<usize> = (0..hangs.len()).filter(|at| hangs[*at].is_some()).collect();
    let part = Task { pieces: those.iter().map(|at| task.pieces[*at].clone()).collect(), ..task.clone() };
    let hung: Vec<Hang> = hangs.iter().flatten().cloned().collect();
    check(&part, &hung).map_err(|fault| fault.numbered(&those))
}

/// Checks what is held as if nothing else were there.
pub(super) fn held_alone(task: &Task) -> Result<(), Fault> {
    let hangs: Vec<Option<Hang>> =
        task.pieces.iter().map(|wanted| wanted.held.map(|held| wanted.hang(held.joint_mm, held.around_deg, held.twist_deg))).collect();
    some(task, &hangs)
}

impl Wanted {
    /// This piece, hung there.
    #[must_use]
    pub fn hang(&self, joint_mm: f64, around_deg: f64, twist_deg: f64) -> Hang {
        Hang {
            joint_mm,
            around_deg,
            angle_deg: self.angle_deg,
            twist_deg,
            feed_diameter_mm: self.feed_diameter_mm,
            feed_length_mm: self.feed_length_mm,
            form: self.form.clone(),
        }
    }
}

impl Fault {
    /// The same with other numbers for its pieces.
    fn numbered(mut self, names: &[usize]) -> Self {
        let part = |part: Part| match part {
            Part::Trunk => Part::Trunk,
            Part::Feed(at) => Part::Feed(names[at]),
            Part::Piece(at) => Part::Piece(names[at]),
        };
        match &mut self {
            Self::Count { .. } | Self::Top { .. } | Self::Bottom { .. } => {}
            Self::Number { piece }
            | Self::NotAsked { piece }
            | Self::Moved { piece }
            | Self::OffTrunk { piece, .. }
            | Self::Wall { piece, .. } => *piece = names[*piece],
            Self::Between { parts, .. } => *parts = parts.map(part),
        }
        self
    }
}
