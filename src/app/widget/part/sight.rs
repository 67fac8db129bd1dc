//! Where the eye is, the picture that is shown, and the finer one that is being made.

use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::mpsc::{Receiver, TryRecvError, channel};
use std::time::Duration;

use eframe::egui::{Context, TextureHandle, TextureId, TextureOptions};

use super::{Dress, Part};
use crate::app::theme::{Tokens, pixels, rgb_of};
use crate::mesh::FaultyEdges;
use crate::mesh::Watch;
use crate::mesh::look::{Axis, Camera, Cut, Hit, Keep, Lines, Model, Paint, Palette, Picture, Plain, Quality, Scene, Tones, pick, render};
use crate::quantity::{Kind, Style, print};

/// Seconds of rest until the fine picture is begun.
const REST_S: f64 = 0.15;
/// Threads of the rough picture, which the window waits for, and of the fine one, which it does not.
const THREADS: usize = 2;

/// What is looked at and how, kept from frame to frame.
pub(super) struct Sight {
    pub camera: Camera,
    pub cut: Cut,
    pub is_cut: bool,
    /// How many pictures were made.
    pub pictures: u64,
    model: Option<Arc<Model>>,
    texture: Option<TextureHandle>,
    shown: Option<(Ask, Arc<Picture>)>,
    fine: bool,
    /// When the picture last changed, in the window's seconds.
    changed_s: f64,
    making: Option<Making>,
}

impl Default for Sight {
    fn default() -> Self {
        let cut = Cut { axis: Axis::Y, at: 0.5, keep: Keep::Above };
        Self {
            camera: Camera::default(),
            cut,
            is_cut: false,
            pictures: 0,
            model: None,
            texture: None,
            shown: None,
            fine: false,
            changed_s: 0.0,
            making: None,
        }
    }
}

/// A fine picture that is being made.
struct Making {
    stop: Arc<AtomicBool>,
    answer: Receiver<Option<Picture>>,
}

impl Drop for Making {
    fn drop(&mut self) {
        self.stop.store(true, Ordering::Relaxed);
    }
}

/// Stops when nobody wants the picture any more.
struct Wanted(Arc<AtomicBool>);

impl Watch for Wanted {
    fn go_on(&self, _share: f64) -> bool {
        !self.0.load(Ordering::Relaxed)
    }
}

/// Everything that a picture follows from.
#[derive(Clone)]
pub(super) struct Ask {
    model: Arc<Model>,
    camera: Camera,
    cut: Option<Cut>,
    paint: Option<Arc<Palette>>,
    edges: Option<Arc<FaultyEdges>>,
    tones: Tones,
    edge_colours: [[u8; 3]; 2],
    line_px: f32,
    size_px: [u32; 2],
}

impl PartialEq for Ask {
    fn eq(&self, other: &Self) -> bool {
        Arc::ptr_eq(&self.model, &other.model)
            && same(self.paint.as_ref(), other.paint.as_ref())
            && same(self.edges.as_ref(), other.edges.as_ref())
            && (self.camera, self.cut, self.tones, self.edge_colours) == (other.camera, other.cut, other.tones, other.edge_colours)
            && self.size_px == other.size_px
    }
}

fn same<T>(one: Option<&Arc<T>>, other: Option<&Arc<T>>) -> bool {
    one.map(Arc::as_ptr) == other.map(Arc::as_ptr)
}

impl Ask {
    #[allow(clippy::cast_precision_loss, reason = "a picture is small")]
    pub fn new(part: &Part<'_>, sight: &Sight, tokens: &Tokens, size_px: [u32; 2]) -> Self {
        Self {
            model: Arc::clone(part.model),
            camera: sight.camera,
            cut: sight.is_cut.then_some(sight.cut),
            paint: part.paint.cloned(),
            edges: part.edges.cloned(),
            tones: tokens.tones(),
            edge_colours: [rgb_of(tokens.stop), rgb_of(tokens.caution)],
            line_px: (2.0 * size_px[0] as f32 / part.size.x.max(1.0)).max(2.0),
            size_px,
        }
    }

    fn with_scene<T>(&self, then: impl FnOnce(&Scene<'_>) -> T) -> T {
        let segments = self.edges.as_ref().map_or([&[][..], &[][..]], |edges| [&edges.mixed, &edges.open]);
        let [open, mixed] = self.edge_colours;
        let width_px = self.line_px;
        let lines = [Lines { segments: segments[0], colour: mixed, width_px }, Lines { segments: segments[1], colour: open, width_px }];
        let paint: &dyn Paint = self.paint.as_ref().map_or(&Plain, |paint| &**paint);
        then(&Scene { model: &self.model, camera: self.camera, cut: self.cut, paint, lines: &lines, tones: self.tones })
    }

    fn picture(&self, quality: Quality, watch: &dyn Watch) -> Option<Picture> {
        self.with_scene(|scene| render(scene, self.size_px, quality, THREADS, watch))
    }
}

impl Sight {
    /// Another pattern is seen whole; a new reading of the same size stays where it was.
    pub fn take_model(&mut self, model: &Arc<Model>) {
        let before = self.model.replace(Arc::clone(model));
        if before.is_some_and(|before| (before.radius_mm() / model.radius_mm() - 1.0).abs() > 0.2) {
            self.camera = self.camera.fitted();
        }
    }

    /// Sees to it that the picture shows what is asked for: roughly at once, and finely soon.
    pub fn see(&mut self, ctx: &Context, ask: Ask, held: bool) {
        let now_s = ctx.input(|input| input.time);
        if self.shown.as_ref().is_none_or(|(shown, _)| *shown != ask) {
            self.making = None;
            if let Some(picture) = ask.picture(Quality::Turning, &crate::mesh::Unwatched) {
                self.show(ctx, ask, picture, false);
            }
            self.changed_s = now_s;
        }
        if self.fine {
            return;
        }
        self.take_made(ctx);
        let rested_s = now_s - self.changed_s;
        if self.fine || self.making.is_some() {
            return;
        }
        if held || rested_s < REST_S {
            ctx.request_repaint_after(Duration::from_secs_f64((REST_S - rested_s).clamp(0.02, REST_S)));
        } else {
            self.make(ctx);
        }
    }

    fn make(&mut self, ctx: &Context) {
        let Some((ask, _)) = self.shown.clone() else { return };
        let (stop, (sender, answer)) = (Arc::new(AtomicBool::new(false)), channel());
        let (wanted, wake) = (Wanted(Arc::clone(&stop)), ctx.clone());
        let work = move || {
            let picture = ask.picture(Quality::Rest, &wanted);
            // Nobody waits any more where the eye moved on.
            if sender.send(picture).is_ok() {
                wake.request_repaint();
            }
        };
        // Without a thread to be had, the rough picture stays.
        match std::thread::Builder::new().name("part".to_owned()).spawn(work) {
            Ok(_) => self.making = Some(Making { stop, answer }),
            Err(_) => self.fine = true,
        }
    }

    fn take_made(&mut self, ctx: &Context) {
        let Some(making) = &self.making else { return };
        match making.answer.try_recv() {
            Ok(picture) => {
                self.making = None;
                if let (Some(picture), Some((ask, _))) = (picture, self.shown.clone()) {
                    self.show(ctx, ask, picture, true);
                }
            }
            Err(TryRecvError::Empty) => {}
            // It came to grief: the rough picture stays, and is not tried for again.
            Err(TryRecvError::Disconnected) => {
                self.making = None;
                self.fine = true;
            }
        }
    }

    fn show(&mut self, ctx: &Context, ask: Ask, picture: Picture, fine: bool) {
        let image = pixels(picture.size_px.map(|side| side as usize), &picture.rgba);
        match &mut self.texture {
            Some(texture) => texture.set(image, TextureOptions::LINEAR),
            None => self.texture = Some(ctx.load_texture("part", image, TextureOptions::LINEAR)),
        }
        self.shown = Some((ask, Arc::new(picture)));
        self.fine = fine;
        self.pictures += 1;
    }

    pub fn texture(&self) -> Option<TextureId> {
        self.texture.as_ref().map(TextureHandle::id)
    }

    pub fn picture(&self) -> Option<&Picture> {
        self.shown.as_ref().map(|(_, picture)| &**picture)
    }

    pub fn is_fine(&self) -> bool {
        self.fine
    }

    /// What is seen in a pixel of the picture.
    pub fn roughly(&self, at_px: [u32; 2]) -> Option<Hit> {
        self.picture()?.hit_at(at_px[0], at_px[1])
    }

    /// The same among all triangles, also where the picture shows fewer.
    pub fn exactly(&self, at_px: [u32; 2]) -> Option<Hit> {
        let (ask, picture) = self.shown.as_ref()?;
        if self.fine || ask.model.is_light() {
            return picture.hit_at(at_px[0], at_px[1]);
        }
        ask.with_scene(|scene| pick(scene, ask.size_px, at_px))
    }

    /// Where the cut is, in words.
    pub fn cut_words(&self, dress: &Dress, model: &Model) -> Option<String> {
        if !self.is_cut {
            return None;
        }
        let axis = ["x", "y", "z"][self.cut.axis.index()];
        let place = print(self.cut.at_mm(model), Kind::Length, &Style { comma: dress.comma, ..Style::METRIC }).to_string();
        Some(dress.texts.say("part-cut-at", &[("axis", axis.into()), ("place", place.as_str().into())]))
    }

    /// Moves the cut by a share of the pattern.
    pub fn move_cut(&mut self, by: f64) {
        self.cut.at = (self.cut.at + by).clamp(0.0, 1.0);
    }

    /// Leaves the other half standing.
    pub fn turn_cut_round(&mut self) {
        self.cut.keep = if self.cut.keep == Keep::Below { Keep::Above } else { Keep::Below };
    }

    /// Cuts across an axis, and leaves the half that lies behind the cut.
    pub fn cut_across(&mut self, axis: Axis) {
        let towards = self.camera.axes()[2][axis.index()];
        self.cut.axis = axis;
        self.cut.keep = if towards > 0.0 { Keep::Below } else { Keep::Above };
        self.is_cut = true;
    }
}
