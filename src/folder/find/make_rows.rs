//! Making the rows of a job.

use std::collections::BTreeMap;

use jiff::civil::{Date, DateTime};

use super::rows::{Cell, Ends, Rows};
use super::{DateOf, Field, Texts};
use crate::folder::brief::{Brief, BriefEvent, BriefFlask, BriefLine, BriefOrder, BriefProgramme};
use crate::folder::facts::{flasks_of_lines, pours, standing};
use crate::job::{FlaskId, LineId, Size};

impl Rows {
    /// The rows of a job; its texts are taken up.
    pub(crate) fn of(job: &Brief, texts: &mut Texts) -> Self {
        let about = About::of(job);
        let mut sheet = Sheet { texts, ends: Vec::new(), cells: Vec::new(), dates: Vec::new() };
        about.job_row(&mut sheet);
        for order in &job.orders {
            for line in &order.lines {
                about.line_row(order, line, &mut sheet);
            }
        }
        Self { ends: sheet.ends.into(), cells: sheet.cells.into(), dates: sheet.dates.into() }
    }
}

/// What the rows of a job are made from.
struct About<'j> {
    job: &'j Brief,
    flasks: BTreeMap<LineId, Vec<&'j BriefFlask>>,
    poured: BTreeMap<FlaskId, Option<Date>>,
    defects: BTreeMap<LineId, Vec<&'j str>>,
}

impl<'j> About<'j> {
    fn of(job: &'j Brief) -> Self {
        let mut defects: BTreeMap<LineId, Vec<&str>> = BTreeMap::new();
        for entry in standing(job) {
            if let BriefEvent::Rejected { piece, defect } = &entry.event {
                defects.entry(piece.line).or_default().push(defect);
            }
        }
        let poured = pours(job).into_iter().map(|pour| (pour.flask, pour.at.map(DateTime::date))).collect();
        Self { job, flasks: flasks_of_lines(job), poured, defects }
    }

    fn job_row(&self, sheet: &mut Sheet<'_>) {
        let job = self.job;
        sheet.put(Field::Job, &job.name);
        job.trees.iter().for_each(|tree| sheet.put(Field::Tree, &tree.name));
        job.melts.iter().flat_map(|melt| &melt.charge).for_each(|draw| sheet.put(Field::Lot, &draw.lot));
        job.flasks.iter().filter_map(|flask| flask.powder.as_ref()).for_each(|powder| sheet.put(Field::Powder, powder.as_str()));
        for burnout in &job.burnouts {
            burnout.kiln.iter().for_each(|kiln| sheet.put(Field::Kiln, kiln.as_str()));
            if let Some(BriefProgramme::Table(table)) = &burnout.programme {
                sheet.put(Field::Kiln, table.as_str());
            }
        }
        // A job without lines is found by what else it says.
        if job.orders.iter().all(|order| order.lines.is_empty()) {
            job.orders.iter().for_each(|order| sheet.put(Field::Client, &order.client));
            job.flasks.iter().for_each(|flask| sheet.flask(flask));
        }
        self.dates(job.orders.iter().filter_map(|order| order.taken), &job.flasks.iter().collect::<Vec<_>>(), sheet);
        sheet.end_row(LineId(0));
    }

    fn line_row(&self, order: &BriefOrder, line: &BriefLine, sheet: &mut Sheet<'_>) {
        let flasks = self.flasks.get(&line.id).map(Vec::as_slice).unwrap_or_default();
        sheet.put(Field::Client, &order.client);
        sheet.put(Field::Design, &line.design);
        let alloys = line.alloy.iter().chain(flasks.iter().filter(|_| line.alloy.is_none()).filter_map(|flask| flask.alloy.as_ref()));
        alloys.for_each(|alloy| sheet.put(Field::Alloy, alloy.as_str()));
        let sizes = line.size.iter().chain(line.exceptions.values().filter_map(|exception| exception.size.as_ref()));
        sizes.for_each(|size| sheet.put(Field::Size, written(size)));
        for defect in self.defects.get(&line.id).into_iter().flatten() {
            sheet.put(Field::Defect, defect);
        }
        for flask in flasks {
            sheet.flask(flask);
        }
        self.dates(order.taken, flasks, sheet);
        sheet.end_row(line.id);
    }

    /// Every date of these orders and flasks, the newest first, each once.
    fn dates(&self, ordered: impl IntoIterator<Item = Date>, flasks: &[&BriefFlask], sheet: &mut Sheet<'_>) {
        let mut dates: Vec<(Date, DateOf)> = ordered.into_iter().map(|date| (date, DateOf::Ordered)).collect();
        for flask in flasks {
            if let Some(at) = self.poured.get(&flask.id) {
                dates.extend(at.map(|date| (date, DateOf::Poured)));
            } else {
                let burnouts = self.job.burnouts.iter().filter(|burnout| Some(burnout.id) == flask.burnout);
                dates.extend(burnouts.filter_map(|burnout| burnout.pour_at).map(|at| (at.date(), DateOf::Planned)));
            }
        }
        if dates.is_empty() {
            dates.extend(self.job.made.map(|made| (made, DateOf::Begun)));
        }
        dates.sort_unstable_by(|a, b| b.cmp(a));
        dates.dedup();
        sheet.dates.extend(dates);
    }
}

/// A size as it is written, without its scale.
fn written(size: &Size) -> &str {
    match size {
        Size::Ring { size, .. } | Size::Free(size) => size,
    }
}

/// Takes the rows, one after another.
struct Sheet<'t> {
    texts: &'t mut Texts,
    ends: Vec<Ends>,
    cells: Vec<Cell>,
    dates: Vec<(Date, DateOf)>,
}

impl Sheet<'_> {
    /// Puts a text into the row that is being made, once.
    fn put(&mut self, field: Field, text: &str) {
        if text.is_empty() {
            return;
        }
        let begin = self.ends.last().map_or(0, |ends| ends.cells as usize);
        if let Some(cell) = Cell::new(field, self.texts.number(text))
            && !self.cells.get(begin..).unwrap_or_default().contains(&cell)
        {
            self.cells.push(cell);
        }
    }

    fn flask(&mut self, flask: &BriefFlask) {
        self.put(Field::Flask, &flask.scratch);
        flask.vessel.iter().for_each(|vessel| self.put(Field::Flask, vessel.as_str()));
    }

    fn end_row(&mut self, line: LineId) {
        let small = |length: usize| u32::try_from(length).unwrap_or(u32::MAX);
        self.ends.push(Ends { line, cells: small(self.cells.len()), dates: small(self.dates.len()) });
    }
}
