//! What comes after the pour: several clocks at the bench, a client's own metal handed back, measures, pictures, tables, the country of the marks.

use eframe::egui::{Key, Modifiers};
use pourbook::app::action::{Action, Put};
use pourbook::app::page::Page;
use pourbook::files::clocks::{Moment, Running};
use pourbook::job::{Event, FlaskId, MeltId, PieceId, Place, standing};
use pourbook::paper::Listed;
use pourbook::texts::Texts;

use super::hands::{Hands, Way, words};
use super::shapes::texts;
use super::{Sight, USUAL, on_sample};

const TALL: Sight = Sight { height: 3000.0, ..USUAL };

fn written(hands: &Hands) -> Vec<String> {
    texts(&hands.harness.output().shapes).into_iter().map(|seen| seen.words).collect()
}

fn shows(hands: &Hands, text: &str) -> bool {
    written(hands).iter().any(|one| one.contains(text))
}

impl Hands {
    fn perform(&mut self, action: Action) {
        let ctx = self.harness.ctx.clone();
        self.harness.state_mut().perform(&ctx, action);
        self.settle();
    }
}

fn events(hands: &Hands) -> Vec<Event> {
    standing(&hands.harness.state().workbook.job.record).map(|entry| entry.event.clone()).collect()
}

/// A mix is left running while the next step is looked at: its clock stays in sight, tells when its time is over, and is gone back to with a press.
#[test]
fn several_clocks_run_at_the_bench() {
    let mut hands = Hands::new(on_sample("first-pour.ron", USUAL), Way::Keys);
    hands.key(Modifiers::NONE, Key::F5);
    hands.key(Modifiers::NONE, Key::Space);
    let mix = hands.harness.state().workbook.view.bench;
    assert_eq!(mix, Some(1), "it mixes");
    hands.key(Modifiers::NONE, Key::ArrowDown);
    assert_eq!(hands.harness.state().workbook.view.bench, Some(2), "on, while the mix runs");
    let clocks = &hands.harness.state().preferences.clocks;
    assert!(clocks.len() >= 2 && clocks.iter().all(|clock| !clock.done), "{clocks:?}");
    let told = |hands: &Hands| written(hands).into_iter().find(|one| one.contains(&words("bench-mix")) && one.contains(" of "));
    assert!(told(&hands).is_some(), "{:?}", written(&hands));
    assert!(!events(&hands).iter().any(|event| matches!(event, Event::Timed { .. })), "it is not done");
    // Its time is over, and that is told over another step.
    let since = jiff::Timestamp::now() - jiff::SignedDuration::from_mins(30);
    for clock in &mut hands.harness.state_mut().preferences.clocks {
        if clock.step.starts_with("Mix") {
            *clock = Running { since: Moment::by_wall(since), ..clock.clone() };
        }
    }
    hands.harness.run_steps(2);
    let over = Texts::english().label("bench-over");
    assert!(shows(&hands, "Time is over: "), "{over}: {:?}", written(&hands));
    let link = written(&hands).into_iter().find(|one| one.contains(" of ") && one.contains(&words("bench-mix"))).unwrap();
    hands.press(&link);
    assert_eq!(hands.harness.state().workbook.view.bench, mix, "a press goes back to it");
    hands.key(Modifiers::NONE, Key::Space);
    let timed = |event: &Event| matches!(event, Event::Timed { of: Place::Flask(FlaskId(1)), seconds, .. } if *seconds > 1700);
    assert!(events(&hands).iter().any(timed), "{:?}", events(&hands).last());
}

#[test]
fn a_clients_metal_is_handed_back() {
    for way in [Way::Keys, Way::Mouse] {
        let mut hands = Hands::new(on_sample("mixed-kiln.ron", USUAL), way);
        hands.go(Page::Finish);
        hands.unfold(&words("own-metal-back"));
        hands.choose(&words("own-metal-from"), "sprues of 14 karat, with H’s own");
        hands.fill(&words("own-metal-grams"), "4.10");
        hands.press(&words("own-metal-do"));
        let back = events(&hands).into_iter().find_map(|event| match event {
            Event::HandedBack { client, melt, grams, .. } => Some((client, melt, grams.to_string())),
            _ => None,
        });
        let (client, melt, grams) = back.expect("it is in the record");
        assert_eq!((client.as_str(), grams.parse::<f64>().unwrap()), ("H", 4.1));
        assert!(matches!(melt, Some(MeltId(_))));
        let computed = &hands.harness.state().workbook.computed;
        let account = computed.report.client_accounts.iter().find(|account| account.client == "H").unwrap();
        assert!(
            computed.book.number(account.back).is_some_and(|fine| (2.3..2.5).contains(&fine)),
            "{:?}",
            computed.book.number(account.back)
        );
    }
}

#[test]
fn a_casting_is_measured_and_a_share_of_it_is_agreed_to_be_lost() {
    let mut hands = Hands::new(on_sample("own-gold.ron", TALL), Way::Keys);
    hands.go(Page::Orders);
    hands.fill(&words("orders-agreed-loss"), "4 %");
    assert!(
        hands
            .harness
            .state()
            .workbook
            .job
            .orders
            .iter()
            .any(|order| order.agreed_loss.is_some_and(|share| (share.get() - 0.04).abs() < 1e-9))
    );
    hands.go(Page::Pieces);
    hands.tick(&words("pieces-settled"));
    let first = {
        use egui_kittest::kittest::{NodeT, Queryable};
        let boxes = hands.harness.query_all_by_role(eframe::egui::accesskit::Role::CheckBox);
        let mut names = boxes.filter_map(|node| node.accesskit_node().label()).filter(|name| name.matches(", ").count() >= 4);
        names.next().unwrap()
    };
    hands.tick(&first);
    hands.unfold(&words("pieces-measure"));
    hands.fill(&words("pieces-measure-what"), "width");
    hands.fill(&words("pieces-measure-pattern"), "17.20");
    hands.fill(&words("pieces-measure-cast"), "16.95");
    hands.press(&words("pieces-measure-do"));
    let measured = events(&hands).into_iter().find_map(|event| match event {
        Event::Measured { piece: PieceId { .. }, what, measures } if what == "width" => Some((what, measures)),
        _ => None,
    });
    let (what, measures) = measured.expect("it is in the record");
    assert_eq!((what.as_str(), measures.pattern_mm.map(|mm| mm.get()), measures.model_mm), ("width", Some(17.2), None));
}

#[test]
fn a_remark_may_have_a_picture_and_nothing_else_is_ever_opened() {
    let mut hands = Hands::new(on_sample("first-pour.ron", TALL), Way::Mouse);
    hands.go(Page::Record);
    hands.fill(&words("record-picture"), "pictures/gate.png; patterns/run-me.sh");
    hands.fill(&words("record-remark"), "A seam at the gate.");
    hands.press(&words("record-add"));
    let entry = hands.harness.state().workbook.job.record.last().unwrap().clone();
    assert_eq!(entry.photos, ["pictures/gate.png", "patterns/run-me.sh"]);
    assert!(shows(&hands, "2 pictures"));
    for (path, key) in [("patterns/run-me.sh", "record-picture-none"), ("pictures/gate.png", "record-picture-gone")] {
        hands.perform(Action::Picture(path.to_owned()));
        hands.harness.run();
        let said = hands.harness.state().message.clone().unwrap_or_default();
        let told = Texts::english().say(key, &[("path", String::new().into())]);
        assert!(said.contains(path) && said.ends_with(told.trim_start()), "{said}");
    }
}

#[test]
fn tables_are_written_beside_the_batch() {
    let folder = tempfile::tempdir().unwrap();
    let mut hands = Hands::new(on_sample("first-pour.ron", USUAL), Way::Keys);
    let path = folder.path().join("first.ron");
    hands.save_as(&path);
    for listed in Listed::ALL {
        hands.perform(Action::Put(Put::Table(listed)));
        hands.harness.run();
        let file = folder.path().join(format!("first-{}.csv", listed.stem()));
        let text = std::fs::read_to_string(&file).unwrap_or_else(|error| panic!("{}: {error}", file.display()));
        let rows: Vec<&str> = text.lines().collect();
        assert!(rows.len() > 2, "{listed:?}: {text}");
    }
    let text = std::fs::read_to_string(folder.path().join("first-record.csv")).unwrap();
    let mut reader = csv::Reader::from_reader(text.trim_start_matches('\u{feff}').as_bytes());
    let rows: Vec<csv::StringRecord> = reader.records().collect::<Result<_, _>>().unwrap();
    assert_eq!(rows.len(), hands.harness.state().workbook.job.record.len(), "a row an entry");
    assert_eq!((&rows[0][3], &rows[0][5], &rows[0][4]), ("reached", "cleaned", "1.1 1.2 3.1"));
    // A file that is there is never written over.
    hands.perform(Action::Put(Put::Table(Listed::Record)));
    hands.harness.run();
    assert!(folder.path().join("first-record-2.csv").exists());
}

#[test]
fn the_country_of_the_marks_is_chosen_in_the_settings() {
    let mut hands = Hands::new(on_sample("first-pour.ron", TALL), Way::Keys);
    hands.go(Page::Settings);
    hands.unfold(&words("settings-letterhead"));
    hands.choose(&words("studio-marking"), "Portugal");
    assert_eq!(hands.harness.state().workbook.studio.marking.as_ref().map(ToString::to_string).as_deref(), Some("marking-portugal"));
}

/// Everything that is done with one piece, unfolded, and the account below the weights: nothing is cut, nothing lies over anything.
#[test]
fn what_is_done_after_the_pour_fits() {
    use egui_kittest::kittest::{NodeT, Queryable};
    let mut told = Vec::new();
    for width in [1280.0, 1024.0] {
        for trade in [false, true] {
            let mut harness = on_sample("own-gold.ron", Sight { width, height: 4000.0, trade, ..USUAL });
            for page in [Page::Pieces, Page::Finish, Page::Record] {
                harness.state_mut().workbook.view.page = page;
                harness.run();
                if page == Page::Pieces {
                    harness.get_by_label(&words("pieces-settled")).click();
                    harness.run();
                    let boxes = harness.query_all_by_role(eframe::egui::accesskit::Role::CheckBox);
                    let names: Vec<String> = boxes.filter_map(|node| node.accesskit_node().label()).collect();
                    let name = names.into_iter().find(|name| name.matches(", ").count() >= 4).expect("a piece");
                    harness.get_by_label(&name).click();
                    harness.run();
                }
                super::layout::unfold(&mut harness);
                let seen = texts(&harness.output().shapes);
                assert!(seen.len() > 20, "{page:?} shows something");
                told.extend(super::shapes::faults(&seen).into_iter().map(|fault| format!("{width} {trade} {page:?}: {fault}")));
            }
        }
    }
    assert!(told.is_empty(), "{} faults:\n{}", told.len(), told.join("\n"));
}
