//! Hangs everything that hangs nowhere yet. One flask takes one alloy, so pieces of another alloy than the tree's stay where they are.

use std::collections::{BTreeMap, BTreeSet};

use crate::job::{Hung, Job, Line, LineId, TreeId};

/// Which pieces of each line hang somewhere; `None` for all of them.
fn hanging(job: &Job) -> BTreeMap<LineId, Option<BTreeSet<u32>>> {
    let mut hanging: BTreeMap<LineId, Option<BTreeSet<u32>>> = BTreeMap::new();
    for hung in job.trees.iter().flat_map(|tree| &tree.pieces) {
        let known = hanging.entry(hung.line).or_insert_with(|| Some(BTreeSet::new()));
        match known {
            Some(numbers) if !hung.numbers.is_empty() => numbers.extend(&hung.numbers),
            _ => *known = None,
        }
    }
    hanging
}

/// The row that hangs what is left of a line; none where nothing is.
fn rest(line: &Line, known: Option<&Option<BTreeSet<u32>>>) -> Option<Hung> {
    let wanted = |number: &u32| !line.exceptions.get(number).is_some_and(|exception| exception.cancelled);
    match known {
        None => (Job::pieces_of(line) > 0).then(|| Hung { line: line.id, ..Hung::default() }),
        Some(None) => None,
        Some(Some(taken)) => {
            let numbers: BTreeSet<u32> = (1..=line.quantity).filter(|number| wanted(number) && !taken.contains(number)).collect();
            (!numbers.is_empty()).then(|| Hung { line: line.id, numbers, ..Hung::default() })
        }
    }
}

/// Hangs them on a tree.
pub fn hang_rest(job: &mut Job, tree: TreeId) {
    let hanging = hanging(job);
    let on_tree: BTreeSet<LineId> =
        job.trees.iter().filter(|one| one.id == tree).flat_map(|one| one.pieces.iter().map(|hung| hung.line)).collect();
    let mut alloy = job.lines().filter(|(_, line)| on_tree.contains(&line.id)).find_map(|(_, line)| line.alloy.clone());
    let mut rows = Vec::new();
    for (_, line) in job.lines() {
        let fits = alloy.is_none() || line.alloy.is_none() || line.alloy == alloy;
        let Some(row) = rest(line, hanging.get(&line.id)).filter(|_| fits) else { continue };
        if alloy.is_none() {
            alloy.clone_from(&line.alloy);
        }
        rows.push(row);
    }
    if let Some(tree) = job.trees.iter_mut().find(|one| one.id == tree) {
        tree.pieces.extend(rows);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{Order, Tree};
    use crate::stock::EntryId;

    fn line(id: u32, alloy: &str, quantity: u32) -> Line {
        Line { id: LineId(id), alloy: EntryId::new(alloy), quantity, ..Line::default() }
    }

    #[test]
    fn what_is_left_of_one_alloy_is_hung() {
        let order = Order { lines: vec![line(1, "silver", 5), line(2, "gold", 2), line(3, "silver", 3)], ..Order::default() };
        let hung = Hung { line: LineId(1), numbers: BTreeSet::from([1, 2]), ..Hung::default() };
        let tree = Tree { id: TreeId(1), pieces: vec![hung], ..Tree::default() };
        let mut job = Job { orders: vec![order], trees: vec![tree], ..Job::default() };
        hang_rest(&mut job, TreeId(1));
        let rows = &job.trees[0].pieces;
        assert_eq!(rows.len(), 3);
        assert_eq!((rows[1].line, rows[1].numbers.clone()), (LineId(1), BTreeSet::from([3, 4, 5])));
        assert_eq!((rows[2].line, rows[2].numbers.is_empty()), (LineId(3), true));
        assert!(rows.iter().all(|row| row.line != LineId(2)), "gold does not go with silver");
        hang_rest(&mut job, TreeId(1));
        assert_eq!(job.trees[0].pieces.len(), 3);
    }
}
