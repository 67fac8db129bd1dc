//! Where the work is done: once for the studio, and for this batch as far as that differs.

use eframe::egui::{Id, Ui};

use crate::app::cx::Cx;
use crate::app::widget::figure::{Look, figure};
use crate::app::widget::heading;
use crate::app::widget::number::{Number, signed};
use crate::app::widget::row::row;
use crate::app::widget::text::text;
use crate::job::Site;
use crate::quantity::{Finite, Kind};

/// A number of a site: its label, what it measures, and where it stands.
type Part = (&'static str, Kind, fn(&mut Site) -> &mut Option<Finite>);

const PARTS: [Part; 4] = [
    ("site-altitude", Kind::Altitude, |site| &mut site.altitude_m),
    ("site-barometer", Kind::Pressure, |site| &mut site.barometer_kpa),
    ("site-room", Kind::Temperature, |site| &mut site.room_c),
    ("site-water", Kind::Temperature, |site| &mut site.water_c),
];

/// Shows the section.
pub fn show(ui: &mut Ui, cx: &mut Cx<'_>) {
    let tokens = cx.tokens;
    heading::group(ui, &cx.label("site-of-studio"), &tokens);
    let studio = cx.studio.site.clone();
    site(ui, cx, &studio, None);
    heading::group(ui, &cx.label("site-of-job"), &tokens);
    let job = cx.job.site.clone();
    site(ui, cx, &job, Some(&studio));
    heading::group(ui, &cx.label("site-in-effect"), &tokens);
    let figures = cx.computed.report.site;
    for (key, id) in [("site-air", figures.barometer), ("site-room", figures.room), ("site-water", figures.water)] {
        row(ui, &cx.label(key), &tokens, |ui| figure(ui, cx, id, Look::ROW));
    }
}

/// The fields of a site; those of a batch stand over the studio's.
fn site(ui: &mut Ui, cx: &mut Cx<'_>, now: &Site, under: Option<&Site>) {
    let tokens = cx.tokens;
    let of_job = under.is_some();
    // The batch has fields of the same labels as the studio.
    let named = |cx: &Cx<'_>, label: &str| if of_job { format!("{label}, {}", cx.label("site-of-job")) } else { label.to_owned() };
    for (key, kind, part) in PARTS {
        let label = cx.label(key);
        let read = |site: &Site| part(&mut site.clone()).map(Finite::get);
        let name = named(cx, &label);
        let field = Number::new(Id::unique((key, of_job)), &name, kind).now(read(now)).default(under.and_then(read));
        row(ui, &label, &tokens, |ui| {
            if let Some(number) = signed(ui, cx, &field, true) {
                change(cx, of_job, move |site| *part(site) = number);
            }
        });
    }
    let label = cx.label("site-zone");
    row(ui, &label, &tokens, |ui| {
        if let Some(zone) = text(ui, cx, Id::unique(("site-zone", of_job)), &named(cx, &label), &now.zone, 200.0) {
            change(cx, of_job, move |site| site.zone = zone);
        }
    });
}

fn change(cx: &mut Cx<'_>, of_job: bool, change: impl FnOnce(&mut Site) + 'static) {
    if of_job {
        cx.edit("edit-site", move |job| change(&mut job.site));
    } else {
        cx.edit_studio("edit-site", move |studio| change(&mut studio.site));
    }
}
