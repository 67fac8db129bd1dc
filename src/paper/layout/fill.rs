//! Filling pages with strips: a step stays whole where a column holds it, and what runs on says so.

use super::mark::{Content, Leaf};
use super::strip::Strip;

/// Where the next strip goes.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Place {
    /// The page, from 0.
    pub leaf: usize,
    /// The column's left side.
    pub x: f64,
    /// How far down it is filled.
    pub y: f64,
    /// Where it began.
    pub top: f64,
    /// Where it ends.
    pub bottom: f64,
}

impl Place {
    fn is_fresh(&self) -> bool {
        self.y <= self.top + 1e-6
    }

    fn room(&self) -> f64 {
        self.bottom - self.y
    }
}

/// Puts groups of strips into a column and those after it. `next` gives the place at the top of the following page.
pub(super) fn fill(leaves: &mut Vec<Leaf>, mut at: Place, groups: &[Vec<Strip>], next: &mut dyn FnMut(Place) -> Place) -> Place {
    for group in groups {
        let fresh = next_top(at, next);
        if !at.is_fresh() && height(group, false) > at.room() && height(group, true) <= fresh.bottom - fresh.top {
            at = fresh;
        }
        let mut rest = group.as_slice();
        while let Some(count) = chain(rest) {
            let (unit, after) = rest.split_at(count);
            if !at.is_fresh() && height(unit, false) > at.room() {
                at = next_top(at, next);
            }
            for strip in unit {
                at = put(leaves, at, strip, next);
            }
            rest = after;
        }
    }
    at
}

fn next_top(at: Place, next: &mut dyn FnMut(Place) -> Place) -> Place {
    next(Place { leaf: at.leaf + 1, ..at })
}

/// How many strips stay together from the first on; `None` where there is none.
fn chain(strips: &[Strip]) -> Option<usize> {
    let last = strips.iter().position(|strip| !strip.keep);
    if strips.is_empty() { None } else { Some(last.map_or(strips.len(), |last| last + 1)) }
}

/// Height of strips one below the other; at the top of a column the space they begin with does not count.
fn height(strips: &[Strip], at_top: bool) -> f64 {
    let begins = if at_top { strips.iter().take_while(|strip| strip.space).count() } else { 0 };
    let ends = strips.iter().rev().take_while(|strip| strip.space).count();
    let seen = strips.len().saturating_sub(ends).max(begins);
    strips[begins..seen].iter().map(|strip| strip.height).sum()
}

fn put(leaves: &mut Vec<Leaf>, mut at: Place, strip: &Strip, next: &mut dyn FnMut(Place) -> Place) -> Place {
    if strip.space {
        // Space at the top or the end of a column is none.
        if !at.is_fresh() {
            at.y += strip.height;
        }
        return at;
    }
    if !at.is_fresh() && strip.height > at.room() {
        at = next_top(at, next);
    }
    if at.is_fresh()
        && let Some(heads) = &strip.heads
    {
        write(leaves, at, &heads.contents);
        at.y += heads.height;
    }
    write(leaves, at, &strip.contents);
    at.y += strip.height;
    at
}

fn write(leaves: &mut Vec<Leaf>, at: Place, contents: &[Content]) {
    while leaves.len() <= at.leaf {
        leaves.push(Leaf::default());
    }
    let moved = contents.iter().map(|content| Content { node: content.node, mark: content.mark.moved([at.x, at.y]) });
    leaves[at.leaf].contents.extend(moved);
}
