//! What stands around every page: rail, top line, working pane, findings, finder.

pub mod finder;
pub mod findings_line;
pub mod focus;
pub mod lock;
pub mod rail;
pub mod top;
pub mod working;
