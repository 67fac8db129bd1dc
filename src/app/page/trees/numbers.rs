//! Which pieces of a line, as text: `1-3, 5`.

use std::collections::BTreeSet;

/// Numbers as text, runs drawn together.
#[must_use]
pub fn written(numbers: &BTreeSet<u32>) -> String {
    let mut runs: Vec<(u32, u32)> = Vec::new();
    for &number in numbers {
        match runs.last_mut() {
            Some((_, end)) if number == end.saturating_add(1) => *end = number,
            _ => runs.push((number, number)),
        }
    }
    let run = |&(start, end): &(u32, u32)| match end - start {
        0 => start.to_string(),
        1 => format!("{start}, {end}"),
        _ => format!("{start}\u{2013}{end}"),
    };
    runs.iter().map(run).collect::<Vec<_>>().join(", ")
}

/// Text as numbers from 1 to `most`; `None` where it cannot be read, nothing where it is empty.
#[must_use]
pub fn read(text: &str, most: u32) -> Option<BTreeSet<u32>> {
    let mut numbers = BTreeSet::new();
    for part in text.split([',', ';', '+']) {
        let part = part.trim();
        if part.is_empty() {
            continue;
        }
        let (start, end) = part.split_once(['-', '\u{2013}', '\u{2212}']).unwrap_or((part, part));
        let (start, end): (u32, u32) = (start.trim().parse().ok()?, end.trim().parse().ok()?);
        if start < 1 || end < start || end > most {
            return None;
        }
        numbers.extend(start..=end);
    }
    Some(numbers)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_reads_back() {
        let numbers = BTreeSet::from([1, 2, 3, 5, 8, 9]);
        assert_eq!(written(&numbers), "1\u{2013}3, 5, 8, 9");
        assert_eq!(read(&written(&numbers), 9), Some(numbers));
    }

    #[test]
    fn numbers_outside_the_line_are_refused() {
        assert_eq!(read("1-3, 5", 5), Some(BTreeSet::from([1, 2, 3, 5])));
        assert_eq!(read("", 5), Some(BTreeSet::new()));
        for wrong in ["6", "0", "3-1", "a", "1-", "1 to 3"] {
            assert_eq!(read(wrong, 5), None, "{wrong}");
        }
    }
}
