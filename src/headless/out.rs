//! Standard output and error, gathered and written once.

use std::io::{self, ErrorKind, Write};

/// What goes to the two streams. Nothing is lost when the reader of one closes early: that is no error.
#[derive(Debug, Default)]
pub(super) struct Out {
    data: String,
}

impl Out {
    /// Data, for stdout; ends with a line end.
    pub fn data(&mut self, text: &str) {
        self.data.push_str(text);
        if !text.ends_with('\n') {
            self.data.push('\n');
        }
    }

    /// A message, for stderr, at once.
    pub fn tell(&mut self, text: &str) {
        // Where even the message cannot be written there is nobody to tell.
        let _ = writeln!(io::stderr().lock(), "{}", text.trim_end());
    }

    /// Writes the data. A closed pipe is success: the reader has all it wanted.
    pub fn finish(&mut self) -> io::Result<()> {
        let mut stdout = io::stdout().lock();
        match stdout.write_all(self.data.as_bytes()).and_then(|()| stdout.flush()) {
            Err(error) if error.kind() == ErrorKind::BrokenPipe => Ok(()),
            other => other,
        }
    }
}
