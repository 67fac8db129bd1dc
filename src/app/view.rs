//! Where the caster is looking: page, chosen figure, chosen things, what is unfolded. Not part of any document.

use std::collections::BTreeSet;

use super::computed::Chosen;
use super::page::Page;
use super::page::patterns::form::Colouring;
use super::paper_desk::PaperView;
use super::what_now::Cards;
use crate::calc::batch::Options;
use crate::job::{BurnoutId, PrintId, QuoteId};
use crate::job::{FlaskId, Job, LineId, MeltId, OrderId, PatternId, Place, TreeId};

/// What is looked at.
#[derive(Debug, Clone, Default)]
pub struct View {
    /// The page.
    pub page: Page,
    /// Something was just shown that was asked for by its place: the page begins at its top.
    pub shown: bool,
    /// The figure whose working is shown.
    pub chosen: Option<Chosen>,
    /// The working pane is to take the focus: a figure was chosen by keys.
    pub to_working: bool,
    /// Is the working pane open?
    pub working: bool,
    /// Is the list of findings open?
    pub findings: bool,
    /// Is the bench view on, and at which step of which flask?
    pub bench: Option<usize>,
    /// The cards for when something goes wrong, while they stand over everything else.
    pub cards: Option<Cards>,
    /// The finder's text while it is open.
    pub finder: Option<String>,
    /// Unfolded sections by key.
    pub unfolded: BTreeSet<&'static str>,
    /// The chosen order.
    pub order: Option<OrderId>,
    /// The chosen line.
    pub line: Option<LineId>,
    /// The chosen pattern.
    pub pattern: Option<PatternId>,
    /// How the chosen pattern's form is coloured.
    pub colouring: Colouring,
    /// Radius of what a click on it paints, in mm, where it is not the usual one.
    pub brush_mm: Option<f64>,
    /// The chosen print run.
    pub print: Option<PrintId>,
    /// The chosen tree.
    pub tree: Option<TreeId>,
    /// The piece that is pointed out on its tree.
    pub hung: Option<(LineId, u32)>,
    /// The piece the hand has hold of.
    pub held: Option<(LineId, u32)>,
    /// Pieces whose place was said stay there when their tree is arranged.
    pub hold_placed: bool,
    /// How far trees are turned about their axis, in degrees.
    pub turn_deg: f64,
    /// The chosen flask.
    pub flask: Option<FlaskId>,
    /// The chosen kiln load.
    pub burnout: Option<BurnoutId>,
    /// The chosen melt.
    pub melt: Option<MeltId>,
    /// The chosen quote.
    pub quote: Option<QuoteId>,
    /// What a batch plan is asked with.
    pub plan: Options,
    /// The paper that is looked at.
    pub paper: PaperView,
    /// A what-if: other numbers for terms of the chosen figure, by place among its terms.
    pub what_if: Vec<Option<f64>>,
}

impl View {
    /// How a job is looked at when it is opened.
    #[must_use]
    pub fn for_job(job: &Job) -> Self {
        let mut view = Self { working: true, ..Self::default() };
        view.settle(job);
        view
    }

    /// Chooses something that is there for everything that is gone.
    pub fn settle(&mut self, job: &Job) {
        fn settle<T: Copy + PartialEq>(chosen: &mut Option<T>, mut ids: impl Iterator<Item = T> + Clone) {
            if chosen.is_none_or(|id| !ids.clone().any(|other| other == id)) {
                *chosen = ids.next();
            }
        }
        settle(&mut self.order, job.orders.iter().map(|order| order.id));
        settle(&mut self.line, job.lines().map(|(_, line)| line.id).collect::<Vec<_>>().into_iter());
        settle(&mut self.pattern, job.patterns.iter().map(|pattern| pattern.id));
        settle(&mut self.print, job.prints.iter().map(|run| run.id));
        settle(&mut self.tree, job.trees.iter().map(|tree| tree.id));
        settle(&mut self.flask, job.flasks.iter().map(|flask| flask.id));
        settle(&mut self.burnout, job.burnouts.iter().map(|load| load.id));
        settle(&mut self.melt, job.melts.iter().map(|melt| melt.id));
        settle(&mut self.quote, job.quotes.iter().map(|quote| quote.id));
    }

    /// Turns the pages in the order of the rail, round from the last to the first.
    pub fn turn(&mut self, by: isize) {
        let all = Page::RAIL;
        let place = all.iter().position(|page| *page == self.page).unwrap_or(0);
        self.page = all[(place + all.len()).saturating_add_signed(by) % all.len()];
        self.bench = None;
    }

    /// Goes to the page of a place and chooses what stands there.
    pub fn go_to(&mut self, place: Place, job: &Job) {
        self.bench = None;
        self.shown = true;
        match place {
            Place::Order(id) => self.order = Some(id),
            Place::Line(id) => self.choose_line(id, job),
            Place::Piece(piece) => self.choose_line(piece.line, job),
            Place::Pattern(id) => self.pattern = Some(id),
            Place::Print(id) => {
                self.print = Some(id);
                // The runs stand folded below the patterns.
                self.unfolded.insert("prints-runs");
            }
            Place::Tree(id) | Place::TreeRow(id, _) => self.tree = Some(id),
            Place::Flask(id) | Place::Mix(id, _) => self.flask = Some(id),
            Place::Burnout(id) | Place::Stage(id, _) => self.burnout = Some(id),
            Place::Melt(id) => self.melt = Some(id),
            Place::Quote(id) => self.quote = Some(id),
            Place::Record(_) | Place::Job | Place::Studio => {}
        }
        self.page = Page::of(place);
    }

    fn choose_line(&mut self, id: LineId, job: &Job) {
        self.line = Some(id);
        self.order = job.lines().find(|(_, line)| line.id == id).map(|(order, _)| order.id).or(self.order);
    }
}
