//! A kiln's programme over the clock, at a size in millimetres of the paper.

use super::primitive::{Anchor, Picture, Role, at};

/// What the curve is drawn from. Times are minutes of any one clock.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Curve {
    /// Where the programme goes: time and °C, in the order of time.
    pub points: Vec<(f64, f64)>,
    /// Marks of the clock, with their words.
    pub hours: Vec<(f64, String)>,
    /// Marks of the temperature, with their words.
    pub temperatures: Vec<(f64, String)>,
    /// A temperature that must not be passed, with its words.
    pub ceiling: Option<(f64, String)>,
    /// What a mould's core does under it: time and °C; empty where nobody knows.
    pub under: Vec<(f64, f64)>,
    /// Width and height in mm.
    pub size_mm: [f64; 2],
}

/// Room for the words at the left and at the foot, in mm.
const LEFT: f64 = 15.0;
const FOOT: f64 = 6.0;
const TOP: f64 = 2.0;
const RIGHT: f64 = 6.0;

/// The curve with its clock along the foot.
#[must_use]
pub fn kiln_curve(curve: &Curve) -> Picture {
    let [wide, high] = curve.size_mm.map(|mm| mm.max(30.0));
    let mut picture = Picture::new(at(0.0, 0.0), at(wide, high));
    let times = || curve.points.iter().map(|(time, _)| *time);
    let (from, to) = (times().fold(f64::INFINITY, f64::min), times().fold(f64::NEG_INFINITY, f64::max));
    let marks = curve.temperatures.iter().map(|(c, _)| *c).chain(curve.ceiling.iter().map(|(c, _)| *c));
    let top = curve.points.iter().map(|(_, c)| *c).chain(marks).fold(100.0, f64::max);
    if !(from.is_finite() && to > from && top.is_finite()) {
        return picture;
    }
    let x = |time: f64| LEFT + (time - from) / (to - from) * (wide - LEFT - RIGHT);
    let y = |c: f64| FOOT + c.clamp(0.0, top) / top * (high - FOOT - TOP);
    for (c, words) in &curve.temperatures {
        picture.line(at(LEFT, y(*c)), at(wide - RIGHT, y(*c)), 0.5, Role::Dome);
        picture.text(at(LEFT - 1.5, y(*c)), words, Anchor::Right, Role::Label);
    }
    for (time, words) in curve.hours.iter().filter(|(time, _)| (from..=to).contains(time)) {
        picture.line(at(x(*time), FOOT), at(x(*time), high - TOP), 0.5, Role::Dome);
        picture.text(at(x(*time), FOOT - 3.0), words, Anchor::Middle, Role::Label);
    }
    if let Some((c, words)) = &curve.ceiling {
        picture.broken(at(LEFT, y(*c)), at(wide - RIGHT, y(*c)), Role::Ink);
        picture.text(at(LEFT + 1.0, y(*c) - 2.0), words, Anchor::Left, Role::Ink);
    }
    picture.line(at(LEFT, FOOT), at(wide - RIGHT, FOOT), 1.0, Role::Label);
    for pair in curve.points.windows(2) {
        picture.line(at(x(pair[0].0), y(pair[0].1)), at(x(pair[1].0), y(pair[1].1)), 2.6, Role::Ink);
    }
    for pair in curve.under.windows(2).filter(|pair| pair.iter().all(|(time, _)| (from..=to).contains(time))) {
        picture.broken(at(x(pair[0].0), y(pair[0].1)), at(x(pair[1].0), y(pair[1].1)), Role::Label);
    }
    picture
}

#[cfg(test)]
mod tests {
    use super::super::primitive::Primitive;
    use super::*;

    #[test]
    fn the_highest_stage_stands_highest_and_later_is_further_right() {
        let curve = Curve {
            points: vec![(0.0, 20.0), (60.0, 150.0), (120.0, 150.0), (240.0, 730.0), (300.0, 600.0)],
            hours: vec![(60.0, "01:00".to_owned())],
            temperatures: vec![(500.0, "500 °C".to_owned())],
            ceiling: Some((760.0, "760 °C".to_owned())),
            under: Vec::new(),
            size_mm: [180.0, 60.0],
        };
        let picture = kiln_curve(&curve);
        let course: Vec<_> = picture
            .primitives
            .iter()
            .filter_map(|primitive| match primitive {
                Primitive::Line { from, to, role: Role::Ink, broken: false, .. } => Some((*from, *to)),
                _ => None,
            })
            .collect();
        assert_eq!(course.len(), 4);
        assert!(course.iter().all(|(from, to)| from.x < to.x));
        assert!((course[1].0.y - course[1].1.y).abs() < 1e-9, "a hold is level");
        let highest = course.iter().map(|(_, to)| to.y).fold(0.0, f64::max);
        assert!((course[2].1.y - highest).abs() < 1e-9 && highest < 58.0);
    }

    #[test]
    fn nothing_to_draw_is_an_empty_picture() {
        assert!(kiln_curve(&Curve::default()).primitives.is_empty());
        let still = Curve { points: vec![(5.0, 20.0)], ..Curve::default() };
        assert!(kiln_curve(&still).primitives.is_empty());
    }
}
