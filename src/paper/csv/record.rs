//! What happened to a batch, entry by entry, as CSV.

use jiff::civil::DateTime;

use super::{plain, table, to_the_minute, words};
use crate::job::check::points_at;
use crate::job::{Entry, Event, FinishStep, MetalKind, PieceStage, Place, ReworkBy};
use crate::paper::desk::SheetInput;
use crate::paper::words::one_line;
use crate::quantity::Grams;

const HEAD: [&str; 10] = ["entry", "at", "hands", "event", "about", "what", "grams", "withdrawn_by", "photos", "notes"];

/// Every entry in the order of writing, withdrawn ones included: `withdrawn_by` names the entry that took it back.
///
/// `event` is the kind of entry, `about` what it is about by the job's own ids (pieces by their codes), `what` the stage, the defect, the
/// metal, the step or the purpose, `grams` what the scale said where the entry has one weight.
#[must_use]
pub fn record(input: &SheetInput<'_>) -> String {
    table(HEAD, rows(input))
}

/// The cells, a row an entry.
pub(in crate::paper) fn rows(input: &SheetInput<'_>) -> Vec<[String; 10]> {
    let record = &input.job.record;
    record.iter().map(|entry| cells(entry, record)).collect()
}

fn cells(entry: &Entry, record: &[Entry]) -> [String; 10] {
    let by = record.iter().find(|other| matches!(&other.event, Event::Withdrawn { entry: of, .. } if *of == entry.id));
    let about = points_at(&entry.event).into_iter().map(|place| match place {
        Place::Piece(piece) => piece.to_string(),
        other => other.to_string(),
    });
    let about: Vec<String> = about.collect();
    [
        entry.id.to_string(),
        entry.at.map_or_else(String::new, |at: DateTime| to_the_minute(at)),
        words(&one_line(&entry.hands)),
        kind(&entry.event).to_owned(),
        words(&about.join(" ")),
        words(&what(&entry.event)),
        plain(grams(&entry.event)),
        plain(by.map(|by| by.id)),
        words(&entry.photos.iter().map(|photo| one_line(photo)).collect::<Vec<_>>().join(" ")),
        words(&one_line(&entry.notes)),
    ]
}

const fn kind(event: &Event) -> &'static str {
    match event {
        Event::Remark => "remark",
        Event::Reached { .. } => "reached",
        Event::Pattern { .. } => "pattern",
        Event::TreeWeighed { .. } => "tree weighed",
        Event::Invested { .. } => "invested",
        Event::Kiln { .. } => "kiln",
        Event::Poured { .. } => "poured",
        Event::Metal { .. } => "metal weighed",
        Event::PieceWeighed { .. } => "piece weighed",
        Event::Measured { .. } => "measured",
        Event::Reworked { .. } => "reworked",
        Event::HandedBack { .. } => "handed back",
        Event::Rejected { .. } => "rejected",
        Event::SentOut { .. } => "sent out",
        Event::CameBack { .. } => "came back",
        Event::Timed { .. } => "timed",
        Event::Withdrawn { .. } => "withdrawn",
    }
}

fn what(event: &Event) -> String {
    match event {
        Event::Reached { stage, .. } => stage_name(*stage).to_owned(),
        Event::Metal { what, .. } => metal_name(*what).to_owned(),
        Event::PieceWeighed { after, finished, .. } => match (after, finished) {
            (Some(step), _) => step_name(*step).to_owned(),
            (None, true) => "finished".to_owned(),
            (None, false) => "cut off".to_owned(),
        },
        Event::Measured { what, .. } => one_line(what),
        Event::Reworked { rework, .. } => rework_name(rework.by).to_owned(),
        Event::HandedBack { client, .. } => one_line(client),
        Event::Rejected { defect, .. } => one_line(defect),
        Event::SentOut { sent, .. } => one_line(&sent.to),
        Event::Timed { seconds, .. } => format!("{seconds} s"),
        Event::Withdrawn { reason, .. } => one_line(reason),
        Event::Kiln { temperature_c: Some(seen), .. } => format!("{} °C", seen.get()),
        _ => String::new(),
    }
}

fn grams(event: &Event) -> Option<Grams> {
    match event {
        Event::Metal { grams, .. } | Event::PieceWeighed { grams, .. } | Event::HandedBack { grams, .. } => Some(*grams),
        Event::SentOut { sent, .. } => sent.weight,
        Event::CameBack { back, .. } => back.weight,
        Event::Poured { done, .. } => done.charge,
        _ => None,
    }
}

const fn stage_name(stage: PieceStage) -> &'static str {
    match stage {
        PieceStage::Made => "made",
        PieceStage::Cleaned => "cleaned",
        PieceStage::Checked => "checked",
        PieceStage::OnTree => "on tree",
        PieceStage::Invested => "invested",
        PieceStage::BurntOut => "burnt out",
        PieceStage::Cast => "cast",
        PieceStage::CutOff => "cut off",
        PieceStage::Weighed => "weighed",
        PieceStage::Finished => "finished",
        PieceStage::Out => "out",
        PieceStage::Delivered => "delivered",
    }
}

const fn metal_name(what: MetalKind) -> &'static str {
    match what {
        MetalKind::Charged => "charged",
        MetalKind::GoodPieces => "good pieces",
        MetalKind::SpruesAndButton => "sprues and button",
        MetalKind::NoFill => "no fill",
        MetalKind::Beads => "beads",
        MetalKind::Sweeps => "sweeps",
    }
}

const fn step_name(step: FinishStep) -> &'static str {
    match step {
        FinishStep::CutOff => "cut off",
        FinishStep::Filed => "filed",
        FinishStep::Tumbled => "tumbled",
        FinishStep::Polished => "polished",
    }
}

const fn rework_name(by: ReworkBy) -> &'static str {
    match by {
        ReworkBy::Laser => "welded by laser",
        ReworkBy::Solder => "soldered",
        ReworkBy::Stretch => "stretched or compressed",
    }
}
