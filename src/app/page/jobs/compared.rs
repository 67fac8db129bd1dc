//! A casting of another job beside one of this: what differs stands out.

use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use std::sync::Arc;

use eframe::egui::{Id, Label, RichText, Ui};

use crate::app::cx::Cx;
use crate::app::names;
use crate::app::theme::{ROW, size};
use crate::app::widget::heading;
use crate::app::widget::row::{cell, fitted};
use crate::calc::compare::{Compared, Side, Told, compare};
use crate::calc::{Book, Report, Runs, Shelves, recompute};
use crate::files::batch::LONGEST_DOCUMENT;
use crate::files::disk::{Disk, RealDisk};
use crate::job::check::mend;
use crate::job::format::read_job;
use crate::job::{Event, FlaskId, Job, PieceId, pieces_in, standing};
use crate::paper::words::one_line;
use crate::quantity::print;

/// Widths of the columns: what, then, now.
const WIDE: [f32; 3] = [190.0, 190.0, 190.0];

/// Another job, computed.
struct Other {
    job: Job,
    report: Report,
    book: Book,
}

type Kept = (PathBuf, Result<Arc<Other>, String>);

/// Shows both castings.
pub fn show(ui: &mut Ui, cx: &Cx<'_>, (path, then): (&Path, FlaskId), now: FlaskId) {
    let tokens = cx.tokens;
    let key = Id::unique("jobs-compared");
    let kept: Option<Kept> = ui.data(|data| data.get_temp(key));
    let (_, read) = kept.filter(|(of, _)| of == path).unwrap_or_else(|| {
        let read = (path.to_path_buf(), read(cx, path).map(Arc::new));
        ui.data_mut(|data| data.insert_temp(key, read.clone()));
        read
    });
    let other = match read {
        Ok(other) => other,
        Err(why) => {
            ui.add(Label::new(RichText::new(one_line(&why)).color(tokens.caution)).wrap());
            return;
        }
    };
    let last = Side { job: &other.job, report: &other.report, book: &other.book, flask: then };
    let computed = cx.computed;
    let here = Side { job: &computed.sound, report: &computed.report, book: &computed.book, flask: now };
    let rows = compare(last, here);
    let differ = rows.iter().filter(|row| row.differs).count();
    heading::says(ui, &cx.say("jobs-differ", &[("count", differ.into())]), &tokens);
    table(ui, cx, &rows);
    rejected(ui, cx, &other.job, then);
}

/// Reads and computes another job; with its own copies of the shelf it comes to the figures of then.
fn read(cx: &Cx<'_>, path: &Path) -> Result<Other, String> {
    let bytes = RealDisk.read(path, LONGEST_DOCUMENT).map_err(|error| error.to_string())?;
    let (job, _) = mend(&read_job(&bytes).map_err(|error| error.to_string())?.document);
    let studio = &cx.computed.sound_studio;
    let shelves = Shelves::new(&job, studio);
    let mut book = Book::default();
    let report = recompute(&job, studio, &shelves, &Runs::default(), cx.setting, &mut book);
    Ok(Other { job, report, book })
}

fn table(ui: &mut Ui, cx: &Cx<'_>, rows: &[Compared]) {
    let tokens = cx.tokens;
    ui.horizontal(|ui| {
        for (key, width) in ["jobs-what", "jobs-then", "jobs-now"].into_iter().zip(fitted(ui, WIDE, 0.0)) {
            cell(ui, &cx.label(key), width, size::SMALL, tokens.ink2);
        }
    });
    // What differs is what is looked for.
    for row in rows.iter().filter(|row| row.differs).chain(rows.iter().filter(|row| !row.differs)) {
        ui.horizontal(|ui| {
            ui.set_height(ROW);
            let wide = fitted(ui, WIDE, 0.0);
            let name = if row.differs { format!("≠ {}", cx.label(row.label)) } else { cx.label(row.label) };
            cell(ui, &name, wide[0], size::BODY, if row.differs { tokens.caution } else { tokens.ink2 });
            for (side, width) in row.sides.iter().zip(&wide[1..]) {
                let said = side.as_ref().map_or_else(|| "–".to_owned(), |told| words(cx, told));
                cell(ui, &said, *width, size::BODY, if row.differs { tokens.ink } else { tokens.ink2 });
            }
        });
    }
}

fn words(cx: &Cx<'_>, told: &Told) -> String {
    match told {
        Told::Number(value, kind) => print(*value, *kind, cx.style).to_string(),
        Told::Entry(id) => names::entry(cx, id),
        Told::Words(words) => one_line(words),
        Told::Count(count) => count.to_string(),
        Told::Segments(segments) => cx.say("jobs-segments", &[("count", segments.len().into())]),
    }
}

/// What became of the pieces of that flask.
fn rejected(ui: &mut Ui, cx: &Cx<'_>, job: &Job, flask: FlaskId) {
    let here: BTreeSet<PieceId> = pieces_in(job, flask).collect();
    let mut defects: Vec<String> = standing(&job.record)
        .filter_map(|entry| match &entry.event {
            Event::Rejected { piece, defect } if here.contains(piece) => Some(one_line(defect)),
            _ => None,
        })
        .collect();
    let count = defects.len();
    defects.sort();
    defects.dedup();
    let said = cx.say("jobs-rejected", &[("count", count.into()), ("defects", defects.join(", ").into())]);
    heading::says(ui, &said, &cx.tokens);
}
