//! Type: the two faces of the one family, and words as runs of their glyphs.

use std::collections::HashMap;
use std::ops::Range;
use std::sync::{Arc, OnceLock};

use harfrust::{BufferFlags, Direction, FontRef, ShapeOptions, ShaperData, UnicodeBuffer, script};

/// A face of the family.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Face {
    /// Running text.
    Plain,
    /// Headings and weights.
    Bold,
}

impl Face {
    /// The font file of the face.
    #[must_use]
    pub fn data(self) -> &'static [u8] {
        match self {
            Self::Plain => dejavu::sans_condensed::regular(),
            Self::Bold => dejavu::sans_condensed::bold(),
        }
    }
}

/// How far the family reaches above its base line, in em.
pub const ASCENT: f64 = 0.77;
/// How far it reaches below it, in em.
pub const DESCENT: f64 = 0.24;

/// A glyph in its run; lengths in em.
#[derive(Debug, Clone, PartialEq)]
pub struct Glyph {
    /// Its number in the font.
    pub id: u32,
    /// The bytes of the run's words it stands for.
    pub of: Range<usize>,
    /// How far it goes on.
    pub advance: f32,
    /// How far it is moved to the right, and up.
    pub offset: [f32; 2],
}

/// Words set in a face.
#[derive(Debug, Clone, PartialEq)]
pub struct Run {
    /// The face.
    pub face: Face,
    /// The words.
    pub words: String,
    /// Their glyphs from left to right.
    pub glyphs: Vec<Glyph>,
    /// Their width in em.
    pub width: f64,
}

struct Font {
    font: FontRef<'static>,
    data: ShaperData,
    /// Stands for what the face has no sign for.
    blank: u32,
}

fn font(face: Face) -> &'static Font {
    static FONTS: [OnceLock<Font>; 2] = [OnceLock::new(), OnceLock::new()];
    FONTS[face as usize].get_or_init(|| {
        let font = FontRef::new(face.data()).expect("the shipped font is sound");
        let data = ShaperData::new(&font);
        let mut made = Font { font, data, blank: 0 };
        made.blank = shape(&made, "\u{25A1}").first().map_or(0, |glyph| glyph.id);
        made
    })
}

fn shape(font: &Font, words: &str) -> Vec<Glyph> {
    let shaper = font.data.shaper(&font.font).build();
    let mut buffer = UnicodeBuffer::new();
    buffer.push_str(words);
    // A column of a sheet runs from left to right, whatever a name is written in.
    buffer.set_direction(Direction::LeftToRight);
    buffer.set_script(script::LATIN);
    buffer.set_flags(BufferFlags::REMOVE_DEFAULT_IGNORABLES | BufferFlags::DO_NOT_INSERT_DOTTED_CIRCLE);
    let shaped = shaper.shape(buffer, ShapeOptions::new());
    #[allow(clippy::cast_precision_loss, reason = "font units are small whole numbers")]
    let em = |units: i32| units as f32 / shaper.units_per_em() as f32;
    let infos = shaped.glyph_infos();
    let ends = |cluster: u32| infos.iter().map(|info| info.cluster).filter(|other| *other > cluster).min();
    infos
        .iter()
        .zip(shaped.glyph_positions())
        .map(|(info, position)| {
            let end = ends(info.cluster).map_or(words.len(), |end| end as usize);
            Glyph {
                id: info.glyph_id,
                of: info.cluster as usize..end,
                advance: em(position.x_advance),
                offset: [em(position.x_offset), em(position.y_offset)],
            }
        })
        .collect()
}

/// Signs that have no place on paper: they are not seen, and some turn text around.
fn is_printed(sign: char) -> bool {
    !sign.is_control()
        && !matches!(sign, '\u{AD}' | '\u{200B}'..='\u{200F}' | '\u{2028}'..='\u{202E}' | '\u{2060}'..='\u{206F}' | '\u{FE00}'..='\u{FE0F}' | '\u{FEFF}')
        && !matches!(sign, '\u{E000}'..='\u{F8FF}' | '\u{FFF0}'..='\u{FFFF}')
        && u32::from(sign) < 0xE_0000
}

fn run(face: Face, words: &str) -> Run {
    let words: String = words.chars().filter(|sign| is_printed(*sign)).collect();
    let font = font(face);
    let mut glyphs = shape(font, &words);
    for glyph in &mut glyphs {
        if glyph.id == 0 {
            (glyph.id, glyph.offset) = (font.blank, [0.0; 2]);
            glyph.advance = glyph.advance.max(BLANK_EM);
        }
    }
    let width = glyphs.iter().map(|glyph| f64::from(glyph.advance)).sum();
    Run { face, words, glyphs, width }
}

/// Width of the box that stands for a sign the face lacks.
const BLANK_EM: f32 = 0.85;

/// Sets words, and remembers those it has set.
#[derive(Debug, Default)]
pub struct Setter {
    known: HashMap<(Face, String), Arc<Run>>,
}

/// How many words a setter remembers: a document has a few thousand different ones.
const KNOWN: usize = 20_000;

impl Setter {
    /// Words in a face.
    pub fn run(&mut self, face: Face, words: &str) -> Arc<Run> {
        if let Some(known) = self.known.get(&(face, words.to_owned())) {
            return Arc::clone(known);
        }
        let made = Arc::new(run(face, words));
        if self.known.len() >= KNOWN {
            self.known.clear();
        }
        self.known.insert((face, words.to_owned()), Arc::clone(&made));
        made
    }

    /// Width of words in mm, at a size in points.
    pub fn width(&mut self, face: Face, words: &str, size_pt: f64) -> f64 {
        self.run(face, words).width * size_pt * PT
    }
}

/// A point in mm.
pub const PT: f64 = 25.4 / 72.0;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digits_are_as_wide_as_each_other() {
        let mut setter = Setter::default();
        for face in [Face::Plain, Face::Bold] {
            let one = setter.run(face, "1").width;
            assert!("0123456789".chars().all(|digit| (setter.run(face, &digit.to_string()).width - one).abs() < 1e-6));
            assert!(one > 0.3 && one < 0.9, "{one}");
        }
    }

    #[test]
    fn every_sign_of_the_trade_is_there() {
        let blank = font(Face::Plain).blank;
        assert!(blank > 0);
        for sign in "⌀Ø×′″→▸✓⚠°³²½‰−–·\u{202F}\u{2009}äöüßé„“’…".chars() {
            for face in [Face::Plain, Face::Bold] {
                let run = run(face, &sign.to_string());
                assert!(run.glyphs.iter().all(|glyph| glyph.id != font(face).blank && glyph.id != 0), "{sign} {:x}", u32::from(sign));
            }
        }
    }

    #[test]
    fn what_the_face_lacks_is_a_box_and_keeps_its_text() {
        let run = run(Face::Plain, "a漢b");
        assert_eq!(run.words, "a漢b");
        assert_eq!(run.glyphs[1].id, font(Face::Plain).blank);
        assert_eq!(&run.words[run.glyphs[1].of.clone()], "漢");
    }

    #[test]
    fn what_turns_text_around_is_left_out() {
        assert_eq!(run(Face::Plain, "a\u{202E}b\u{0}\u{FEFF}c\u{E001}").words, "abc");
    }
}
