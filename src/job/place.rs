//! Where in a job a figure, a finding or an acceptance stands.

use std::fmt;
use std::str::FromStr;

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use super::id::{BurnoutId, FlaskId, LineId, MeltId, OrderId, PatternId, PieceId, PrintId, QuoteId, RecordId, TreeId};

/// A place in the job, written as a path such as `flask/2` or `burnout/1/stage/3`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum Place {
    /// The job as a whole.
    #[default]
    Job,
    /// The studio: prices, lots, shelf.
    Studio,
    /// An order.
    Order(OrderId),
    /// A line of an order.
    Line(LineId),
    /// A single piece of a line.
    Piece(PieceId),
    /// A pattern.
    Pattern(PatternId),
    /// A print run.
    Print(PrintId),
    /// A tree.
    Tree(TreeId),
    /// A row of a tree: the `n`-th material weighed or run of sprues, from 1.
    TreeRow(TreeId, u32),
    /// A flask.
    Flask(FlaskId),
    /// The `n`-th mix of a flask, from 1.
    Mix(FlaskId, u32),
    /// A kiln load.
    Burnout(BurnoutId),
    /// The `n`-th stage of a burnout, from 1.
    Stage(BurnoutId, u32),
    /// A melt.
    Melt(MeltId),
    /// A quote.
    Quote(QuoteId),
    /// An entry of the record.
    Record(RecordId),
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Job => write!(f, "job"),
            Self::Studio => write!(f, "studio"),
            Self::Order(id) => write!(f, "order/{id}"),
            Self::Line(id) => write!(f, "line/{id}"),
            Self::Piece(piece) => write!(f, "line/{}/piece/{}", piece.line, piece.number),
            Self::Pattern(id) => write!(f, "pattern/{id}"),
            Self::Print(id) => write!(f, "print/{id}"),
            Self::Tree(id) => write!(f, "tree/{id}"),
            Self::TreeRow(id, row) => write!(f, "tree/{id}/row/{row}"),
            Self::Flask(id) => write!(f, "flask/{id}"),
            Self::Mix(id, mix) => write!(f, "flask/{id}/mix/{mix}"),
            Self::Burnout(id) => write!(f, "burnout/{id}"),
            Self::Stage(id, stage) => write!(f, "burnout/{id}/stage/{stage}"),
            Self::Melt(id) => write!(f, "melt/{id}"),
            Self::Quote(id) => write!(f, "quote/{id}"),
            Self::Record(id) => write!(f, "record/{id}"),
        }
    }
}

/// Said where a place is written wrongly.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
#[error("“{0}” is no place in a job; places look like flask/2 or burnout/1/stage/3")]
pub struct NoPlace(String);

impl FromStr for Place {
    type Err = NoPlace;

    fn from_str(text: &str) -> Result<Self, NoPlace> {
        let wrong = || NoPlace(text.chars().take(60).collect());
        let parts: Vec<&str> = text.split('/').collect();
        let number = |part: &str| part.parse::<u32>().map_err(|_| wrong());
        Ok(match parts.as_slice() {
            ["job"] => Self::Job,
            ["studio"] => Self::Studio,
            ["order", id] => Self::Order(OrderId(number(id)?)),
            ["line", id] => Self::Line(LineId(number(id)?)),
            ["line", id, "piece", piece] => Self::Piece(PieceId { line: LineId(number(id)?), number: number(piece)? }),
            ["pattern", id] => Self::Pattern(PatternId(number(id)?)),
            ["print", id] => Self::Print(PrintId(number(id)?)),
            ["tree", id] => Self::Tree(TreeId(number(id)?)),
            ["tree", id, "row", row] => Self::TreeRow(TreeId(number(id)?), number(row)?),
            ["flask", id] => Self::Flask(FlaskId(number(id)?)),
            ["flask", id, "mix", mix] => Self::Mix(FlaskId(number(id)?), number(mix)?),
            ["burnout", id] => Self::Burnout(BurnoutId(number(id)?)),
            ["burnout", id, "stage", stage] => Self::Stage(BurnoutId(number(id)?), number(stage)?),
            ["melt", id] => Self::Melt(MeltId(number(id)?)),
            ["quote", id] => Self::Quote(QuoteId(number(id)?)),
            ["record", id] => Self::Record(RecordId(number(id)?)),
            _ => return Err(wrong()),
        })
    }
}

impl Serialize for Place {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Place {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        String::deserialize(deserializer)?.parse().map_err(serde::de::Error::custom)
    }
}
