//! How many plates parts need: rows of parts first, then rows on plates, the deepest first, each where it first fits.
//!
//! It is the hybrid first fit of F. R. K. Chung, M. R. Garey, D. S. Johnson, "On packing two-dimensional bins" (1982, from memory), tried with
//! parts laid long and short along the rows, and rows laid along either side of the plate. Equal parts are placed together, so that ten
//! thousand of them cost no more than one. It is a plan, not always the least number of plates.

/// Parts of one size.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Parts {
    /// Sides of one as seen from above, in mm.
    pub sides_mm: [f64; 2],
    /// How many.
    pub count: u32,
}

/// Sides are told apart no finer than this, in mm.
const HAIR_MM: f64 = 1e-6;

/// Plates of `plate_mm` that all parts need with `gap_mm` between any two of them; `None` where one of them fits no way round, or a length
/// cannot be. Parts may be turned by a quarter.
#[must_use]
pub fn plates(parts: &[Parts], plate_mm: [f64; 2], gap_mm: f64) -> Option<u64> {
    let mut lengths = parts.iter().flat_map(|parts| parts.sides_mm).chain(plate_mm);
    let sound = gap_mm.is_finite() && gap_mm >= 0.0 && lengths.all(|length| length.is_finite() && length > 0.0);
    if !sound {
        return None;
    }
    // Every part with half a gap around it, on a plate with half a gap around it, touches its neighbours and the rim.
    let wide = |[x, y]: [f64; 2]| [x + gap_mm, y + gap_mm];
    let parts: Vec<Parts> = parts.iter().map(|parts| Parts { sides_mm: wide(parts.sides_mm), ..*parts }).collect();
    let [width, depth] = wide(plate_mm);
    let ways = [[width, depth], [depth, width]].into_iter().flat_map(|plate| [true, false].map(|long| (plate, long)));
    ways.map(|(plate, long)| laid(&parts, plate, long)).chain([apart(&parts, [width, depth])]).flatten().min()
}

/// Plates where no two kinds of part share one.
fn apart(parts: &[Parts], plate: [f64; 2]) -> Option<u64> {
    let grid = |[x, y]: [f64; 2]| fits(plate[0], x) * fits(plate[1], y);
    let mut sum = 0;
    for Parts { sides_mm: [x, y], count } in parts {
        match grid([*x, *y]).max(grid([*y, *x])) {
            0 => return None,
            most => sum += u64::from(*count).div_ceil(most),
        }
    }
    Some(sum)
}

/// Bins that have so much room left, and how deep they are.
#[derive(Debug, Clone, Copy)]
struct Bins {
    left: f64,
    deep: f64,
    many: u64,
}

fn laid(parts: &[Parts], [width, depth]: [f64; 2], long: bool) -> Option<u64> {
    let mut lying = Vec::with_capacity(parts.len());
    for Parts { sides_mm: [x, y], count } in parts {
        let (least, most) = (x.min(*y), x.max(*y));
        let ways = if long { [[most, least], [least, most]] } else { [[least, most], [most, least]] };
        let [along, deep] = ways.into_iter().find(|[along, deep]| fits(width, *along) > 0 && fits(depth, *deep) > 0)?;
        lying.push((along, deep, u64::from(*count)));
    }
    lying.sort_by(|a, b| b.1.total_cmp(&a.1).then(b.0.total_cmp(&a.0)));
    let mut rows: Vec<Bins> = Vec::new();
    for (along, deep, count) in lying {
        place(&mut rows, along, count, Bins { left: width, deep, many: 0 });
    }
    rows.sort_by(|a, b| b.deep.total_cmp(&a.deep));
    let mut plates: Vec<Bins> = Vec::new();
    for row in &rows {
        place(&mut plates, row.deep, row.many, Bins { left: depth, deep: width, many: 0 });
    }
    Some(plates.iter().map(|plate| plate.many).sum())
}

/// Puts so many things of one length into the bins, each into the first that has room, and what is left into fresh ones.
fn place(bins: &mut Vec<Bins>, length: f64, count: u64, fresh: Bins) {
    let mut rest = count;
    let mut split = Vec::new();
    for bin in bins.iter_mut() {
        let Some(filled) = rest.checked_div(fits(bin.left, length)).map(|filled| filled.min(bin.many)) else { continue };
        let each = fits(bin.left, length);
        let before = *bin;
        rest -= filled * each;
        let mut untouched = before.many - filled;
        if untouched > 0 && rest > 0 {
            split.push(Bins { left: before.left - length * whole(rest), many: 1, ..before });
            untouched -= 1;
            rest = 0;
        }
        *bin = Bins { left: before.left - length * whole(each), many: filled, ..before };
        split.push(Bins { many: untouched, ..before });
        if rest == 0 {
            break;
        }
    }
    let each = fits(fresh.left, length).max(1);
    split.push(Bins { left: fresh.left - length * whole(each), many: rest / each, ..fresh });
    split.push(Bins { left: fresh.left - length * whole(rest % each), many: u64::from(!rest.is_multiple_of(each)), ..fresh });
    bins.extend(split);
    bins.retain(|bin| bin.many > 0);
}

/// How often a length goes into another.
#[allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "both are above nought, and no room holds more than a float counts"
)]
fn fits(room: f64, length: f64) -> u64 {
    ((room + HAIR_MM) / length).floor().clamp(0.0, 1e15) as u64
}

#[allow(clippy::cast_precision_loss, reason = "counts of parts are far below what a float holds")]
fn whole(count: u64) -> f64 {
    count as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(x: f64, y: f64, count: u32) -> Parts {
        Parts { sides_mm: [x, y], count }
    }

    #[test]
    fn parts_that_fill_a_plate_to_its_rim_fit_it() {
        assert_eq!(plates(&[of(20.0, 10.0, 15)], [100.0, 30.0], 0.0), Some(1));
        assert_eq!(plates(&[of(20.0, 10.0, 16)], [100.0, 30.0], 0.0), Some(2));
        // Two different ones side by side, turned by a quarter.
        assert_eq!(plates(&[of(60.0, 30.0, 1), of(30.0, 40.0, 1)], [100.0, 30.0], 0.0), Some(1));
        // The gap counts between parts, not at the rim.
        assert_eq!(plates(&[of(10.0, 10.0, 2)], [22.0, 10.0], 2.0), Some(1));
        assert_eq!(plates(&[of(10.0, 10.0, 2)], [21.9, 10.0], 2.0), Some(2));
    }

    #[test]
    fn rows_and_plates_take_what_first_fits_them() {
        // By hand: a row of 60 and 40, one of 70 and 30, a third of 50 and 50; rows 40, 30 and 20 deep on plates 100 deep: all on one.
        let parts = [of(60.0, 40.0, 1), of(40.0, 40.0, 1), of(70.0, 30.0, 1), of(30.0, 30.0, 1), of(50.0, 20.0, 2)];
        assert_eq!(plates(&parts, [100.0, 100.0], 0.0), Some(1));
        // Twice as many need 180 of depth: two plates.
        let twice = parts.map(|parts| Parts { count: 2 * parts.count, ..parts });
        assert_eq!(plates(&twice, [100.0, 100.0], 0.0), Some(2));
    }

    #[test]
    fn what_does_not_fit_is_told_and_nothing_needs_no_plate() {
        assert_eq!(plates(&[of(101.0, 10.0, 1)], [100.0, 60.0], 2.0), None);
        assert_eq!(plates(&[of(58.0, 99.0, 1)], [100.0, 60.0], 2.0), Some(1));
        assert_eq!(plates(&[], [100.0, 60.0], 2.0), Some(0));
        for plate in [[0.0, 60.0], [f64::NAN, 60.0], [-1.0, 60.0]] {
            assert_eq!(plates(&[of(1.0, 1.0, 1)], plate, 2.0), None);
        }
        assert_eq!(plates(&[of(1.0, 1.0, 1)], [100.0, 60.0], -2.0), None);
    }
}
