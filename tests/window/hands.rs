//! Two ways through the window: by mouse, with wheel and clicks, and by keys alone. Both find what they want by the name it is called.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use eframe::egui::accesskit::Role;
use eframe::egui::{Event, Key, Modifiers, MouseWheelSource, MouseWheelUnit, PointerButton, Pos2, Rect, TouchPhase, vec2};
use egui_kittest::kittest::{AccessKitNode, NodeT, Queryable, by};
use egui_kittest::{Harness, Node};
use pourbook::app::page::Page;
use pourbook::app::window::Window;
use pourbook::texts::Texts;

/// How the window is gone through.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Way {
    Mouse,
    Keys,
}

/// What is looked for: its kind, its name, and which of several.
#[derive(Debug, Clone, Copy)]
pub struct Want<'a> {
    kind: Kind,
    name: &'a str,
    nth: usize,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Button,
    Row,
    Field,
    List,
    Tick,
    Fold,
    Option,
}

impl Kind {
    fn fits(self, node: &AccessKitNode<'_>, name: &str) -> bool {
        let label = node.label().unwrap_or_default();
        let begins = || label == name || label.starts_with(&format!("{name}, "));
        match self {
            Self::Button => matches!(node.role(), Role::Button | Role::Link) && label == name,
            Self::Row => matches!(node.role(), Role::Tab | Role::Button) && begins(),
            Self::Field => matches!(node.role(), Role::TextInput | Role::MultilineTextInput) && label == name,
            Self::List => node.role() == Role::ComboBox && label == name,
            Self::Tick => node.role() == Role::CheckBox && label == name,
            Self::Option => node.role() == Role::ListBoxOption && begins(),
            Self::Fold => node.role() == Role::DisclosureTriangle && label == name,
        }
    }
}

/// Higher than this, something is not looked for as a whole.
const TALL: f32 = 500.0;

/// A text of the catalogue.
pub fn words(key: &str) -> String {
    Texts::english().label(key)
}

/// A window, and a way through it.
pub struct Hands {
    pub harness: Harness<'static, Window>,
    pub way: Way,
    /// Keys pressed and clicks made.
    pub moves: usize,
}

impl Hands {
    pub fn new(harness: Harness<'static, Window>, way: Way) -> Self {
        Self { harness, way, moves: 0 }
    }

    fn find(&self, want: Want<'_>) -> Option<Node<'_>> {
        let (kind, name) = (want.kind, want.name.to_owned());
        let fits = move |node: &AccessKitNode<'_>| kind.fits(node, &name);
        let found: Vec<Node<'_>> = self.harness.query_all(by().predicate(fits)).collect();
        found.into_iter().nth(want.nth)
    }

    fn node(&self, want: Want<'_>) -> Node<'_> {
        self.find(want).unwrap_or_else(|| {
            let all = self.harness.query_all(by().predicate(|node: &AccessKitNode<'_>| node.label().is_some()));
            let named: Vec<String> = all
                .map(|node| format!("{:?} {}", node.accesskit_node().role(), node.accesskit_node().label().unwrap_or_default()))
                .collect();
            panic!("there is no {want:?} among\n{}", named.join("\n"))
        })
    }

    /// Runs until everything stands still and every pattern file is read.
    pub fn settle(&mut self) {
        self.run();
        for _ in 0..500 {
            if super::is_looked_at(self.harness.state()) {
                break;
            }
            std::thread::sleep(std::time::Duration::from_millis(5));
            self.run();
        }
    }

    /// Runs until nothing moves; a wheel runs out slowly.
    fn run(&mut self) {
        assert!((0..20).any(|_| self.harness.run_ok().is_some()), "the window comes to rest");
    }

    pub fn key(&mut self, modifiers: Modifiers, key: Key) {
        self.moves += 1;
        self.harness.key_press_modifiers(modifiers, key);
        self.run();
    }

    fn type_text(&mut self, text: &str) {
        self.harness.event(Event::Text(text.to_owned()));
        self.run();
    }

    fn wheel(&mut self, at: Pos2, down: f32) {
        self.harness.hover_at(at);
        let (unit, phase, source) = (MouseWheelUnit::Point, TouchPhase::Move, MouseWheelSource::Unknown);
        self.harness.event(Event::MouseWheel { unit, delta: vec2(0.0, -down), phase, source, modifiers: Modifiers::NONE });
        self.run();
    }

    fn click(&mut self, want: Want<'_>) {
        self.moves += 1;
        let rect = self.node(want).rect();
        // Of what is higher than the window the top is in sight.
        let at = if rect.height() > TALL { rect.left_top() + vec2(20.0, 10.0) } else { rect.center() };
        self.harness.hover_at(at);
        for pressed in [true, false] {
            self.harness.event(Event::PointerButton { pos: at, button: PointerButton::Primary, pressed, modifiers: Modifiers::NONE });
        }
        self.run();
    }

    /// Brings something to hand: into sight for the mouse, under the focus for the keys.
    fn reach(&mut self, want: Want<'_>) {
        match self.way {
            Way::Mouse => self.scroll_to(want),
            Way::Keys => self.tab_to(want),
        }
        assert!(!self.node(want).accesskit_node().is_disabled(), "{want:?} can be used");
    }

    fn scroll_to(&mut self, want: Want<'_>) {
        let size = self.harness.ctx.content_rect().size();
        let (top, bottom) = (60.0, size.y - 46.0);
        for _ in 0..60 {
            let rect = self.node(want).rect();
            let dialog = self.harness.state().dialog.is_some();
            let beside = rect.center().x < 176.0 || (16.0..17.0).contains(&rect.top());
            let tall = rect.height() > TALL && (top..bottom - 100.0).contains(&rect.top());
            if dialog || beside || tall || (rect.top() >= top && rect.bottom() <= bottom) {
                return;
            }
            let over = if rect.height() > TALL { rect.top() - 200.0 } else { rect.center().y - size.y / 2.0 };
            self.wheel(Pos2::new(600.0, size.y / 2.0), over.clamp(-300.0, 300.0));
        }
        panic!("{want:?} does not come into sight: {:?}", self.node(want).rect());
    }

    fn tab_to(&mut self, want: Want<'_>) {
        // The nearer way round: what stands above is behind.
        let focused = self.harness.query_all(by().predicate(|node: &AccessKitNode<'_>| node.is_focused())).next().map(|node| node.rect());
        let target = self.node(want).rect();
        let above = |rect: Rect| target.center().y < rect.top() || (target.center().y < rect.bottom() && target.center().x < rect.left());
        let back = focused.is_some_and(above);
        for _ in 0..400 {
            if self.find(want).is_some_and(|node| node.is_focused()) {
                return;
            }
            self.key(if back { Modifiers::SHIFT } else { Modifiers::NONE }, Key::Tab);
        }
        panic!("the focus does not come to {want:?}");
    }

    fn act(&mut self, want: Want<'_>, key: Key) {
        self.reach(want);
        match self.way {
            Way::Mouse => self.click(want),
            Way::Keys => self.key(Modifiers::NONE, key),
        }
        self.settle();
    }

    /// Presses a button.
    pub fn press(&mut self, name: &str) {
        self.press_nth(name, 0);
    }

    /// Presses one of several buttons of a name.
    pub fn press_nth(&mut self, name: &str, nth: usize) {
        self.act(Want { kind: Kind::Button, name, nth }, Key::Enter);
    }

    /// Presses the first button whose name begins so.
    pub fn press_beginning(&mut self, name: &str) {
        let begins = |node: &AccessKitNode<'_>| {
            node.role() == Role::Button && node.label().is_some_and(|label| label.starts_with(&format!("{name} ")))
        };
        let found = self.harness.query_all(by().predicate(begins)).next().and_then(|node| node.accesskit_node().label());
        self.press(&found.expect("a button that begins so"));
    }

    /// Chooses a row of a list whose name begins so.
    pub fn row(&mut self, name: &str) {
        self.act(Want { kind: Kind::Row, name, nth: 0 }, Key::Enter);
    }

    /// Ticks a box, or takes the tick off.
    pub fn tick(&mut self, name: &str) {
        self.act(Want { kind: Kind::Tick, name, nth: 0 }, Key::Space);
    }

    /// Unfolds a section, unless it is open.
    pub fn unfold(&mut self, name: &str) {
        let want = Want { kind: Kind::Fold, name, nth: 0 };
        let open = |node: Node<'_>| {
            node.accesskit_node().toggled() == Some(eframe::egui::accesskit::Toggled::True)
                || node.accesskit_node().is_selected() == Some(true)
        };
        if !open(self.node(want)) {
            self.act(want, Key::Enter);
        }
        assert!(open(self.node(want)), "{name} is unfolded");
    }

    /// Writes in a field, in place of what stands there.
    pub fn fill(&mut self, name: &str, text: &str) {
        let want = Want { kind: Kind::Field, name, nth: 0 };
        self.reach(want);
        if self.way == Way::Mouse {
            self.click(want);
        }
        self.key(Modifiers::COMMAND, Key::A);
        if text.is_empty() {
            self.key(Modifiers::NONE, Key::Delete);
        } else {
            self.type_text(text);
        }
        let several = self.node(want).accesskit_node().role() == Role::MultilineTextInput;
        self.key(Modifiers::NONE, if several { Key::Tab } else { Key::Enter });
        self.settle();
    }

    /// Takes the default that stands in a field in lighter ink.
    pub fn confirm(&mut self, name: &str) {
        let want = Want { kind: Kind::Field, name, nth: 0 };
        self.reach(want);
        if self.way == Way::Mouse {
            self.click(want);
        }
        self.key(Modifiers::NONE, Key::Space);
        self.settle();
        assert!(self.node(want).value().is_some_and(|value| !value.is_empty()), "{name} was taken");
    }

    /// Chooses the one of a list that is called so, or begins so.
    pub fn choose(&mut self, name: &str, option: &str) {
        let want = Want { kind: Kind::List, name, nth: 0 };
        self.reach(want);
        match self.way {
            Way::Keys => {
                self.type_text(option);
                self.key(Modifiers::NONE, Key::Enter);
            }
            Way::Mouse => {
                self.click(want);
                self.click_option(option);
            }
        }
        self.settle();
        let now = self.node(want).accesskit_node().value().unwrap_or_default();
        assert!(option == words("choice-nothing") || now.starts_with(option), "{now} instead of {option}");
    }

    /// Clicks on one of an open list, after the wheel brought it into sight.
    fn click_option(&mut self, option: &str) {
        let one = Want { kind: Kind::Option, name: option, nth: 0 };
        for turn in 0..90 {
            let list = self.harness.get(by().predicate(|node: &AccessKitNode<'_>| node.role() == Role::ListBox)).rect();
            let row = self.find(one).map(|node| node.rect());
            match row {
                Some(row) if list.shrink(4.0).contains(row.center()) => return self.click(one),
                Some(row) => self.wheel(list.center(), (row.center().y - list.center().y).clamp(-60.0, 60.0)),
                // A list opens where the choice in effect stands: up first, then down.
                _ => self.wheel(list.center(), if turn < 30 { -90.0 } else { 90.0 }),
            }
        }
        let list = self.harness.get(by().predicate(|node: &AccessKitNode<'_>| node.role() == Role::ListBox)).rect();
        let all = self.harness.query_all(by().predicate(|node: &AccessKitNode<'_>| node.role() == Role::ListBoxOption));
        let rows: Vec<String> = all.map(|node| format!("{:?} {:?}", node.accesskit_node().label(), node.rect())).collect();
        panic!("{option} does not come into sight in its list at {list:?}:\n{}", rows.join("\n"));
    }

    /// Saves the batch where it is.
    pub fn save(&mut self) {
        match self.way {
            Way::Mouse => {
                self.press(&words("do-menu"));
                self.press(&words("do-save"));
            }
            Way::Keys => self.key(Modifiers::COMMAND, Key::S),
        }
        self.settle();
        assert!(!self.harness.state().workbook.is_changed(), "{:?}", self.harness.state().message);
    }

    /// Goes to a page.
    pub fn go(&mut self, page: Page) {
        let name = words(page.key());
        match self.way {
            Way::Mouse => self.act(Want { kind: Kind::Row, name: &name, nth: 0 }, Key::Enter),
            Way::Keys => {
                self.key(Modifiers::COMMAND, Key::K);
                self.type_text(&name);
                self.key(Modifiers::NONE, Key::Enter);
            }
        }
        self.settle();
        assert_eq!(self.harness.state().workbook.view.page, page);
    }

    /// Saves the batch under a name for the first time.
    pub fn save_as(&mut self, path: &Path) {
        match self.way {
            Way::Mouse => {
                self.press(&words("do-menu"));
                self.press(&words("do-save-as"));
            }
            Way::Keys => self.key(Modifiers::COMMAND | Modifiers::SHIFT, Key::S),
        }
        self.run();
        let name = words("open-path");
        if self.way == Way::Mouse {
            self.click(Want { kind: Kind::Field, name: &name, nth: 0 });
        }
        self.key(Modifiers::COMMAND, Key::A);
        self.type_text(&path.display().to_string());
        match self.way {
            Way::Mouse => self.press(&words("do-save")),
            Way::Keys => self.key(Modifiers::NONE, Key::Enter),
        }
        self.settle();
        assert!(self.harness.state().dialog.is_none(), "{:?}", self.harness.state().dialog);
    }

    /// A new pattern from a file: dropped on the window, or its path typed.
    pub fn pattern_file(&mut self, folder: &Path, file: &str) {
        match self.way {
            Way::Mouse => {
                self.moves += 1;
                self.harness.input_mut().dropped_files.push(Arc::new(Dropped(folder.join(file))));
                self.settle();
            }
            Way::Keys => {
                self.go(Page::Patterns);
                self.press(&words("patterns-add"));
                self.fill(&words("patterns-path"), file);
            }
        }
        assert_eq!(self.harness.state().workbook.view.page, Page::Patterns);
    }
}

#[derive(Debug)]
struct Dropped(PathBuf);

impl eframe::egui::DroppedFile for Dropped {
    fn path(&self) -> &Path {
        &self.0
    }

    fn bytes(&self) -> Result<Vec<u8>, String> {
        std::fs::read(&self.0).map_err(|error| error.to_string())
    }
}
