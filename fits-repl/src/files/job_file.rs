//! The note of a job: read, and appended to. What a person wrote in it is never
//! written over.

use std::{
    fs, io,
    io::Write as _,
    path::{Path, PathBuf},
};

use super::{alone, shown, sync_folder, text_of};

/// A note on disk, as it was read last.
#[derive(Clone, Debug)]
pub(crate) struct JobFile {
    path: PathBuf,
    text: String,
}

impl JobFile {
    /// Reads a note.
    ///
    /// # Errors
    /// It is not there, or is no text.
    pub(crate) fn open(path: &Path) -> io::Result<Self> {
        let named = |error: io::Error| {
            let what = match error.kind() {
                io::ErrorKind::InvalidData => "it is not UTF-8 text".to_owned(),
                _ => error.to_string(),
            };
            io::Error::new(error.kind(), format!("{}: {what}", shown(path)))
        };
        let text = text_of(path).map_err(named)?.ok_or_else(|| {
            io::Error::new(
                io::ErrorKind::NotFound,
                format!("{}: there is no such note", shown(path)),
            )
        })?;
        Ok(Self { path: path.to_owned(), text })
    }

    pub(crate) fn text(&self) -> &str {
        &self.text
    }

    pub(crate) fn name(&self) -> String {
        shown(&self.path)
    }

    /// Reads it again; was it changed by somebody?
    ///
    /// # Errors
    /// It cannot be read any more.
    pub(crate) fn again(&mut self) -> io::Result<bool> {
        let new = Self::open(&self.path)?;
        let changed = new.text != self.text;
        self.text = new.text;
        Ok(changed)
    }

    /// Appends a line, to the disk, while no other program of this kind does.
    /// `check` sees the whole text as it would be, and says what is wrong.
    ///
    /// # Errors
    /// It cannot be written, or the check refuses; the file is as it was.
    pub(crate) fn append(
        &mut self,
        line: &str,
        check: impl FnOnce(&str) -> Result<(), String>,
    ) -> io::Result<()> {
        let path = self.path.clone();
        alone(&path, || {
            self.again()?;
            let mut added = String::new();
            if !self.text.is_empty() && !self.text.ends_with('\n') {
                added.push('\n');
            }
            added.push_str(line);
            added.push('\n');
            let whole = format!("{}{added}", self.text);
            check(&whole).map_err(io::Error::other)?;
            let mut file = fs::OpenOptions::new().append(true).open(&path)?;
            file.write_all(added.as_bytes())?;
            file.sync_all()?;
            sync_folder(&path);
            self.text = whole;
            Ok(())
        })
        .map_err(|error| match error.kind() {
            io::ErrorKind::PermissionDenied => io::Error::new(
                error.kind(),
                format!("{}: it cannot be written: {error}", shown(&path)),
            ),
            _ => error,
        })
    }
}
