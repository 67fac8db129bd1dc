//! The form of the chosen pattern, to be turned, zoomed and cut; coloured by its walls, or painted where no sprue may stand.

use std::sync::Arc;

use eframe::egui::{Color32, Id, ProgressBar, RichText, Ui, Vec2, vec2};

use super::heavy::stands_at;
use super::walls::{least_mm, mm_of};
use super::{change, key};
use crate::app::cx::Cx;
use crate::app::inspect::Inspection;
use crate::app::theme::Tokens;
use crate::app::widget::choice::choice;
use crate::app::widget::heading;
use crate::app::widget::number::{Number, number};
use crate::app::widget::part::{Dress, Part, Pin, part};
use crate::job::{NoGo, NoGoKind, Pattern, PatternFile};
use crate::mesh::look::{Hit, Palette};
use crate::mesh::{Soup, Wall, Walls};
use crate::quantity::{Finite, Kind, print};

/// How the form is coloured, and what a click on it does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Hash)]
pub enum Colouring {
    /// Plain material.
    #[default]
    Plain,
    /// By the thickness of the wall under each face.
    Walls,
    /// Places where no sprue may stand: a click paints one, or wipes it off.
    NoSprue(NoGoKind),
}

/// Radius of what one click paints, in mm.
pub const BRUSH_MM: f64 = 1.0;

/// Steps of the scale that walls are coloured by, beside the one for those too thin.
const STEPS: u8 = 10;

/// Shows it, as large as its place allows.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern, size: Vec2) {
    let tokens = cx.tokens;
    let Some(found) = cx.inspection.clone() else { return };
    let (Some(model), Some(soup)) = (found.model.clone(), found.soup.clone()) else {
        // A file without any extent has nothing to show, and its findings say so.
        if let Some(share) = cx.inspecting {
            waits(ui, cx, share, size.x);
        }
        return;
    };
    ui.allocate_ui(vec2(size.x, 0.0), |ui| {
        ui.set_max_width(size.x);
        ui.vertical(|ui| {
            colouring(ui, cx, pattern);
            let paint = palette(ui, cx, pattern, &soup, found.walls.as_deref());
            let name = cx.say("patterns-form-name", &[("pattern", crate::app::names::pattern(cx, pattern.id).into())]);
            let shown = Part {
                id: Id::unique(("pattern-form", pattern.id.0)),
                model: &model,
                size,
                name: &name,
                paint: paint.as_ref(),
                pins: &pins(cx, pattern, &found),
                edges: Some(&found.edges),
            };
            let shown = part(ui, &Dress::of(cx), &shown);
            if let (Some(hit), Colouring::NoSprue(what)) = (shown.clicked, cx.view.colouring) {
                paint_at(cx, pattern, hit, what);
            }
            match (cx.view.colouring, found.walls.as_deref()) {
                (Colouring::Walls, Some(walls)) => {
                    key::walls(ui, cx, &wall_scale(walls, mm_of(pattern), least_mm(cx)), &wall_colours(&tokens))
                }
                (Colouring::NoSprue(_), _) => key::no_sprue(ui, cx),
                _ => {}
            }
            facts(ui, cx, pattern);
            heading::says(ui, &cx.label("part-how-short"), &tokens);
            if let Some(share) = cx.inspecting {
                waits(ui, cx, share, size.x);
            }
            if matches!(cx.view.colouring, Colouring::NoSprue(_)) {
                heading::says(ui, &cx.label("patterns-no-sprue-how"), &tokens);
            }
        });
    });
}

fn waits(ui: &mut Ui, cx: &Cx<'_>, share: f64, width: f32) {
    #[allow(clippy::cast_possible_truncation, reason = "a share for the eye")]
    ui.add(ProgressBar::new(share as f32).desired_width(width).desired_height(6.0).fill(cx.tokens.act));
    ui.label(RichText::new(cx.label("patterns-looking")).color(cx.tokens.ink2));
    // How far it is comes from a thread that wakes nobody for it.
    ui.ctx().request_repaint_after(std::time::Duration::from_millis(300));
}

/// What the form is coloured by, and how large a click paints.
fn colouring(ui: &mut Ui, cx: &mut Cx<'_>, pattern: &Pattern) {
    let tokens = cx.tokens;
    let label = cx.label("patterns-colouring");
    let options: Vec<(Colouring, String)> = [
        (Colouring::Plain, "patterns-colour-plain"),
        (Colouring::Walls, "patterns-colour-walls"),
        (Colouring::NoSprue(NoGoKind::Texture), "patterns-no-sprue-texture"),
        (Colouring::NoSprue(NoGoKind::Seat), "patterns-no-sprue-seat"),
        (Colouring::NoSprue(NoGoKind::Mark), "patterns-no-sprue-mark"),
    ]
    .map(|(colouring, key)| (colouring, cx.label(key)))
    .into();
    let now = cx.view.colouring;
    let place = (Id::unique(("pattern-colouring", pattern.id.0)), label.as_str(), 190.0);
    ui.horizontal(|ui| {
        // Beside a narrow form a row's label would push the choice out of sight.
        ui.label(RichText::new(&label).color(tokens.ink2));
        if let Some(Some(chosen)) = choice(ui, cx, place, Some(&now), &options, false) {
            cx.look(move |view| view.colouring = chosen);
        }
    });
    if matches!(now, Colouring::NoSprue(_)) {
        let label = cx.label("patterns-brush");
        let field = Number::new(Id::unique("pattern-brush"), &label, Kind::Length).now(cx.view.brush_mm).default(Some(BRUSH_MM));
        ui.horizontal(|ui| {
            ui.label(RichText::new(&label).color(tokens.ink2));
            if let Some(brush) = number(ui, cx, &field) {
                cx.look(move |view| view.brush_mm = brush.map(Finite::get));
            }
        });
    }
}

/// Where its walls are thinnest and heaviest, where it is coloured by them; else where its sprue may stand, by number.
fn pins(cx: &Cx<'_>, pattern: &Pattern, found: &Inspection) -> Vec<Pin> {
    if cx.view.colouring == Colouring::Walls {
        let Some(walls) = &found.walls else { return Vec::new() };
        let mm = mm_of(pattern);
        let of = [
            ("patterns-pin-thinnest", &walls.thinnest),
            ("patterns-pin-typical", &walls.typical),
            ("patterns-pin-heaviest", &walls.heaviest),
        ];
        let pin = |(key, wall): (&str, &Option<Wall>)| {
            let wall = wall.as_ref()?;
            let words = cx.say(key, &[("wall", print(wall.thickness_mm * mm, Kind::Length, cx.style).to_string().into())]);
            Some(Pin { at_mm: wall.place_mm, words, is_chosen: false })
        };
        return of.into_iter().filter_map(pin).collect();
    }
    let Some(heavy) = &found.heavy else { return Vec::new() };
    let chosen = pattern.file.as_ref().and_then(|file| file.sprue.as_ref());
    let feet = (1_u32..).zip(&heavy.places).filter_map(|(number, place)| Some((number, place.foot.as_ref()?)));
    let mut pins: Vec<Pin> =
        feet.map(|(number, foot)| Pin { at_mm: foot.place_mm, words: number.to_string(), is_chosen: stands_at(chosen, foot) }).collect();
    // One chosen before something was painted may be offered no more.
    if let Some(at) = chosen.and_then(|point| point.at).filter(|_| pins.iter().all(|pin| !pin.is_chosen)) {
        pins.push(Pin { at_mm: at.map(Finite::get), words: cx.label("patterns-pin-sprue"), is_chosen: true });
    }
    pins
}

/// Triangles, pieces, size: what the file is.
fn facts(ui: &mut Ui, cx: &Cx<'_>, pattern: &Pattern) {
    let Some(measure) = cx.measure_of(pattern.id) else { return };
    let mm = mm_of(pattern);
    let side = |at: usize| print(measure.size[at] * mm, Kind::Length, cx.style).number;
    let size = format!("{} × {} × {}", side(0), side(1), side(2));
    let unit = print(0.0, Kind::Length, cx.style).unit.to_owned();
    let words = cx.say(
        "patterns-facts",
        &[
            ("size", format!("{size}{}{unit}", crate::quantity::THIN).into()),
            ("triangles", u64::from(measure.triangles).into()),
            ("shells", u64::from(measure.shells).into()),
        ],
    );
    ui.label(RichText::new(words).color(cx.tokens.ink2));
}

/// A click paints a place, or wipes off those it falls into.
fn paint_at(cx: &mut Cx<'_>, pattern: &Pattern, hit: Hit, what: NoGoKind) {
    let Some(file) = &pattern.file else { return };
    let radius = cx.view.brush_mm.unwrap_or(BRUSH_MM) / mm_of(pattern);
    let inside: Vec<bool> = file.no_go.iter().map(|place| holds(place, hit.point_mm)).collect();
    let at = hit.point_mm.map(Finite::new);
    let ([Some(x), Some(y), Some(z)], Some(radius)) = (at, Finite::new(radius)) else { return };
    change(cx, "edit-patterns-no-sprue", pattern.id, move |pattern| {
        let Some(file) = &mut pattern.file else { return };
        if inside.contains(&true) {
            let mut inside = inside.into_iter();
            file.no_go.retain(|_| !inside.next().unwrap_or(false));
        } else {
            file.no_go.push(NoGo { at: Some([x, y, z]), radius: Some(radius), what });
        }
    });
}

fn holds(place: &NoGo, point: [f64; 3]) -> bool {
    let (Some(at), Some(radius)) = (place.at, place.radius) else { return false };
    (0..3).map(|axis| (at[axis].get() - point[axis]).powi(2)).sum::<f64>() <= radius.get().powi(2)
}

/// Something made for the picture, kept until what it was made from changes.
fn kept<T: Send + Sync + 'static>(ui: &Ui, id: Id, made_of: u64, make: impl FnOnce() -> T) -> Arc<T> {
    let old: Option<(u64, Arc<T>)> = ui.data(|data| data.get_temp(id));
    if let Some((key, value)) = old
        && key == made_of
    {
        return value;
    }
    let value = Arc::new(make());
    ui.data_mut(|data| data.insert_temp(id, (made_of, Arc::clone(&value))));
    value
}

fn key_of(of: impl std::hash::Hash) -> u64 {
    use std::hash::{DefaultHasher, Hasher};
    let mut hasher = DefaultHasher::new();
    of.hash(&mut hasher);
    hasher.finish()
}

/// The colour of every triangle, where it is not plain.
fn palette(ui: &Ui, cx: &Cx<'_>, pattern: &Pattern, soup: &Arc<Soup>, walls: Option<&Walls>) -> Option<Arc<Palette>> {
    let (tokens, mm, least) = (cx.tokens, mm_of(pattern), least_mm(cx));
    let file = pattern.file.as_ref()?;
    let bits = |number: Finite| number.get().to_bits();
    let marks: Vec<_> = file.no_go.iter().map(|place| (place.at.map(|at| at.map(bits)), place.radius.map(bits), place.what)).collect();
    let key = key_of((
        Arc::as_ptr(soup) as usize,
        cx.view.colouring,
        (mm.to_bits(), least.to_bits(), walls.is_some()),
        marks,
        tokens.paper.to_array(),
    ));
    let id = Id::unique(("pattern-palette", pattern.id.0));
    match cx.view.colouring {
        Colouring::Plain => None,
        Colouring::Walls => {
            let walls = walls?;
            Some(kept(ui, id, key, || by_wall(walls, mm, least, &tokens)))
        }
        Colouring::NoSprue(_) => Some(kept(ui, id, key, || by_no_sprue(soup, file, &tokens))),
    }
}

/// The least wall and the heaviest one in mm, between which the scale of colours goes.
fn wall_scale(walls: &Walls, mm: f64, least_mm: f64) -> [f64; 2] {
    [least_mm, walls.heaviest.as_ref().map_or(least_mm, |wall| wall.thickness_mm * mm).max(least_mm * 1.01)]
}

/// The colour of walls too thin, and those of the scale from thin to heavy.
fn wall_colours(tokens: &Tokens) -> Vec<Color32> {
    // Pale to deep in one hue, so that walls too thin stand out by theirs.
    let pale = tokens.core.lerp_to_gamma(tokens.paper, 0.8);
    let scale = (0..STEPS).map(|step| pale.lerp_to_gamma(tokens.core, f32::from(step) / f32::from(STEPS - 1)));
    std::iter::once(tokens.caution).chain(scale).collect()
}

fn rgb(colour: Color32) -> [u8; 3] {
    [colour.r(), colour.g(), colour.b()]
}

/// Walls too thin in the colour of a Caution; the others from pale to deep.
fn by_wall(walls: &Walls, mm: f64, least_mm: f64, tokens: &Tokens) -> Palette {
    let [_, heaviest] = wall_scale(walls, mm, least_mm);
    let colours = wall_colours(tokens).into_iter().map(rgb).collect();
    let of = walls.thickness_mm.iter().map(|wall| {
        let Some(wall) = wall.map(|wall| f64::from(wall) * mm) else { return u8::MAX };
        if wall < least_mm {
            return 0;
        }
        // In equal ratios: half a millimetre counts for more among thin walls.
        let share = (wall / least_mm).ln() / (heaviest / least_mm).ln();
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within the steps")]
        let step = (share * f64::from(STEPS)).clamp(0.0, f64::from(STEPS - 1)) as u8;
        1 + step
    });
    Palette { of: of.collect(), colours }
}

/// The colours of textures, seats and marks.
pub fn no_sprue_colours(tokens: &Tokens) -> [Color32; 3] {
    [tokens.caution, tokens.heat, tokens.core]
}

/// Places where no sprue may stand, each kind in its colour.
fn by_no_sprue(soup: &Soup, file: &PatternFile, tokens: &Tokens) -> Palette {
    let kind = |triangle: &[[f32; 3]; 3]| {
        let middle = [0, 1, 2].map(|axis| triangle.iter().map(|corner| f64::from(corner[axis])).sum::<f64>() / 3.0);
        let place = file.no_go.iter().find(|place| holds(place, middle));
        place.map_or(u8::MAX, |place| match place.what {
            NoGoKind::Texture => 0,
            NoGoKind::Seat => 1,
            NoGoKind::Mark => 2,
        })
    };
    Palette { colours: no_sprue_colours(tokens).map(rgb).into(), of: soup.triangles().iter().map(kind).collect() }
}
