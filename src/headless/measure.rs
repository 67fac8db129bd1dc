//! `pourbook measure`: pattern files one by one; a bad one is said and the others still measured.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use serde_json::{Value as Json, json};

use super::out::Out;
use super::{BAD_INPUT, FINE};
use crate::mesh::{self, Format, Limits, Measure, ReadError};

pub(super) fn print(files: &[PathBuf], as_json: bool, out: &mut Out) -> u8 {
    let mut code = FINE;
    let (mut entries, mut text) = (Vec::new(), String::new());
    for path in files {
        match read(path) {
            Ok((format, measure)) => {
                entries.push(measured(path, format, &measure));
                text.push_str(&lines(path, &measure));
            }
            Err(error) => {
                code = BAD_INPUT;
                out.tell(&format!("{}: {error}", path.display()));
                entries.push(refused(path, &error));
            }
        }
    }
    if as_json {
        out.data(&format!("{:#}", Json::Array(entries)));
    } else {
        out.data(&text);
    }
    code
}

fn read(path: &Path) -> Result<(Format, Measure), ReadError> {
    let soup = mesh::read_file(path, &Limits::default())?;
    Ok((soup.format(), mesh::measure(&soup)))
}

fn measured(path: &Path, format: Format, measure: &Measure) -> Json {
    let problems: Vec<String> = measure.problems.iter().map(|problem| format!("{}: {problem}", problem.key())).collect();
    json!({
        "file": path.display().to_string(),
        "format": format.key(),
        "triangles": measure.triangles,
        "volume_mm3": measure.volume_mm3,
        "fills_mm3": measure.fills_mm3,
        "fills_at_most_mm3": measure.fills_at_most_mm3,
        "area_mm2": measure.area_mm2,
        "size_mm": measure.size_mm,
        "watertight": measure.watertight,
        "shells": measure.shells.len(),
        "problems": problems,
    })
}

/// A file that could not be read has no figures, and says why in their place.
fn refused(path: &Path, error: &ReadError) -> Json {
    json!({
        "file": path.display().to_string(),
        "format": null,
        "triangles": null,
        "volume_mm3": null,
        "fills_mm3": null,
        "fills_at_most_mm3": null,
        "area_mm2": null,
        "size_mm": null,
        "watertight": null,
        "shells": null,
        "problems": [format!("unreadable: {error}")],
    })
}

fn lines(path: &Path, measure: &Measure) -> String {
    let mut text = format!("{}\n", path.display());
    let number = |value: Option<f64>| value.map_or_else(|| "no such number".to_owned(), |value| format!("{value:.2} mm³"));
    let [x, y, z] = measure.size_mm;
    let _ = writeln!(text, "  volume      {}", number(measure.volume_mm3));
    match (measure.fills_mm3, measure.fills_at_most_mm3) {
        (None, Some(most)) => {
            let _ = writeln!(text, "  metal fills at most {most:.2} mm³");
        }
        (fills, _) => {
            let _ = writeln!(text, "  metal fills {}", number(fills));
        }
    }
    let _ = writeln!(text, "  area        {:.2} mm²", measure.area_mm2);
    let _ = writeln!(text, "  size        {x:.2} × {y:.2} × {z:.2} mm");
    let closed = if measure.watertight { "closed" } else { "open" };
    let _ = writeln!(text, "  triangles   {} in {} shells, {closed}", measure.triangles, measure.shells.len());
    for problem in &measure.problems {
        let _ = writeln!(text, "  {}: {problem}", problem.key());
    }
    text
}
