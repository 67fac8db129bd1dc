//! Passing over a value that is not wanted. All of it is looked at: what `ron` would refuse must not slip through here.

use super::text::Plain;

impl Plain<'_> {
    /// Passes over one value.
    pub(super) fn pass(&mut self) -> Option<()> {
        match self.peek()? {
            b'"' => self.pass_quoted(),
            b'0'..=b'9' | b'-' => self.number().map(|_| ()),
            b'(' => self.pass_round(),
            b'[' => {
                self.open(b'[')?;
                self.pass_values(b']')
            }
            b'{' => {
                self.open(b'{')?;
                self.pass_pairs()
            }
            b't' | b'f' => matches!(self.name()?, "true" | "false").then_some(()),
            b'A'..=b'Z' => self.pass_named(),
            _ => None,
        }
    }

    /// A word such as `Front`, or one with a bracket: `Table("x")`.
    fn pass_named(&mut self) -> Option<()> {
        let name = self.name()?;
        if name == "Some" || name.starts_with("NaN") {
            return None;
        }
        match (self.peek(), name) {
            (Some(b'('), "None") => None,
            (Some(b'('), _) => self.pass_round(),
            _ => Some(()),
        }
    }

    /// Something in round brackets: named fields or values.
    fn pass_round(&mut self) -> Option<()> {
        self.open(b'(')?;
        if self.close(b')') {
            return Some(());
        }
        let start = self.place();
        let first_is_name = self.peek().is_some_and(|byte| byte.is_ascii_lowercase() || byte.is_ascii_uppercase() || byte == b'_');
        if first_is_name {
            self.name()?;
            self.white()?;
            if self.peek() == Some(b':') {
                return self.pass_fields();
            }
            self.back_to(start);
        }
        self.pass_values(b')')
    }

    /// Behind the first field's name.
    fn pass_fields(&mut self) -> Option<()> {
        loop {
            self.colon()?;
            self.pass()?;
            if self.comma_or_close(b')')? {
                return Some(());
            }
            self.name()?;
        }
    }

    fn pass_values(&mut self, close: u8) -> Option<()> {
        if self.close(close) {
            return Some(());
        }
        loop {
            self.pass()?;
            if self.comma_or_close(close)? {
                return Some(());
            }
        }
    }

    fn pass_pairs(&mut self) -> Option<()> {
        if self.close(b'}') {
            return Some(());
        }
        loop {
            self.pass()?;
            self.colon()?;
            self.pass()?;
            if self.comma_or_close(b'}')? {
                return Some(());
            }
        }
    }
}
