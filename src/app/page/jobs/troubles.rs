//! What is wrong in the folder: files that cannot be read, one job in two files, pieces that two jobs took on.

use std::path::Path;
use std::sync::Arc;

use eframe::egui::{Id, Label, RichText, Ui};

use crate::app::cx::Cx;
use crate::app::widget::heading;
use crate::folder::{Index, Taken, claims};
use crate::paper::words::one_line;

/// What is said of a folder as it was looked through.
type Kept = (Arc<Index>, Arc<Vec<String>>);

/// Shows it, where there is anything.
pub fn show(ui: &mut Ui, cx: &Cx<'_>, index: &Arc<Index>) {
    let tokens = cx.tokens;
    let key = Id::unique("jobs-troubles");
    let kept: Option<Kept> = ui.data(|data| data.get_temp(key));
    let (_, said) = kept.filter(|(looked, _)| Arc::ptr_eq(looked, index)).unwrap_or_else(|| {
        let found = (Arc::clone(index), Arc::new(said(cx, index)));
        ui.data_mut(|data| data.insert_temp(key, found.clone()));
        found
    });
    if said.is_empty() {
        return;
    }
    heading::group(ui, &cx.label("jobs-troubles"), &tokens);
    for words in said.iter() {
        ui.add(Label::new(RichText::new(words).color(tokens.caution)).wrap());
    }
}

fn said(cx: &Cx<'_>, index: &Index) -> Vec<String> {
    let name = |path: &Path| path.file_name().map(|name| name.to_string_lossy().into_owned()).unwrap_or_default();
    let all = |paths: Vec<String>| paths.join(", ");
    let mut said: Vec<String> = Vec::new();
    let claims = claims(index);
    for twice in &claims.twice {
        let by = |taken: &Taken| name(&taken.path);
        let from = index.jobs().find(|(_, job)| job.job_id == twice.from.job).map_or_else(String::new, |(path, _)| name(path));
        let args =
            [("piece", twice.from.piece.to_string().into()), ("from", from.into()), ("by", all(twice.by.iter().map(by).collect()).into())];
        said.push(cx.say("jobs-taken-twice", &args));
    }
    for lost in &claims.dangling {
        said.push(cx.say("jobs-dangling", &[("piece", lost.by.piece.to_string().into()), ("by", name(&lost.by.path).into())]));
    }
    for (_, paths) in index.twins() {
        said.push(cx.say("jobs-twins", &[("files", all(paths.into_iter().map(name).collect()).into())]));
    }
    for (path, why) in index.broken() {
        said.push(cx.say("pieces-broken", &[("file", name(path).into()), ("why", one_line(&why.to_string()).into())]));
    }
    said
}
