//! Paper leaves the window: to the printer, into the viewer, or into a file beside the batch.

use std::path::{Path, PathBuf};

use super::Window;
use crate::app::action::Put;
use crate::app::paper_desk::free_name;
use crate::files::save::{Original, save};
use crate::paper::Listed;
use crate::paper::layout::Format;
use crate::texts::Texts;

impl Window {
    /// Puts the paper that is looked at where it is wanted, and says where that is.
    pub(super) fn put_paper(&mut self, put: Put) {
        let said = match put {
            Put::Pdf => self.keep_pdfs(false),
            Put::AllPdfs => self.keep_pdfs(true),
            Put::Text => self.keep_text(),
            Put::Table(listed) => self.keep_table(listed),
            Put::Viewer => self.aside().and_then(|path| view(&path)),
            Put::Printer => {
                let format = self.preferences.dress(self.workbook.view.paper.sort).format;
                self.aside().and_then(|path| print(&path, format))
            }
        };
        self.message = Some(match said {
            Ok(said) | Err(said) => said,
        });
    }

    /// Beside the batch; in the folder the program was started in where it was never saved.
    fn beside(&self) -> PathBuf {
        self.workbook.folder().map(Path::to_path_buf).or_else(|| std::env::current_dir().ok()).unwrap_or_default()
    }

    /// What the file of a paper is called: the batch, the sort, and whose it is. A client's paper does not tell what the batch is called.
    fn name(&self, name: &str, extension: &str) -> Option<PathBuf> {
        let sort = self.workbook.view.paper.sort;
        let stem = self.workbook.path().and_then(Path::file_stem).map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
        let stem = if sort.goes_out() { "" } else { stem.as_str() };
        free_name(&*self.disk, &self.beside(), &[stem, sort.stem(), name], extension)
    }

    fn keep_pdfs(&mut self, all: bool) -> Result<String, String> {
        let dress = self.preferences.dress(self.workbook.view.paper.sort);
        let written = self.workbook.paper_as_pdf(dress, all).map_err(|error| failed(&error.to_string()))?;
        let mut last = Err(Texts::english().label(self.workbook.view.paper.sort.none_key()));
        for (name, bytes) in written {
            last = Ok(self.keep(&name, "pdf", &bytes)?);
        }
        last
    }

    fn keep_text(&mut self) -> Result<String, String> {
        let dress = self.preferences.dress(self.workbook.view.paper.sort);
        let none = Texts::english().label(self.workbook.view.paper.sort.none_key());
        let (name, text) = self.workbook.paper_as_text(dress).ok_or(none)?;
        self.keep(&name, "txt", text.as_bytes())
    }

    /// Shows a picture that the record names, by its path from the batch. Nothing but pictures is opened: a batch may come from anywhere.
    pub(super) fn show_picture(&mut self, path: &str) {
        const PICTURES: [&str; 9] = ["png", "jpg", "jpeg", "webp", "gif", "bmp", "tif", "tiff", "heic"];
        let to = self.beside().join(path.trim());
        let ending = to.extension().map(|ending| ending.to_string_lossy().to_lowercase());
        let known = ending.is_some_and(|ending| PICTURES.contains(&ending.as_str()));
        let there = matches!(self.disk.exists(&to), Ok(true));
        self.message = Some(match (known, there) {
            (false, _) => Texts::english().say("record-picture-none", &[("path", path.to_owned().into())]),
            (true, false) => Texts::english().say("record-picture-gone", &[("path", to.display().to_string().into())]),
            (true, true) => match view(&to) {
                Ok(said) | Err(said) => said,
            },
        });
    }

    /// The whole batch as a table: it is the studio's own and named after its batch.
    fn keep_table(&mut self, listed: Listed) -> Result<String, String> {
        let text = self.workbook.table_as_csv(listed);
        let stem = self.workbook.path().and_then(Path::file_stem).map(|stem| stem.to_string_lossy().into_owned()).unwrap_or_default();
        let to = free_name(&*self.disk, &self.beside(), &[&stem, listed.stem()], "csv").ok_or_else(|| failed("no free name"))?;
        save(&*self.disk, &to, text.as_bytes(), None, Original::Replace, |_| Ok(())).map_err(|error| error.to_string())?;
        Ok(Texts::english().say("sheet-written", &[("path", to.display().to_string().into())]))
    }

    fn keep(&self, name: &str, extension: &str, bytes: &[u8]) -> Result<String, String> {
        let to = self.name(name, extension).ok_or_else(|| failed("no free name"))?;
        save(&*self.disk, &to, bytes, None, Original::Replace, |_| Ok(())).map_err(|error| error.to_string())?;
        Ok(Texts::english().say("sheet-written", &[("path", to.display().to_string().into())]))
    }

    /// The paper as a PDF in the system's folder for what is soon forgotten.
    fn aside(&mut self) -> Result<PathBuf, String> {
        let sort = self.workbook.view.paper.sort;
        let written = self.workbook.paper_as_pdf(self.preferences.dress(sort), false).map_err(|error| failed(&error.to_string()))?;
        let none = || Texts::english().label(sort.none_key());
        let (name, bytes) = written.into_iter().next().ok_or_else(none)?;
        let folder = std::env::temp_dir().join(format!("pourbook-{}", std::process::id()));
        self.disk.create_folders(&folder).map_err(|error| failed(&error.to_string()))?;
        let to = free_name(&*self.disk, &folder, &[sort.stem(), &name], "pdf").ok_or_else(|| failed("no free name"))?;
        save(&*self.disk, &to, &bytes, None, Original::Replace, |_| Ok(())).map_err(|error| error.to_string())?;
        Ok(to)
    }
}

fn failed(why: &str) -> String {
    Texts::english().say("paper-failed", &[("why", why.into())])
}

/// Opens a file in whatever the system opens such files with.
fn view(path: &Path) -> Result<String, String> {
    let shown = path.display().to_string();
    match opener::open(path) {
        Ok(()) => Ok(Texts::english().say("paper-opened", &[("path", shown.into())])),
        Err(error) => Err(Texts::english().say("paper-no-viewer", &[("why", error.to_string().into()), ("path", shown.into())])),
    }
}

/// Hands a file to the system's print service by its usual command (`lp`, as IEEE Std 1003.1 has it). Where there is none, the viewer prints.
fn print(path: &Path, format: Format) -> Result<String, String> {
    let media = match format {
        Format::A4 => "media=A4",
        Format::Letter => "media=Letter",
    };
    let sent = std::process::Command::new("lp").args(["-o", media]).arg(path).output();
    let why = match sent {
        Ok(done) if done.status.success() => return Ok(Texts::english().label("paper-printed")),
        Ok(done) => String::from_utf8_lossy(&done.stderr).trim().to_owned(),
        Err(error) => error.to_string(),
    };
    Err(Texts::english().say("paper-no-printer", &[("why", why.into())]))
}
