//! Long work on a mesh tells how far it is, and can be stopped.

/// Whoever waits for long work.
pub trait Watch: Sync {
    /// Told now and then how much is done, from 0 to 1. False asks the work to stop as soon as it can.
    fn go_on(&self, share: f64) -> bool;
}

/// Nobody waits: the work goes on to its end.
#[derive(Debug, Clone, Copy)]
pub struct Unwatched;

impl Watch for Unwatched {
    fn go_on(&self, _share: f64) -> bool {
        true
    }
}
