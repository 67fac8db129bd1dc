//! Every number of flasks of each size that adds up, the cheapest first.

use super::Size;

/// How many flasks of each size.
pub(super) type Many = Vec<u32>;

/// Ways of one number of flasks that are looked at; a shelf and a batch that have more are planned by rule of thumb.
const MOST_WAYS: u64 = 200_000;

/// All ways to take `flasks` flasks of which at least `least` of each size, with no more of a size than its stock, sorted by volume. Nothing
/// where there are too many to go through.
pub(super) fn ways(sizes: &[Size], flasks: u32, least: &[u32]) -> Option<Vec<(u64, Many)>> {
    let open = u64::from(flasks.saturating_sub(least.iter().sum()));
    // So many ways to part what is open among the sizes, were there no end of any.
    let mut many = 1_u64;
    for more in 1..sizes.len() as u64 {
        many = many.saturating_mul(open + more) / more;
        if many > MOST_WAYS {
            return None;
        }
    }
    let mut found = Vec::new();
    let mut now = least.to_vec();
    let taken: u32 = least.iter().sum();
    if taken <= flasks {
        go_on(sizes, 0, flasks - taken, &mut now, &mut found);
    }
    let mut found: Vec<(u64, Many)> = found.into_iter().map(|many| (volume(sizes, &many), many)).collect();
    found.sort();
    Some(found)
}

fn go_on(sizes: &[Size], at: usize, left: u32, now: &mut Many, found: &mut Vec<Many>) {
    if at == sizes.len() {
        if left == 0 {
            found.push(now.clone());
        }
        return;
    }
    let held = now[at];
    let most = sizes[at].stock.map_or(left, |stock| left.min(stock.saturating_sub(held)));
    for more in 0..=most {
        now[at] = held + more;
        go_on(sizes, at + 1, left - more, now, found);
    }
    now[at] = held;
}

/// Their insides together, in mm³.
pub(super) fn volume(sizes: &[Size], many: &[u32]) -> u64 {
    sizes.iter().zip(many).map(|(size, many)| size.volume_mm3 * u64::from(*many)).sum()
}
