//! Entries of the record in words.

use crate::app::cx::Cx;
use crate::app::names;
use crate::job::{BenchStep, Event, FinishStep, KilnDid, Measures, MeltId, MetalKind, PieceId, Rework, ReworkBy, Weighing};
use crate::paper::words::{one_line, out_for_words, stage_words};
use crate::quantity::{Grams, Kind, print};

/// What happened, in a sentence.
pub fn event(cx: &Cx<'_>, event: &Event) -> String {
    match event {
        Event::Remark => cx.label("event-remark"),
        Event::Reached { pieces, stage } => {
            let first = pieces.first().map(|piece| piece_words(cx, *piece)).unwrap_or_default();
            let args = [("count", pieces.len().into()), ("piece", first.into()), ("stage", stage_words(*stage, cx.texts).into())];
            cx.say("event-reached", &args)
        }
        Event::Pattern { pattern, weight } => {
            weighed(cx, names::pattern(cx, *pattern), weight.as_ref(), &["event-pattern", "event-pattern-net", "event-pattern-gross"])
        }
        Event::TreeWeighed { tree, weight } => {
            weighed(cx, names::tree(cx, *tree), weight.as_ref(), &["event-tree", "event-tree-net", "event-tree-gross"])
        }
        Event::Invested { flask, .. } => cx.say("event-invested", &[("flask", names::flask(cx, *flask).into())]),
        Event::Kiln { burnout, did: KilnDid::WentIn, .. } => cx.say("event-kiln-in", &[("load", names::load(cx, *burnout).into())]),
        Event::Kiln { burnout, did: KilnDid::CameOut, .. } => cx.say("event-kiln-out", &[("load", names::load(cx, *burnout).into())]),
        Event::Kiln { temperature_c, .. } => match temperature_c {
            Some(seen) => {
                let seen = print(seen.get(), Kind::Temperature, cx.style).to_string();
                cx.say("event-kiln-read", &[("temperature", seen.into())])
            }
            None => cx.label("event-kiln"),
        },
        Event::Poured { flask, .. } => cx.say("event-poured", &[("flask", names::flask(cx, *flask).into())]),
        Event::Metal { melt, flask, what, grams } => {
            let of = match (flask, melt) {
                (Some(flask), _) => names::flask(cx, *flask),
                (None, Some(melt)) => melt_words(cx, *melt),
                (None, None) => cx.label("event-metal-batch"),
            };
            let args = [("what", cx.label(metal_key(*what)).into()), ("grams", weight_words(cx, *grams).into()), ("of", of.into())];
            cx.say("event-metal", &args)
        }
        Event::PieceWeighed { piece, finished, grams, after } => {
            let key = match (after, finished) {
                (Some(FinishStep::Filed), _) => "event-piece-filed",
                (Some(FinishStep::Tumbled), _) => "event-piece-tumbled",
                (Some(FinishStep::Polished), _) | (None, true) => "event-piece-finished",
                (Some(FinishStep::CutOff), _) | (None, false) => "event-piece-cut",
            };
            cx.say(key, &[("piece", piece_words(cx, *piece).into()), ("grams", weight_words(cx, *grams).into())])
        }
        Event::Measured { piece, what, measures } => {
            let args = [("piece", piece_words(cx, *piece).into()), ("what", one_line(what).into()), ("sizes", sizes(cx, measures).into())];
            cx.say("event-measured", &args)
        }
        Event::Reworked { piece, rework } => reworked(cx, *piece, rework),
        Event::HandedBack { client, grams, .. } => {
            cx.say("event-handed-back", &[("client", one_line(client).into()), ("grams", weight_words(cx, *grams).into())])
        }
        Event::Rejected { piece, defect } => {
            let key = format!("defect-{}", one_line(defect));
            let defect = if cx.texts.has(&key) { cx.label(&key) } else { one_line(defect) };
            cx.say("event-rejected", &[("piece", piece_words(cx, *piece).into()), ("defect", defect.into())])
        }
        Event::Timed { step, of, seconds } => {
            let took = print(f64::from(*seconds) / 60.0, Kind::Duration, cx.style).to_string();
            let args = [("step", cx.label(step_key(*step)).into()), ("of", names::place(cx, *of).into()), ("took", took.into())];
            cx.say("event-timed", &args)
        }
        Event::SentOut { pieces, sent } => {
            let args = [
                ("what", some_pieces(cx, pieces).into()),
                ("to", one_line(&sent.to).into()),
                ("purpose", out_for_words(sent.what_for, cx.texts).into()),
            ];
            cx.say("event-sent-out", &args)
        }
        Event::CameBack { pieces, back, .. } => {
            let args = [("what", some_pieces(cx, pieces).into()), ("failed", back.failed.len().into())];
            cx.say("event-came-back", &args)
        }
        Event::Withdrawn { entry, reason } => {
            let of = cx.job.record.iter().find(|other| other.id == *entry);
            let of = match of.map(|other| &other.event) {
                Some(Event::Withdrawn { .. }) | None => cx.say("event-entry", &[("number", entry.to_string().into())]),
                Some(other) => self::event(cx, other),
            };
            cx.say("event-withdrawn", &[("what", of.into()), ("reason", one_line(reason).into())])
        }
    }
}

/// `keys` are those of the sentence without a weight, with a net one, with a gross one.
fn weighed(cx: &Cx<'_>, name: String, weight: Option<&Weighing>, keys: &[&str; 3]) -> String {
    let (key, grams) = match weight {
        None => return cx.say(keys[0], &[("name", name.into())]),
        Some(Weighing::Net(grams)) => (keys[1], *grams),
        Some(Weighing::Gross { weight, .. }) => (keys[2], *weight),
    };
    cx.say(key, &[("name", name.into()), ("grams", weight_words(cx, grams).into())])
}

/// What was measured, where. Calipers read hundredths, and what shrinks does so by hundredths.
fn sizes(cx: &Cx<'_>, measures: &Measures) -> String {
    let all = [
        ("pieces-measure-model", measures.model_mm),
        ("pieces-measure-pattern", measures.pattern_mm),
        ("pieces-measure-cast", measures.cast_mm),
        ("pieces-measure-finished", measures.finished_mm),
    ];
    let said = all.into_iter().filter_map(|(key, mm)| {
        let number = format!("{:.2}", mm?.get());
        let size = format!("{} mm", if cx.style.comma { number.replace('.', ",") } else { number });
        Some(cx.say("event-measure", &[("size", size.into()), ("where", cx.label(key).into())]))
    });
    said.collect::<Vec<_>>().join(", ")
}

fn reworked(cx: &Cx<'_>, piece: PieceId, rework: &Rework) -> String {
    let mut parts = vec![cx.label(rework_key(rework.by))];
    parts.extend(rework.taken.map(|grams| cx.say("event-taken", &[("grams", weight_words(cx, grams).into())])));
    parts.extend(rework.added.map(|grams| cx.say("event-added", &[("grams", weight_words(cx, grams).into())])));
    parts.extend(rework.size.as_ref().map(|size| cx.say("event-sized", &[("size", names::size(size).into())])));
    cx.say("event-reworked", &[("piece", piece_words(cx, piece).into()), ("how", parts.join(", ").into())])
}

/// The key of how a piece is repaired or sized.
pub fn rework_key(by: ReworkBy) -> &'static str {
    match by {
        ReworkBy::Laser => "rework-laser",
        ReworkBy::Solder => "rework-solder",
        ReworkBy::Stretch => "rework-stretch",
    }
}

/// The key of a step of finishing.
pub fn finish_key(step: FinishStep) -> &'static str {
    match step {
        FinishStep::CutOff => "finish-step-cut",
        FinishStep::Filed => "finish-step-filed",
        FinishStep::Tumbled => "finish-step-tumbled",
        FinishStep::Polished => "finish-step-polished",
    }
}

/// One piece by its name, several by how many they are.
fn some_pieces(cx: &Cx<'_>, pieces: &[PieceId]) -> String {
    match pieces {
        [one] => piece_words(cx, *one),
        _ => cx.say("event-pieces", &[("count", pieces.len().into())]),
    }
}

/// The key of a step at the bench in a few words.
pub fn step_key(step: BenchStep) -> &'static str {
    match step {
        BenchStep::Weigh => "bench-weigh",
        BenchStep::Mix => "bench-mix",
        BenchStep::Bowl => "bench-bowl",
        BenchStep::Fill => "bench-fill",
        BenchStep::Vacuum => "bench-vacuum",
        BenchStep::Rest => "bench-rest",
        BenchStep::Steam => "bench-steam",
        BenchStep::Kiln => "bench-kiln",
        BenchStep::Charge => "bench-charge",
        BenchStep::Pour => "bench-pour",
        BenchStep::Quench => "bench-quench",
    }
}

fn weight_words(cx: &Cx<'_>, grams: Grams) -> String {
    print(grams.to_f64(), Kind::Mass, cx.style).to_string()
}

fn piece_words(cx: &Cx<'_>, piece: PieceId) -> String {
    cx.say("event-piece", &[("number", piece.number.to_string().into()), ("line", names::line(cx, piece.line).into())])
}

fn melt_words(cx: &Cx<'_>, id: MeltId) -> String {
    let name = cx.job.melts.iter().find(|melt| melt.id == id).map(|melt| melt.name.trim().to_owned()).unwrap_or_default();
    let name = if name.is_empty() { id.to_string() } else { name };
    cx.say("event-melt", &[("name", name.into())])
}

fn metal_key(metal: MetalKind) -> &'static str {
    match metal {
        MetalKind::Charged => "weighed-charged",
        MetalKind::GoodPieces => "weighed-good",
        MetalKind::SpruesAndButton => "weighed-sprues",
        MetalKind::NoFill => "weighed-no-fill",
        MetalKind::Beads => "weighed-beads",
        MetalKind::Sweeps => "weighed-sweeps",
    }
}
