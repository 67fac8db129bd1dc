//! Small helpers that keep files short: what is at its default is not written.

/// True for a value that equals its default, which a file leaves out.
pub(super) fn is_default<T: Default + PartialEq>(value: &T) -> bool {
    *value == T::default()
}

/// A document struct: refuses unknown fields, fills absent ones with their defaults and writes only what differs from them.
macro_rules! document {
    ($(#[$doc:meta])* pub struct $name:ident { $($(#[$field_doc:meta])* $field:ident: $type:ty,)* }) => {
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq, Default, serde::Serialize, serde::Deserialize)]
        #[serde(deny_unknown_fields, default)]
        pub struct $name {
            $($(#[$field_doc])* #[serde(skip_serializing_if = "crate::job::serial::is_default")] pub $field: $type,)*
        }
    };
}

pub(super) use document;
