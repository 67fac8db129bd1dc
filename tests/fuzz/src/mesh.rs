//! Pattern files.

use pourbook::mesh::{Limits, Measure, Problem, ReadError, Soup, measure, measure_bytes, read};

/// Small enough that one input takes milliseconds.
pub const LIMITS: Limits = Limits { max_bytes: 64 << 10, max_triangles: 1200, max_expanded_bytes: 256 << 10 };

/// Bytes as a pattern file.
///
/// # Panics
/// As [`sound`].
pub fn check(bytes: &[u8]) {
    if let Some((_, found)) = sound(bytes) {
        crate::planted(found.size_mm[0] > 1e6 && found.triangles > 3);
    }
}

/// A planted bug behind steps, each of which an input must take on top of the one before: a file that is very large, of several triangles in
/// more than one piece, with some extent every way.
///
/// # Panics
/// In a build with planted bugs, where all of it holds.
pub fn deep(found: &Measure) {
    let [longest, shortest] = [f64::max, f64::min].map(|pick| found.size_mm.into_iter().reduce(pick).unwrap_or(0.0));
    if longest > 1e6 && found.triangles > 3 {
        // A branch of its own, so that an input that came so far is kept.
        if found.shells.len() > 1 {
            crate::planted(shortest > 0.0);
        }
    }
}

/// Reads and measures bytes; nothing where they are refused.
///
/// # Panics
/// Where a number is not finite, where a volume stands beside a problem that says there is none, where bounds do not hold, and where reading
/// first and measuring then gives something else.
pub fn sound(bytes: &[u8]) -> Option<(Soup, Measure)> {
    let measured = measure_bytes(bytes, &LIMITS);
    match (measured, read(bytes, &LIMITS)) {
        (Ok(found), Ok(soup)) => {
            assert_eq!(found, measure(&soup));
            check_soup(&soup);
            check_measure(&found);
            Some((soup, found))
        }
        (Err(one), Err(other)) => {
            assert_eq!(one, other);
            check_refusal(&one);
            None
        }
        (one, other) => panic!("{one:?} and {other:?}"),
    }
}

/// # Panics
/// Where the words of a refusal are no sentence, or repeat too much of a file.
pub fn check_refusal(error: &ReadError) {
    let words = error.to_string();
    assert!(words.ends_with(['.', '!']) || words.contains("expected"), "a sentence: {words}");
    assert!(words.len() < 400, "long: {words}");
}

/// # Panics
/// Where a corner is not finite or a zero has a sign, or where there are no triangles or too many.
pub fn check_soup(soup: &Soup) {
    let numbers = soup.triangles().as_flattened().as_flattened();
    assert!(numbers.iter().all(|x| x.is_finite() && x.to_bits() != (-0.0_f32).to_bits()));
    assert!((1..=LIMITS.max_triangles as usize).contains(&soup.triangles().len()));
}

/// # Panics
/// As [`sound`].
pub fn check_measure(found: &Measure) {
    let volumes = [found.volume_mm3, found.plain_sum_mm3, found.fills_mm3, found.fills_at_most_mm3].into_iter().flatten();
    let sides = [found.size_mm, found.low_mm, found.high_mm].into_iter().flatten();
    let shells = found.shells.iter();
    let of_shells =
        shells.flat_map(|shell| shell.low_mm.into_iter().chain(shell.high_mm).chain([shell.area_mm2]).chain(shell.signed_volume_mm3));
    let of_problems = found.problems.iter().flat_map(numbers);
    for number in volumes.chain(sides).chain([found.area_mm2]).chain(of_shells).chain(of_problems) {
        assert!(number.is_finite(), "{found:?}");
    }
    assert!((1..=LIMITS.max_triangles).contains(&found.triangles));
    assert!((0..3).all(|axis| found.low_mm[axis] <= found.high_mm[axis]), "{found:?}");
    if found.problems.iter().any(Problem::leaves_no_volume) {
        assert!(found.volume_mm3.is_none() && found.fills_mm3.is_none(), "a volume and none: {found:?}");
    }
    if let Some(Problem::OverlappingShells { union: Some(_), .. }) =
        found.problems.iter().find(|problem| problem.key() == "overlapping-shells")
    {
        assert!(found.volume_mm3.is_some() && found.fills_mm3.is_some(), "a union and no volume: {found:?}");
    }
    if found.volume_mm3.is_none() {
        assert!(!found.problems.is_empty(), "no volume and no word of why: {found:?}");
    }
    if let (Some(fills), Some(most)) = (found.fills_mm3, found.fills_at_most_mm3) {
        assert!((0.0..=most).contains(&fills), "{found:?}");
    }
    assert!(
        found.shells.iter().enumerate().all(|(at, shell)| shell.nested_in.is_none_or(|holder| holder < found.shells.len() && holder != at))
    );
    for problem in &found.problems {
        assert!(problem.to_string().ends_with('.'), "a sentence: {problem}");
    }
}

/// The numbers a problem's sentence is made with.
fn numbers(problem: &Problem) -> Vec<f64> {
    match *problem {
        Problem::SealedVoid { void_mm3, .. } => vec![void_mm3],
        Problem::OverlappingShells { at_least_mm3, at_most_mm3, union, .. } => {
            let of_union = union.map(|union| [union.volume_mm3, union.doubt_mm3]);
            [at_least_mm3, at_most_mm3].into_iter().chain(of_union.into_iter().flatten()).collect()
        }
        Problem::NestedSameWinding { counted_twice_mm3, .. } => vec![counted_twice_mm3],
        Problem::OverlapNotSettled { at_most_mm3 } => vec![at_most_mm3],
        Problem::SeamsClosed { widest_gap_mm, .. } => vec![widest_gap_mm],
        Problem::AbsurdSize { largest_mm, probable_unit } => vec![largest_mm, probable_unit.map_or(0.0, |unit| largest_mm * unit.mm())],
        Problem::FarFromOrigin { step_mm } => vec![step_mm],
        _ => Vec::new(),
    }
}
