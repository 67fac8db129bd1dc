//! 3MF: a zip package with the model in XML, after the core specification of the format.
//!
//! The package says which part is the model; its build names objects, each a mesh or put together from others, under a transform. All of them
//! are brought to mm and taken together. Objects of the kinds `model`, `solidsupport` and `surface` are read: they are made of the pattern's
//! material. The kinds `support` and `other` are left out, wherever they are named. Parts of the model that lie in other files of the package
//! (the production extension) are followed; any other extension that a file says is needed to read it rightly is refused.
//!
//! Nothing is unpacked to the disk or as a whole: the XML is read as it comes out of the package, and its bytes are counted.

mod assemble;
mod matrix;
mod meter;
mod model;
mod package;

use super::soup::Soup;
use super::{Limits, ReadError};
use meter::Meter;
use model::Model;
use package::Package;

/// True for the first bytes of a zip package.
pub(super) fn begins(bytes: &[u8]) -> bool {
    bytes.starts_with(b"PK\x03\x04")
}

/// Reads what the build of a package names.
pub(super) fn read(bytes: &[u8], limits: &Limits) -> Result<Soup, ReadError> {
    let mut package = Package::open(bytes)?;
    let mut left = limits.max_expanded_bytes;
    let mut model = Model::new(limits, package.model_part(&mut left, limits)?);
    let mut at = 0;
    while let Some(name) = model.part(at).map(str::to_owned) {
        let mut meter = Meter::new(package.part(&name)?, left, limits);
        model.read(&mut meter, at)?;
        left = meter.left();
        at += 1;
    }
    model.assemble(limits)
}

/// Reads the XML of a model that lies in one file, outside its package.
///
/// # Errors
/// [`ReadError`] when it is no such XML, names what is not there, holds no triangle or a corner that is not finite, or passes the limits.
pub fn read_model_part(xml: &[u8], limits: &Limits) -> Result<Soup, ReadError> {
    let mut model = Model::new(limits, "3D/3dmodel.model".to_owned());
    model.read(&mut Meter::new(xml, limits.max_expanded_bytes, limits), 0)?;
    match model.part(1) {
        Some(name) => Err(package::missing(name)),
        None => model.assemble(limits),
    }
}
