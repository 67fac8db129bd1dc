//! Turning triangles: so that neighbours agree, and so that solids face outward.

use std::collections::HashMap;

use crate::mesh::edges::link;
use crate::mesh::nesting::nest;
use crate::mesh::sums::Sums;
use crate::mesh::weld::Welded;

/// Turns triangles until neighbours that share an edge with nobody else agree about what is outside, in each piece as few as that takes. Gives
/// how many were turned; none where some piece cannot be brought to agree, such as a band with a half twist.
pub(super) fn agree(mesh: &mut Welded) -> u32 {
    let neighbours = neighbours(mesh);
    let count = mesh.triangles.len();
    // Unknown, as it is, turned.
    let mut ways: Vec<Option<bool>> = vec![None; count];
    let mut turned = 0;
    let (mut piece, mut waiting) = (Vec::new(), Vec::new());
    for start in 0..count {
        if ways[start].is_some() {
            continue;
        }
        ways[start] = Some(false);
        piece.clear();
        waiting.push(start);
        while let Some(at) = waiting.pop() {
            piece.push(at);
            let own = ways[at] == Some(true);
            for &(other, differs) in neighbours[at].iter().flatten() {
                let wanted = own != differs;
                match ways[other as usize] {
                    None => {
                        ways[other as usize] = Some(wanted);
                        waiting.push(other as usize);
                    }
                    Some(way) if way != wanted => return 0,
                    Some(_) => {}
                }
            }
        }
        let to_turn = piece.iter().filter(|at| ways[**at] == Some(true)).count();
        // The greater part of a piece is taken to be right.
        if to_turn * 2 > piece.len() {
            piece.iter().for_each(|at| ways[*at] = ways[*at].map(|way| !way));
        }
        turned += to_turn.min(piece.len() - to_turn);
    }
    for (triangle, way) in mesh.triangles.iter_mut().zip(&ways) {
        if *way == Some(true) {
            triangle.swap(1, 2);
        }
    }
    turned as u32
}

/// Over each edge of a triangle the one other triangle that shares it, and whether the two disagree; nothing where more than two meet.
fn neighbours(mesh: &Welded) -> Vec<[Option<(u32, bool)>; 3]> {
    let mut uses: HashMap<[u32; 2], Vec<(u32, u8, bool)>> = HashMap::with_capacity(mesh.triangles.len() * 3 / 2);
    for (triangle, at) in mesh.triangles.iter().zip(0..) {
        for side in 0..3_u8 {
            let (from, to) = (triangle[usize::from(side)], triangle[usize::from(side + 1) % 3]);
            uses.entry([from.min(to), from.max(to)]).or_default().push((at, side, from < to));
        }
    }
    let mut found = vec![[None; 3]; mesh.triangles.len()];
    // Which edge comes first changes nothing: each is written to its own two places.
    #[allow(clippy::iter_over_hash_type, reason = "every edge has places of its own")]
    for sharing in uses.values() {
        if let [(a, side_a, way_a), (b, side_b, way_b)] = sharing[..] {
            found[a as usize][usize::from(side_a)] = Some((b, way_a == way_b));
            found[b as usize][usize::from(side_b)] = Some((a, way_a == way_b));
        }
    }
    found
}

/// Turns solids that are inside out, each with all that lies in it. Gives how many triangles were turned.
pub(super) fn outward(mesh: &mut Welded, centre: [f64; 3]) -> u32 {
    let links = link(mesh);
    if !links.encloses() {
        return 0;
    }
    let mut sums = vec![Sums::NOTHING; links.shells];
    let mut groups = vec![Vec::new(); links.shells];
    for ((triangle, &shell), at) in mesh.triangles.iter().zip(&links.shell_of).zip(0_u32..) {
        sums[shell as usize].add(&mesh.corners(*triangle), centre);
        groups[shell as usize].push(at);
    }
    let nesting = nest(&sums, &|shell| groups[shell].iter().map(|&at| mesh.corners(mesh.triangles[at as usize])).collect());
    if nesting.unsettled {
        return 0;
    }
    let wrong = |shell: usize| nesting.holders[shell].is_empty() && sums[shell].volume_6 < 0.0;
    let mut turned = 0;
    for (shell, group) in groups.iter().enumerate() {
        if wrong(shell) || nesting.holders[shell].iter().any(|holder| wrong(*holder as usize)) {
            group.iter().for_each(|&at| mesh.triangles[at as usize].swap(1, 2));
            turned += group.len();
        }
    }
    turned as u32
}
