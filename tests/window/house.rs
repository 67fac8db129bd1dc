//! Colours: contrast, and that they are said in one place.

use std::path::{Path, PathBuf};

use eframe::egui::Color32;
use pourbook::app::theme::{DARK, LIGHT};

/// Relative luminance, WCAG 2.2, 1.4.3.
fn luminance(colour: Color32) -> f64 {
    let channel = |value: u8| {
        let share = f64::from(value) / 255.0;
        if share <= 0.04045 { share / 12.92 } else { ((share + 0.055) / 1.055).powf(2.4) }
    };
    0.2126 * channel(colour.r()) + 0.7152 * channel(colour.g()) + 0.0722 * channel(colour.b())
}

fn contrast(a: Color32, b: Color32) -> f64 {
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

#[test]
fn contrast_is_worked_out_as_published() {
    // WCAG 2.2: black on white is 21, and grey 767676 on white is the lightest that passes 4.5.
    assert!((contrast(Color32::BLACK, Color32::WHITE) - 21.0).abs() < 1e-9);
    assert!((4.5..4.6).contains(&contrast(Color32::from_gray(0x76), Color32::WHITE)));
}

#[test]
fn every_text_can_be_read_on_its_ground() {
    for (theme, tokens) in [("light", LIGHT), ("dark", DARK)] {
        for (name, text, ground) in tokens.text_on_ground() {
            let found = contrast(text, ground);
            assert!(found >= 4.5, "{theme}: {name} on {ground:?} has {found:.2}");
        }
    }
}

fn sources(folder: &Path, found: &mut Vec<PathBuf>) {
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            sources(&path, found);
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            found.push(path);
        }
    }
}

#[test]
fn colours_are_said_in_one_place() {
    let mut files = Vec::new();
    sources(&Path::new(env!("CARGO_MANIFEST_DIR")).join("src/app"), &mut files);
    assert!(files.len() > 30);
    for file in files.iter().filter(|file| !file.ends_with("app/theme.rs")) {
        let text = std::fs::read_to_string(file).unwrap();
        for literal in ["from_rgb", "from_gray", "from_rgba", "from_hex", "hex_color", "Color32::BLACK", "Color32::WHITE", "Color32::RED"] {
            assert!(!text.contains(literal), "{} names a colour: {literal}", file.display());
        }
    }
}
