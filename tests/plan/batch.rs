//! The plan of a whole job: sixty pieces in several alloys, sets and pairs, a small shelf, flasks that stand; into the job and computed anew.

use std::collections::{BTreeMap, BTreeSet};

use pourbook::calc::batch::{Ask, GroupOf, Kept, Options, Outcome, Places, Unknown, WhyLeft, ask, build, open_pieces};
use pourbook::calc::plan::{Company, STEPS, check, plan};
use pourbook::calc::{FlaskFigures, Shelves};
use pourbook::job::format::read_job;
use pourbook::job::{Burnout, FlaskStock, Job, Line, Order, OrderId, Pair, PieceId, SprueRun};
use pourbook::stock::Alloy;

use crate::world::{
    BurnoutId, Equipment, Extents, Finite, LineId, MainSprue, Pattern, PatternId, Section, Tree, TreeId, Weighing, World, extents, flask, grams,
    hung, number, said, some,
};
