//! `pourbook measure`: pattern files one by one; a bad one is said and the others still measured.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use serde_json::{Value as Json, json};

use super::out::Out;
use super::{BAD_INPUT, FINE};
use crate::mesh::{self, Format, Heavy, Limits, Measure, Problem, ReadError, Unwatched, Wall, Walls};

pub(super) fn print(files: &[PathBuf], with_walls: bool, as_json: bool, out: &mut Out) -> u8 {
    let mut code = FINE;
    let (mut entries, mut text) = (Vec::new(), String::new());
    for path in files {
        match read(path, with_walls) {
            Ok(found) => {
                entries.push(measured(path, &found));
                text.push_str(&lines(path, &found));
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

/// What a file was found to be.
struct Found {
    format: Format,
    measure: Measure,
    /// Where they were asked for.
    walls: Option<(Walls, Vec<Heavy>)>,
}

fn read(path: &Path, with_walls: bool) -> Result<Found, ReadError> {
    let soup = mesh::read_file(path, &Limits::default())?;
    let walls = || {
        let walls = mesh::thickness(&soup, &Unwatched)?;
        let heavy = mesh::heaviest(&soup, &walls, &|_, _| true, &Unwatched)?;
        Some((walls, heavy))
    };
    Ok(Found { format: soup.format(), measure: mesh::measure(&soup), walls: if with_walls { walls() } else { None } })
}

/// What solids that pass through each other fill, in figures.
fn overlap_json(measure: &Measure) -> Json {
    measure
        .problems
        .iter()
        .find_map(|problem| match problem {
            Problem::OverlappingShells { pairs, at_least_mm3, at_most_mm3, union } => Some(json!({
                "pairs": pairs,
                "union_mm3": union.map(|union| union.volume_mm3),
                "doubt_mm3": union.map(|union| union.doubt_mm3),
                "cuts": union.map(|union| union.cuts),
                "at_least_mm3": at_least_mm3,
                "added_up_mm3": at_most_mm3,
            })),
            _ => None,
        })
        .unwrap_or(Json::Null)
}

fn walls_json((walls, heavy): &(Walls, Vec<Heavy>)) -> Json {
    let wall = |wall: Option<Wall>| {
        wall.map(|wall| json!({ "thickness_mm": wall.thickness_mm, "place_mm": wall.place_mm, "triangle": wall.triangle }))
    };
    let heavy: Vec<Json> = heavy
        .iter()
        .map(|heavy| {
            json!({
                "centre_mm": heavy.centre_mm,
                "diameter_mm": heavy.diameter_mm,
                "modulus_mm": heavy.modulus_mm,
                "foot_mm": heavy.foot.map(|foot| foot.place_mm),
                "outward": heavy.foot.map(|foot| foot.outward),
            })
        })
        .collect();
    json!({
        "known_share": walls.known_share,
        "thinnest": wall(walls.thinnest),
        "typical": wall(walls.typical),
        "heaviest": wall(walls.heaviest),
        "heavy_places": heavy,
    })
}

fn measured(path: &Path, found: &Found) -> Json {
    let Found { format, measure, walls } = found;
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
        "overlap": overlap_json(measure),
        "walls": walls.as_ref().map(walls_json),
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
        "overlap": null,
        "walls": null,
        "problems": [format!("unreadable: {error}")],
    })
}

fn lines(path: &Path, found: &Found) -> String {
    let Found { measure, walls, .. } = found;
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
    if let Some((walls, heavy)) = walls {
        wall_lines(&mut text, walls, heavy);
    }
    for problem in &measure.problems {
        let _ = writeln!(text, "  {}: {problem}", problem.key());
    }
    text
}

fn wall_lines(text: &mut String, walls: &Walls, heavy: &[Heavy]) {
    let place = |[x, y, z]: [f64; 3]| format!("{x:.2}, {y:.2}, {z:.2}");
    for (name, wall) in [("thinnest", walls.thinnest), ("typical", walls.typical), ("thickest", walls.heaviest)] {
        let _ = match wall {
            Some(wall) => writeln!(text, "  {name:11} {:.2} mm at {}", wall.thickness_mm, place(wall.place_mm)),
            None => writeln!(text, "  {name:11} not known"),
        };
    }
    for heavy in heavy {
        let modulus = heavy.modulus_mm.map_or_else(String::new, |modulus| format!(", modulus {modulus:.2} mm"));
        let foot = heavy.foot.map_or_else(String::new, |foot| format!(", nearest outside {}", place(foot.place_mm)));
        let _ = writeln!(text, "  heavy place {:.2} mm across at {}{modulus}{foot}", heavy.diameter_mm, place(heavy.centre_mm));
    }
}
