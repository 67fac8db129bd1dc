//! What is wrong with a picture, found in the shapes it is made of: text that leaves its clip, text over text.

use eframe::egui::{Rect, Shape, epaint::ClippedShape};

/// A text as it stands on the screen.
#[derive(Debug, Clone)]
pub struct Seen {
    pub words: String,
    pub ink: Rect,
    pub clip: Rect,
}

/// Every text of a picture, in the order of painting.
pub fn texts(shapes: &[ClippedShape]) -> Vec<Seen> {
    let mut seen = Vec::new();
    for clipped in shapes {
        collect(&clipped.shape, clipped.clip_rect, &mut seen);
    }
    seen
}

fn collect(shape: &Shape, clip: Rect, seen: &mut Vec<Seen>) {
    match shape {
        Shape::Vec(shapes) => shapes.iter().for_each(|shape| collect(shape, clip, seen)),
        Shape::Text(text) => {
            // Line by line: the first line of a text may begin behind another.
            for row in &text.galley.rows {
                let ink = row.row.visuals.mesh_bounds.translate(text.pos.to_vec2() + row.pos.to_vec2());
                let words: String = row.row.text();
                if !words.trim().is_empty() && ink.is_positive() {
                    seen.push(Seen { words, ink, clip });
                }
            }
        }
        _ => {}
    }
}

/// Texts that are cut at the left or right, and pairs that lie over each other.
pub fn faults(seen: &[Seen]) -> Vec<String> {
    let mut faults = Vec::new();
    let visible: Vec<&Seen> = seen.iter().filter(|text| text.ink.intersect(text.clip).is_positive()).collect();
    for text in &visible {
        if text.ink.left() < text.clip.left() - 1.0 || text.ink.right() > text.clip.right() + 1.0 {
            faults.push(format!("“{}” is cut: {:?} in {:?}", text.words, text.ink.x_range(), text.clip.x_range()));
        }
    }
    for (index, a) in visible.iter().enumerate() {
        for b in &visible[index + 1..] {
            let over = a.ink.intersect(a.clip).intersect(b.ink.intersect(b.clip));
            if over.width() > 1.5 && over.height() > 1.5 {
                faults.push(format!("“{}” lies over “{}”", b.words, a.words));
            }
        }
    }
    faults
}
