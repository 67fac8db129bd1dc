//! Colours, type and spacing: the one place where they are said. Warm paper, ink, verdigris for what may be acted on, amber for heat,
//! madder for danger.

use eframe::egui::{self, Color32, CornerRadius, FontFamily, FontId, Stroke, TextStyle, Theme, Vec2};

use crate::mesh::look::Tones;

/// The colours of one theme, by what they are for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Tokens {
    /// The page.
    pub paper: Color32,
    /// Rail, top line, working pane.
    pub panel: Color32,
    /// A field.
    pub field: Color32,
    /// The border of a field.
    pub edge: Color32,
    /// A hairline.
    pub rule: Color32,
    /// Text.
    pub ink: Color32,
    /// Labels.
    pub ink2: Color32,
    /// Units, and defaults nobody confirmed.
    pub ink3: Color32,
    /// What may be acted on.
    pub act: Color32,
    /// The ground of what is selected.
    pub act_ground: Color32,
    /// The kiln's curve.
    pub heat: Color32,
    /// The mould's core, and the second of things told apart by colour.
    pub core: Color32,
    /// A Stop.
    pub stop: Color32,
    /// A Caution.
    pub caution: Color32,
    /// A Note.
    pub note: Color32,
    /// Investment in a drawing.
    pub mould: Color32,
    /// A pattern in the shaded view, where the light falls on it squarely.
    pub material: Color32,
    /// The inner side of its faces, seen through a hole.
    pub inner: Color32,
    /// The face of a cut through a pattern.
    pub section: Color32,
    /// The same where two solids stand in one another.
    pub section_twice: Color32,
    /// The outlines of a pattern.
    pub outline: Color32,
    /// What far parts of a pattern fade towards.
    pub far: Color32,
}

/// Red, green and blue of a colour.
#[must_use]
pub const fn rgb_of(colour: Color32) -> [u8; 3] {
    [colour.r(), colour.g(), colour.b()]
}

const fn rgb(hex: u32) -> Color32 {
    Color32::from_rgb((hex >> 16) as u8, (hex >> 8) as u8, hex as u8)
}

/// By day.
pub const LIGHT: Tokens = Tokens {
    paper: rgb(0xFAF7F1),
    panel: rgb(0xF1ECE2),
    field: rgb(0xFFFFFF),
    edge: rgb(0x8F8674),
    rule: rgb(0xDFD8CA),
    ink: rgb(0x23262B),
    ink2: rgb(0x565A61),
    ink3: rgb(0x63666B),
    act: rgb(0x1B6F63),
    act_ground: rgb(0xDCEBE6),
    heat: rgb(0xA85A16),
    core: rgb(0x3B5B92),
    stop: rgb(0x9E2F2A),
    caution: rgb(0x7D5A00),
    note: rgb(0x44546A),
    mould: rgb(0xDEDCD9),
    material: rgb(0xE0D3C0),
    inner: rgb(0x9FA9BC),
    section: rgb(0xDDA878),
    section_twice: rgb(0xB9773C),
    outline: rgb(0x23262B),
    far: rgb(0xEFE9DF),
};

/// For the evening.
pub const DARK: Tokens = Tokens {
    paper: rgb(0x1D1F22),
    panel: rgb(0x25282C),
    field: rgb(0x2D3136),
    edge: rgb(0x6A7179),
    rule: rgb(0x363A40),
    ink: rgb(0xEAE6DD),
    ink2: rgb(0xB0B2B5),
    ink3: rgb(0x9A9DA1),
    act: rgb(0x67C6B6),
    act_ground: rgb(0x23413C),
    heat: rgb(0xE3A45E),
    core: rgb(0x8FB0E6),
    stop: rgb(0xE8796E),
    caution: rgb(0xDDB75C),
    note: rgb(0x9DB0C9),
    mould: rgb(0x3A3D42),
    material: rgb(0xD6CAB8),
    inner: rgb(0x8793AA),
    section: rgb(0xCF975E),
    section_twice: rgb(0x8F6233),
    outline: rgb(0x111315),
    far: rgb(0x4A4B4D),
};

impl Tokens {
    /// The colours in effect.
    #[must_use]
    pub fn of(ctx: &egui::Context) -> Self {
        match ctx.theme() {
            Theme::Light => LIGHT,
            Theme::Dark => DARK,
        }
    }

    /// Colours that tell things of one kind apart: orders, parts of a charge.
    #[must_use]
    pub fn series(&self) -> [Color32; 4] {
        [self.core, self.heat, self.act, self.note]
    }

    /// The colours of the shaded view of a pattern.
    #[must_use]
    pub fn tones(&self) -> Tones {
        let [material, inner, cut, cut_twice, outline, far] =
            [self.material, self.inner, self.section, self.section_twice, self.outline, self.far].map(rgb_of);
        Tones { material, inner, cut, cut_twice, outline, far }
    }

    /// Pairs of text and ground that stand on each other somewhere, for checking contrast.
    #[must_use]
    pub fn text_on_ground(&self) -> Vec<(&'static str, Color32, Color32)> {
        let mut pairs = Vec::new();
        for ground in [self.paper, self.panel, self.field] {
            for (text, ink) in [
                ("ink", self.ink),
                ("ink2", self.ink2),
                ("ink3", self.ink3),
                ("act", self.act),
                ("stop", self.stop),
                ("caution", self.caution),
                ("note", self.note),
            ] {
                pairs.push((text, ink, ground));
            }
        }
        // Curves are named on the page and on the plot alone.
        pairs.extend([("heat", self.heat, self.paper), ("heat", self.heat, self.field), ("core", self.core, self.paper)]);
        pairs.extend([("ink", self.ink, self.act_ground), ("act", self.act, self.act_ground), ("paper on act", self.paper, self.act)]);
        pairs
    }
}

/// The bold cut of the one family.
#[must_use]
pub fn bold() -> FontFamily {
    FontFamily::Name("bold".into())
}

/// Sizes of type in points.
pub mod size {
    /// Text.
    pub const BODY: f32 = 14.0;
    /// Labels under things, units.
    pub const SMALL: f32 = 11.5;
    /// The title of a page.
    pub const TITLE: f32 = 22.0;
    /// The selected figure.
    pub const FIGURE: f32 = 24.0;
    /// The figures of the quick start.
    pub const LARGE: f32 = 42.0;
}

/// The step that spacing comes in.
pub const STEP: f32 = 4.0;
/// Height of a field and of a row that holds one.
pub const ROW: f32 = 28.0;

/// Fonts and both themes, set once on a context.
pub fn install(ctx: &egui::Context) {
    fonts(ctx);
    for (theme, tokens) in [(Theme::Light, LIGHT), (Theme::Dark, DARK)] {
        ctx.style_mut_of(theme, |style| dress(style, &tokens));
    }
    ctx.options_mut(|options| options.fallback_theme = Theme::Light);
}

fn fonts(ctx: &egui::Context) {
    let mut fonts = egui::FontDefinitions::empty();
    let data = |bytes: &'static [u8]| std::sync::Arc::new(egui::FontData::from_static(bytes));
    fonts.font_data.insert("plain".to_owned(), data(dejavu::sans_condensed::regular()));
    fonts.font_data.insert("bold".to_owned(), data(dejavu::sans_condensed::bold()));
    fonts.families.insert(FontFamily::Proportional, vec!["plain".to_owned()]);
    fonts.families.insert(FontFamily::Monospace, vec!["plain".to_owned()]);
    fonts.families.insert(bold(), vec!["bold".to_owned(), "plain".to_owned()]);
    ctx.set_fonts(fonts);
}

fn dress(style: &mut egui::Style, tokens: &Tokens) {
    let plain = |size| FontId::new(size, FontFamily::Proportional);
    style.text_styles = [
        (TextStyle::Small, plain(size::SMALL)),
        (TextStyle::Body, plain(size::BODY)),
        (TextStyle::Button, plain(size::BODY)),
        (TextStyle::Monospace, plain(size::BODY)),
        (TextStyle::Heading, FontId::new(size::TITLE, bold())),
    ]
    .into();
    style.spacing.item_spacing = Vec2::new(2.0 * STEP, STEP);
    style.spacing.button_padding = Vec2::new(3.0 * STEP, 1.5 * STEP);
    style.spacing.interact_size = Vec2::new(24.0, ROW);
    let visuals = &mut style.visuals;
    visuals.panel_fill = tokens.paper;
    visuals.window_fill = tokens.paper;
    visuals.window_stroke = Stroke::new(1.0, tokens.edge);
    visuals.window_shadow = egui::Shadow::NONE;
    visuals.popup_shadow = egui::Shadow::NONE;
    visuals.window_corner_radius = CornerRadius::same(3);
    visuals.menu_corner_radius = CornerRadius::same(3);
    visuals.extreme_bg_color = tokens.field;
    visuals.text_edit_bg_color = Some(tokens.field);
    visuals.faint_bg_color = tokens.panel;
    visuals.override_text_color = Some(tokens.ink);
    visuals.hyperlink_color = tokens.act;
    visuals.warn_fg_color = tokens.caution;
    visuals.error_fg_color = tokens.stop;
    visuals.selection.bg_fill = tokens.act_ground;
    visuals.selection.stroke = Stroke::new(1.5, tokens.act);
    let widgets = &mut visuals.widgets;
    for (widget, fill, edge) in [
        (&mut widgets.noninteractive, tokens.paper, tokens.rule),
        (&mut widgets.inactive, tokens.field, tokens.edge),
        (&mut widgets.hovered, tokens.field, tokens.act),
        (&mut widgets.active, tokens.act_ground, tokens.act),
        (&mut widgets.open, tokens.act_ground, tokens.act),
    ] {
        widget.bg_fill = fill;
        widget.weak_bg_fill = fill;
        widget.bg_stroke = Stroke::new(1.0, edge);
        widget.fg_stroke = Stroke::new(1.0, tokens.ink);
        widget.corner_radius = CornerRadius::same(3);
        widget.expansion = 0.0;
    }
}

/// A grey of the printed page. Paper is white and ink black on it whatever the window wears.
#[must_use]
pub fn printed(grey: u8) -> Color32 {
    Color32::from_gray(grey)
}

/// Red, green, blue and cover of every pixel, as a picture for the screen.
#[must_use]
pub fn pixels(size: [usize; 2], rgba: &[u8]) -> egui::ColorImage {
    egui::ColorImage::from_rgba_unmultiplied(size, rgba)
}

/// A colour in so much light: darker in the shade, a little lighter where it shines.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within 0 to 255")]
#[must_use]
pub fn lit(colour: Color32, light: f32) -> Color32 {
    let part = |part: u8| {
        let shaded = f32::from(part) * light.mul_add(0.5, 0.62);
        (shaded + 28.0 * (light - 0.75).max(0.0) * 4.0).clamp(0.0, 255.0) as u8
    };
    Color32::from_rgb(part(colour.r()), part(colour.g()), part(colour.b()))
}
