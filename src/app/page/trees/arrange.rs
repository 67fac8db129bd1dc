//! A tree is arranged: what is lacking for it, how far it is, what came of it, and what the tree costs as it stands.

use eframe::egui::{Checkbox, ProgressBar, Ui};

use crate::app::action::Action;
use crate::app::cx::Cx;
use crate::app::widget::row::row;
use crate::app::widget::{button, heading};
use crate::calc::arrange::{CannotArrange, Cost, Fault, Lacks, Task, cost, task_of};
use crate::calc::places::Spot;
use crate::calc::stand::{Hang, Part};
use crate::job::{LineId, Tree};
use crate::quantity::{Kind, print};
use crate::texts::Word;

/// A sentence of a piece, where there is one, with the room or measure it needs and the one it has.
type Needs<'n> = dyn Fn(&str, Option<usize>, f64, f64) -> String + 'n;

/// How far the search is shows once it goes on for so long.
const SHOWN_AFTER_S: f64 = 0.5;

/// Shows it.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>, tree: &Tree, spots: &[Spot]) {
    let tokens = cx.tokens;
    let computed = cx.computed;
    let task = task_of(&computed.sound, tree, &computed.report, &computed.book, &computed.shelves, false);
    if let Ok(task) = &task {
        costs(ui, cx, task, spots);
    }
    if let Some((share, since)) = cx.arranger.progress(tree.id) {
        if since.as_secs_f64() >= SHOWN_AFTER_S {
            heading::says(ui, &cx.label("trees-arranging"), &tokens);
            let width = ui.available_width().min(400.0);
            #[allow(clippy::cast_possible_truncation, reason = "a bar has few points")]
            ui.add(ProgressBar::new(share as f32).desired_width(width).desired_height(6.0).fill(tokens.act));
        }
        if button::plain(ui, &cx.label("trees-arrange-stop"), &tokens).clicked() {
            cx.act(Action::StopArranging);
        }
        // Often enough for the bar, and rarely enough that the window rests between.
        ui.ctx().request_repaint_after(std::time::Duration::from_millis(300));
        return;
    }
    ui.horizontal_wrapped(|ui| {
        if button::outlined(ui, &cx.label("trees-arrange"), &tokens, task.is_ok()).clicked() {
            cx.act(Action::Arrange);
        }
        let mut hold = cx.view.hold_placed;
        if ui.add(Checkbox::new(&mut hold, cx.label("trees-arrange-hold"))).changed() {
            cx.look(move |view| view.hold_placed = hold);
        }
    });
    if let Err(lacks) = task {
        heading::says(ui, &lacking(cx, lacks), &tokens);
    }
    if let Some(outcome) = cx.arranger.outcome(tree.id) {
        let words = match &outcome.came {
            Ok(count) => cx.say("trees-arranged", &[("count", (*count).into())]),
            Err(why) => reason(cx, why, spots),
        };
        let stopped = if outcome.stopped { format!(" {}", cx.label("trees-arrange-stopped")) } else { String::new() };
        heading::says(ui, &format!("{words}{stopped}"), &tokens);
    }
}

/// What the tree costs as its pieces hang now.
fn costs(ui: &mut Ui, cx: &Cx<'_>, task: &Task, spots: &[Spot]) {
    let hangs: Vec<Hang> = task.pieces.iter().zip(spots).map(|(piece, spot)| hang(piece, spot, task)).collect();
    let Cost { heavy, thin, balance, total } = cost(task, &hangs);
    let tokens = cx.tokens;
    let share = |share: f64| cx.say("trees-cost-share", &[("share", format!("{:.0}", 100.0 * share).into())]);
    row(ui, &cx.label("trees-cost"), &tokens, |ui| {
        let args = [("heavy", share(heavy).into()), ("thin", share(thin).into()), ("balance", share(balance).into())];
        heading::says(ui, &format!("{} {}", share(total), cx.say("trees-cost-of", &args)), &tokens);
    });
}

fn hang(piece: &crate::calc::arrange::Wanted, spot: &Spot, task: &Task) -> Hang {
    Hang {
        joint_mm: task.trunk.dome_mm + spot.height_mm,
        around_deg: spot.around_deg,
        angle_deg: piece.angle_deg,
        twist_deg: spot.turn_deg,
        feed_diameter_mm: piece.feed_diameter_mm,
        feed_length_mm: piece.feed_length_mm,
        form: piece.form.clone(),
    }
}

fn name(cx: &Cx<'_>, line: LineId, number: u32) -> String {
    let design = cx.job.lines().find(|(_, found)| found.id == line).map_or_else(String::new, |(_, line)| line.design.clone());
    format!("{design} {number}")
}

fn lacking(cx: &Cx<'_>, lacks: Lacks) -> String {
    let of = |key: &str, line, number| cx.say(key, &[("piece", name(cx, line, number).into())]);
    match lacks {
        Lacks::Pieces => cx.label("trees-standing-no-pieces"),
        Lacks::MainSprue => cx.label("trees-standing-no-main"),
        Lacks::Flask => cx.label("trees-arrange-no-flask"),
        Lacks::Sprue(line, number) => of("trees-arrange-no-sprue", line, number),
        Lacks::Size(line, number) => of("trees-arrange-no-size", line, number),
        Lacks::Fewer => cx.label("trees-arrange-fewer"),
    }
}

/// Why a tree could not be arranged, in a sentence with its figures.
fn reason(cx: &Cx<'_>, why: &CannotArrange, spots: &[Spot]) -> String {
    let piece = |at: usize| spots.get(at).map_or_else(String::new, |spot| name(cx, spot.line, spot.number));
    let mm = |mm: f64| print(mm, Kind::Length, cx.style).to_string();
    let needs = |key: &str, at: Option<usize>, needs: f64, has: f64| {
        let mut args: Vec<(&str, Word<'_>)> = vec![("needs", mm(needs).into()), ("has", mm(has.max(0.0)).into())];
        args.extend(at.map(|at| ("piece", piece(at).into())));
        cx.say(key, &args)
    };
    match why {
        CannotArrange::BadFlask | CannotArrange::BadPiece { .. } => cx.label("trees-cannot-sizes"),
        CannotArrange::TrunkTooLong { needs_mm, has_mm } => needs("trees-cannot-trunk-long", None, *needs_mm, *has_mm),
        CannotArrange::TrunkTooThick { needs_mm, has_mm } => needs("trees-cannot-trunk-thick", None, *needs_mm, *has_mm),
        CannotArrange::TooWide { piece, needs_mm, has_mm } => needs("trees-cannot-wide", Some(*piece), *needs_mm, *has_mm),
        CannotArrange::FeedTooShort { piece, needs_mm, has_mm } => needs("trees-cannot-feed", Some(*piece), *needs_mm, *has_mm),
        CannotArrange::TooHigh { piece, needs_mm, has_mm } => needs("trees-cannot-high", Some(*piece), *needs_mm, *has_mm),
        CannotArrange::TrunkTooShort { piece, needs_mm, has_mm } => needs("trees-cannot-trunk-short", Some(*piece), *needs_mm, *has_mm),
        CannotArrange::Held(fault) => held(cx, fault, &piece, &needs),
        CannotArrange::RoomFor { most, of, hangs, .. } => {
            let out = hangs.iter().position(Option::is_none).map(piece).unwrap_or_default();
            cx.say("trees-cannot-room", &[("most", (*most).into()), ("of", (*of).into()), ("piece", out.into())])
        }
    }
}

fn held(cx: &Cx<'_>, fault: &Fault, piece: &dyn Fn(usize) -> String, needs: &Needs<'_>) -> String {
    match fault {
        Fault::Wall { piece, has_mm, needs_mm } => needs("trees-cannot-held-wall", Some(*piece), *needs_mm, *has_mm),
        Fault::Between { parts, has_mm, needs_mm } => {
            let of = parts.iter().find_map(|part| match part {
                Part::Piece(at) | Part::Feed(at) => Some(*at),
                Part::Trunk => None,
            });
            needs("trees-cannot-held-near", of, *needs_mm, *has_mm)
        }
        Fault::Number { piece: at } | Fault::NotAsked { piece: at } | Fault::Moved { piece: at } | Fault::OffTrunk { piece: at, .. } => {
            cx.say("trees-cannot-held", &[("piece", piece(*at).into())])
        }
        Fault::Top { has_mm, needs_mm } | Fault::Bottom { has_mm, needs_mm } => needs("trees-cannot-held-ends", None, *needs_mm, *has_mm),
        Fault::Count { .. } => cx.label("trees-cannot-sizes"),
    }
}
