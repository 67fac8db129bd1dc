//! What a caster does beside filling fields: reads a working and asks what if, drags the programme, keeps the shelf, waits for files.

use std::path::Path;

use eframe::egui::accesskit::Role;
use eframe::egui::{Event, Key, Modifiers, PointerButton, Pos2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT, Queryable};
use pourbook::app::action::Action;
use pourbook::app::page::Page;
use pourbook::app::window::Window;
use pourbook::calc::Cause;
use pourbook::job::{Place, Programme};

use super::hands::{Hands, Way, words};
use super::shapes::texts;
use super::{USUAL, empty, on_sample};

fn says(harness: &Harness<'static, Window>, part: &str) -> bool {
    let all: Vec<String> = texts(&harness.output().shapes).into_iter().map(|text| text.words).collect();
    all.join(" ").split_whitespace().collect::<Vec<_>>().join(" ").contains(part)
}

#[test]
fn a_working_is_read_and_a_what_if_touches_nothing() {
    for way in [Way::Mouse, Way::Keys] {
        let mut hands = Hands::new(on_sample("mixed-kiln.ron", USUAL), way);
        hands.go(Page::Metal);
        hands.press("Button");
        let job = hands.harness.state().workbook.job.clone();
        // In words, in symbols, in numbers, where it comes from, what uses it.
        for part in ["It presses the metal in", "max(least, share*tree)", "61.05", "common practice", "Volume of the button"] {
            assert!(says(&hands.harness, part), "{part}");
        }
        hands.unfold(&words("working-what-if"));
        hands.fill(&format!("{} tree", words("working-what-if")), "400");
        // A tenth of 400 g is more than the least button of 20 g.
        assert!(says(&hands.harness, "40.00"), "the what-if is shown");
        assert_eq!(hands.harness.state().workbook.job, job);
        assert!(!hands.harness.state().workbook.is_changed());
    }
}

#[test]
fn where_a_missing_figure_fails_is_said_and_led_to() {
    let mut harness = empty(USUAL);
    let ctx = harness.ctx.clone();
    harness.state_mut().perform(&ctx, Action::Go(Page::Flasks));
    harness.run();
    harness.get_by_label(&words("flasks-add")).click();
    harness.run();
    harness.get_by_label("Charge on the balance").click();
    harness.run();
    assert!(says(&harness, &words("working-fails")), "where it fails first is said");
}

/// The targets of the studio's own programme.
fn targets(window: &Window) -> Vec<Option<f64>> {
    match &window.workbook.job.burnouts[0].programme {
        Some(Programme::Segments(segments)) => {
            segments.iter().map(|segment| segment.target_c.map(pourbook::quantity::Finite::get)).collect()
        }
        _ => Vec::new(),
    }
}

#[test]
fn a_point_of_the_programme_is_dragged_in_one_step() {
    let mut harness = on_sample("mixed-kiln.ron", USUAL);
    harness.state_mut().workbook.view.page = Page::Burnout;
    harness.run();
    let before = targets(harness.state());
    let at = harness.get_by_role_and_label(Role::Slider, "Target of stage 2").rect().center();
    let button = |pos: Pos2, pressed| Event::PointerButton { pos, button: PointerButton::Primary, pressed, modifiers: Modifiers::NONE };
    harness.hover_at(at);
    harness.event(button(at, true));
    harness.run();
    for step in 1..=5 {
        harness.hover_at(at - vec2(0.0, 6.0 * step as f32));
        harness.run_steps(1);
    }
    assert_eq!(targets(harness.state()), before, "nothing is changed until it is let go");
    harness.event(button(at - vec2(0.0, 30.0), false));
    harness.run();
    let after = targets(harness.state());
    let (was, now) = (before[1].unwrap(), after[1].unwrap());
    assert!(now > was + 20.0, "{was} to {now}");
    assert_eq!((&after[..1], &after[2..]), (&before[..1], &before[2..]), "only that point");
    harness.state_mut().workbook.undo();
    assert_eq!(targets(harness.state()), before, "one step back");
    // By keys as well.
    harness.run();
    harness.get_by_role_and_label(Role::Slider, "Target of stage 2").focus();
    harness.run();
    harness.key_press(Key::ArrowDown);
    harness.run();
    assert!(targets(harness.state())[1].unwrap() < was);
}

#[test]
fn what_is_being_read_never_looks_known_and_can_be_stopped() {
    let mut harness = empty(USUAL);
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("sample-jobs/mixed-kiln.ron");
    let ctx = harness.ctx.clone();
    harness.state_mut().open(&ctx, &path);
    // Nobody has looked whether a file came in yet.
    let window = harness.state();
    assert!(window.workbook.reading().is_some());
    let (book, report) = (&window.workbook.computed.book, window.report());
    let bronze = &report.flasks[2];
    assert_eq!(book.number(bronze.metal.on_balance), None, "the bronze tree is computed from files alone");
    assert_eq!(book.figure(bronze.metal.on_balance).value.cause(), Some(Cause::Pending));
    harness.state_mut().perform(&ctx, Action::StopReading);
    assert!(harness.state().workbook.reading().is_none());
    harness.run();
    // What was measured before and kept in the batch counts again, and it is told that the files were not read.
    assert!(harness.state().workbook.computed.book.number(harness.state().report().flasks[2].metal.on_balance).is_some());
    let told = |window: &Window| window.report().findings.iter().filter(|found| found.kind.key == "file-unreadable").count();
    assert!(told(harness.state()) > 3);
    harness.state_mut().perform(&ctx, Action::LookAgain);
    let mut hands = Hands::new(harness, Way::Keys);
    hands.settle();
    assert_eq!(told(hands.harness.state()), 0);
    let window = hands.harness.state();
    assert!(window.workbook.computed.book.number(window.report().flasks[2].metal.on_balance).is_some());
}

#[test]
fn an_entry_of_the_shelf_is_made_ones_own_edited_hidden_and_taken_back() {
    let mut hands = Hands::new(on_sample("mixed-kiln.ron", USUAL), Way::Mouse);
    let density = |hands: &Hands| {
        let window = hands.harness.state();
        let of = |shelf: &pourbook::stock::Shelf| shelf.get::<pourbook::stock::Alloy>("silver-925").map(|alloy| alloy.density_g_cm3.value);
        (of(&window.workbook.computed.shelves.today), of(&window.workbook.computed.shelves.job))
    };
    hands.go(Page::Settings);
    hands.unfold(&words("settings-shelf"));
    hands.fill(&words("shelf-search"), "sterling");
    hands.row("Sterling silver 925");
    hands.press(&words("shelf-make-own"));
    let name = words("shelf-text");
    let text = hands.harness.get_by_role_and_label(Role::MultilineTextInput, &name).accesskit_node().value().unwrap();
    assert!(text.contains("density_g_cm3: (10.36"), "{text}");
    hands.fill(&name, &text.replacen("density_g_cm3: (10.36", "density_g_cm3: (-3.0", 1));
    assert_eq!(density(&hands), (Some(10.36), Some(10.36)), "what cannot be is not taken");
    assert!(says(&hands.harness, "density"), "and why is said");
    hands.fill(&name, &text.replacen("density_g_cm3: (10.36", "density_g_cm3: (10.3", 1));
    assert_eq!(density(&hands), (Some(10.3), Some(10.36)), "the batch keeps what it took");
    hands.press(&words("shelf-batch-takes"));
    assert_eq!(density(&hands), (Some(10.3), Some(10.3)));
    hands.press(&words("shelf-take-back"));
    assert_eq!(density(&hands), (Some(10.36), Some(10.3)));
    hands.press(&words("shelf-hide"));
    assert_eq!(density(&hands).0, None);
    hands.press(&words("shelf-show-again"));
    assert_eq!(density(&hands).0, Some(10.36));
    hands.fill(&words("shelf-copy-name"), "Our sterling");
    hands.press(&words("shelf-copy"));
    assert!(hands.harness.state().workbook.computed.shelves.today.entry("our-sterling").is_some());
}

#[test]
fn the_finder_leads_to_figures_and_pieces() {
    let mut hands = Hands::new(on_sample("mixed-kiln.ron", USUAL), Way::Keys);
    for (typed, page) in
        [("snail, k", Page::Orders), ("limpet ring, printed", Page::Patterns), ("charge on the balance flask g", Page::Flasks)]
    {
        hands.key(Modifiers::COMMAND, Key::K);
        hands.harness.event(Event::Text(typed.to_owned()));
        hands.harness.run();
        hands.key(Modifiers::NONE, Key::Enter);
        assert_eq!(hands.harness.state().workbook.view.page, page, "{typed}");
    }
    let chosen = hands.harness.state().workbook.view.chosen.unwrap();
    assert_eq!((chosen.place, chosen.key), (Place::Flask(pourbook::job::FlaskId(2)), "flask.charge-on-balance"));
}
