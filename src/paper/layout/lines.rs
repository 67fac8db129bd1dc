//! Breaking words into lines, at plain spaces alone: the thin space inside a figure holds it to its unit.

use std::sync::Arc;

use super::face::{Face, PT, Run, Setter};
use super::mark::{Content, Grey, Mark, Node, Spot};

/// Words of one face and darkness.
#[derive(Debug, Clone, Copy)]
pub(super) struct Span<'a> {
    pub face: Face,
    pub grey: Grey,
    pub words: &'a str,
}

/// A part of a line.
#[derive(Debug, Clone)]
pub(super) struct Part {
    /// From the left end of the line, in mm.
    pub x: f64,
    pub run: Arc<Run>,
    pub grey: Grey,
}

/// A line that is set.
#[derive(Debug, Clone, Default)]
pub(super) struct Line {
    pub parts: Vec<Part>,
    /// What is seen of it, in mm: a space at its end is not.
    pub width: f64,
}

impl Line {
    /// The marks of the line with its base line's left end at a spot.
    pub fn marks(&self, at: Spot, size_pt: f64, node: Option<Node>) -> impl Iterator<Item = Content> + '_ {
        self.parts.iter().map(move |part| Content {
            node,
            mark: Mark::Text { at: [at[0] + part.x, at[1]], run: Arc::clone(&part.run), size_pt, grey: part.grey },
        })
    }
}

/// One span alone.
pub(super) fn plain(words: &str) -> Span<'_> {
    Span { face: Face::Plain, grey: super::INK, words }
}

/// One span of bold words.
pub(super) fn bold(words: &str) -> Span<'_> {
    Span { face: Face::Bold, grey: super::INK, words }
}

/// Lines of at most `width` mm. There is at least one line; a word that is longer than a line is cut.
pub(super) fn lines(setter: &mut Setter, spans: &[Span<'_>], size_pt: f64, width: f64) -> Vec<Line> {
    let em = size_pt * PT;
    // A column that is as wide as its widest word holds it, whatever the last digit of the sum says.
    let room = width.max(em) + 1e-6;
    let mut breaker = Breaker { setter, em, room, rows: vec![Vec::new()], used: 0.0, last: Face::Plain };
    for (index, span) in spans.iter().enumerate() {
        for word in span.words.split(' ').filter(|word| !word.is_empty()) {
            breaker.add(index, span.face, word);
        }
    }
    let rows = breaker.rows;
    let last = rows.len() - 1;
    rows.iter().enumerate().map(|(number, row)| join(setter, spans, row, em, number < last)).collect()
}

/// A row before it is set: words with the span they belong to.
type Row = Vec<(usize, String)>;

struct Breaker<'s> {
    setter: &'s mut Setter,
    em: f64,
    room: f64,
    rows: Vec<Row>,
    used: f64,
    /// The face of the word before: the space after it is its own.
    last: Face,
}

impl Breaker<'_> {
    fn add(&mut self, span: usize, face: Face, word: &str) {
        let wide = self.setter.run(face, word).width * self.em;
        let space = if self.used > 0.0 { self.setter.run(self.last, " ").width * self.em } else { 0.0 };
        if self.used > 0.0 && self.used + space + wide > self.room {
            self.turn();
            return self.add(span, face, word);
        }
        if wide <= self.room {
            self.used += space + wide;
            self.last = face;
            return self.put(span, word.to_owned());
        }
        for part in self.cut(face, word) {
            if self.used > 0.0 {
                self.turn();
            }
            self.used = self.setter.run(face, &part).width * self.em;
            self.last = face;
            self.put(span, part);
        }
    }

    fn turn(&mut self) {
        self.rows.push(Row::new());
        self.used = 0.0;
    }

    fn put(&mut self, span: usize, word: String) {
        if let Some(row) = self.rows.last_mut() {
            row.push((span, word));
        }
    }

    /// A long word in parts that go into a line.
    fn cut(&mut self, face: Face, word: &str) -> Vec<String> {
        let (mut parts, mut part, mut used) = (Vec::new(), String::new(), 0.0);
        for sign in word.chars() {
            let wide = self.setter.run(face, sign.encode_utf8(&mut [0; 4])).width * self.em;
            if used + wide > self.room * 0.98 && !part.is_empty() {
                parts.push(std::mem::take(&mut part));
                used = 0.0;
            }
            part.push(sign);
            used += wide;
        }
        parts.push(part);
        parts
    }
}

/// A row as a line: words of one span stand in one run. `goes_on` leaves a space at its end, so that what is copied keeps its words apart.
fn join(setter: &mut Setter, spans: &[Span<'_>], row: &[(usize, String)], em: f64, goes_on: bool) -> Line {
    let mut line = Line::default();
    let mut x = 0.0;
    for (index, group) in row.chunk_by(|one, other| one.0 == other.0).enumerate() {
        let Some(span) = group.first().and_then(|(span, _)| spans.get(*span)) else { continue };
        let seen: String = group.iter().map(|(_, word)| word.as_str()).collect::<Vec<_>>().join(" ");
        let width = setter.run(span.face, &seen).width * em;
        let is_last = row.chunk_by(|one, other| one.0 == other.0).count() == index + 1;
        let run = if is_last && !goes_on { setter.run(span.face, &seen) } else { setter.run(span.face, &format!("{seen} ")) };
        let advance = run.width * em;
        line.parts.push(Part { x, run, grey: span.grey });
        line.width = x + width;
        x += advance;
    }
    line
}

/// The largest size up to `size_pt` at which words go into `width` on one line; at least `least_pt`.
pub(super) fn size_that_fits(setter: &mut Setter, face: Face, words: &str, size_pt: f64, least_pt: f64, width: f64) -> f64 {
    let wide = setter.width(face, words, size_pt);
    if wide <= width { size_pt } else { (size_pt * width / wide * 0.999).max(least_pt) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn said(line: &Line) -> String {
        line.parts.iter().map(|part| part.run.words.as_str()).collect()
    }

    #[test]
    fn a_figure_is_never_parted_from_its_unit() {
        let mut setter = Setter::default();
        for width in 5..60 {
            let set = lines(&mut setter, &[plain("weigh 850\u{202F}g of it")], 9.0, f64::from(width));
            assert!(set.iter().any(|line| said(line).contains("850\u{202F}g")) || width < 9, "{width}");
            assert!(set.iter().all(|line| line.width <= f64::from(width) + 1e-6), "{width}");
        }
    }

    #[test]
    fn nothing_is_lost_and_nothing_is_wider_than_its_line() {
        let mut setter = Setter::default();
        let words = "Dry powder gives off breathable silica, which scars lungs. abcdefghijklmnopqrstuvwxyzabcdefghijklmnopqrstuvwxyz end";
        for width in [8.0, 20.0, 93.0] {
            let set = lines(&mut setter, &[bold("CARE"), plain(words)], 9.0, width);
            let all: String = set.iter().map(said).collect();
            let bare = |text: &str| text.chars().filter(|sign| *sign != ' ').collect::<String>();
            assert_eq!(bare(&all), bare(&format!("CARE{words}")));
            assert!(set.iter().all(|line| line.width <= width + 1e-5));
        }
    }

    #[test]
    fn an_empty_text_is_one_empty_line() {
        assert_eq!(lines(&mut Setter::default(), &[plain("")], 9.0, 50.0).len(), 1);
    }
}
