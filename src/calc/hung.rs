//! Which patterns hang on a tree: a piece may have one of its own.

use super::by_id::ById;
use crate::job::{Hung, Job, Line, Pattern, PatternId, Tree};

/// How many pieces of a line hang in a row, by pattern: the line's own first, then those of single pieces. Cancelled pieces never hang.
pub(super) fn by_pattern(hung: &Hung, line: &Line) -> Vec<(Option<PatternId>, u32)> {
    let mut groups = vec![(line.pattern, count(hung, line))];
    for (number, exception) in &line.exceptions {
        let here = hung.numbers.is_empty() || hung.numbers.contains(number);
        let Some(own) = exception.pattern.filter(|own| here && !exception.cancelled && Some(*own) != line.pattern) else { continue };
        groups[0].1 = groups[0].1.saturating_sub(1);
        match groups.iter_mut().skip(1).find(|(pattern, _)| *pattern == Some(own)) {
            Some((_, pieces)) => *pieces += 1,
            None => groups.push((Some(own), 1)),
        }
    }
    groups.retain(|(_, pieces)| *pieces > 0);
    groups
}

/// How many pieces of a line hang in a row: the named ones, or all of them.
fn count(hung: &Hung, line: &Line) -> u32 {
    let live = |number: &u32| !line.exceptions.get(number).is_some_and(|exception| exception.cancelled);
    if hung.numbers.is_empty() {
        Job::pieces_of(line)
    } else {
        u32::try_from(hung.numbers.iter().filter(|number| live(number)).count()).unwrap_or(u32::MAX)
    }
}

/// The patterns of the pieces on a tree, each once.
pub(super) fn patterns<'a>(tree: &Tree, by_id: &ById<'a>) -> Vec<&'a Pattern> {
    let mut ids: Vec<PatternId> = Vec::new();
    for hung in &tree.pieces {
        let Some((_, found)) = by_id.line(hung.line) else { continue };
        if found.line.exceptions.is_empty() {
            // Lines of one design hang side by side.
            ids.extend(found.line.pattern.filter(|pattern| ids.last() != Some(pattern)));
        } else {
            ids.extend(by_pattern(hung, found.line).into_iter().filter_map(|(pattern, _)| pattern));
        }
    }
    ids.sort_unstable();
    ids.dedup();
    ids.into_iter().filter_map(|id| by_id.pattern(id)).collect()
}

/// The pieces on the tree whose pattern cannot be made again are not alone there: what the first is.
pub(super) fn irreplaceable_piece<'a>(tree: &Tree, by_id: &ById<'a>) -> Option<&'a str> {
    let design = once_only(tree, by_id)?;
    let rows = tree.pieces.iter().filter_map(|hung| Some(count(hung, by_id.line(hung.line)?.1.line)));
    (rows.fold(0, u32::saturating_add) >= 2).then_some(design)
}

/// A pattern or a piece on the tree that cannot be made again, alone or not: what it is.
pub(super) fn irreplaceable<'a>(tree: &Tree, patterns: &[&'a Pattern], by_id: &ById<'a>) -> Option<&'a str> {
    let pattern = patterns.iter().find(|pattern| pattern.irreplaceable).map(|pattern| pattern.name.as_str());
    pattern.or_else(|| once_only(tree, by_id))
}

/// The design of a piece on the tree whose own pattern cannot be made again.
fn once_only<'a>(tree: &Tree, by_id: &ById<'a>) -> Option<&'a str> {
    let mut rows = tree.pieces.iter().filter_map(|hung| Some((hung, by_id.line(hung.line)?.1.line)));
    let found = rows.find(|(hung, line)| {
        let here = |number: &u32| hung.numbers.is_empty() || hung.numbers.contains(number);
        line.exceptions.iter().any(|(number, exception)| exception.irreplaceable && !exception.cancelled && here(number))
    })?;
    Some(found.1.design.as_str())
}
