//! A pass log on disk: one JSON object a line, appended, flushed and synced
//! before anything is answered.
//!
//! A line that was torn by a crash is set aside in a file of its own beside
//! the log and said; a line that cannot be read is said with its number and
//! left where it is. One program writes a log, held by a lock on it; another
//! one may read.

use std::{
    fs::{self, File, OpenOptions, TryLockError},
    io::{self, Read as _, Seek as _, SeekFrom, Write as _},
    path::{Path, PathBuf},
    time::SystemTime,
};

use fits_core::job::{Entry, LogState, Opening, PassLog, VERSION};
use serde::{Deserialize, Serialize};

use crate::files::{make_folder, plain, shown, sync_folder};

/// An open log file.
#[derive(Debug)]
pub(crate) struct LogFile {
    file: File,
    path: PathBuf,
    /// Held by another program: reads only.
    read_only: bool,
}

/// A log file as it was found.
pub(crate) struct Opened {
    pub(crate) file: LogFile,
    /// One after the other; none where it holds nothing yet.
    pub(crate) logs: Vec<PassLog>,
    /// What was wrong with it and what was done about it.
    pub(crate) notes: Vec<String>,
}

/// The opening as a line.
#[derive(Serialize)]
struct OpeningLine<'a> {
    entry: &'static str,
    #[serde(flatten)]
    opening: &'a Opening,
}

impl LogFile {
    /// Opens a log, or makes an empty one.
    ///
    /// # Errors
    /// It cannot be made, opened or read, is not a plain file, or its first line
    /// is none of ours.
    pub(crate) fn open(path: &Path) -> io::Result<Opened> {
        let named = |error: io::Error| with_path(&error, path);
        let is_new = !path.exists();
        if is_new && let Some(folder) = path.parent().filter(|f| !f.as_os_str().is_empty()) {
            make_folder(folder).map_err(named)?;
        }
        // Before it is opened: a pipe or a device would never end.
        if let Ok(metadata) = fs::metadata(path) {
            plain(&metadata).map_err(named)?;
        }
        let writable =
            OpenOptions::new().read(true).append(true).create(true).open(path).map_err(named);
        let (file, mut read_only, mut notes) = match writable {
            Ok(file) => (file, false, Vec::new()),
            Err(error) if is_new => return Err(error),
            Err(error) => {
                let file = File::open(path).map_err(named)?;
                let note = format!("{error}: this one only reads");
                (file, true, vec![note])
            }
        };
        if !read_only {
            match file.try_lock() {
                Ok(()) => {}
                Err(TryLockError::WouldBlock) => {
                    read_only = true;
                    notes.push(format!(
                        "{} is open in another fits: this one only reads it",
                        shown(path)
                    ));
                }
                Err(TryLockError::Error(error)) => return Err(named(error)),
            }
        }
        if is_new {
            sync_folder(path);
        }
        let mut file = Self { file, path: path.to_owned(), read_only };
        let logs = file.read(&mut notes).map_err(named)?;
        Ok(Opened { file, logs, notes })
    }

    /// Makes a log that is not there yet, with its opening.
    ///
    /// # Errors
    /// It cannot be made or written; nothing of it is left.
    pub(crate) fn create(folder: &Path, stem: &str, opening: &Opening) -> io::Result<Self> {
        make_folder(folder).map_err(|error| with_path(&error, folder))?;
        for number in 1..10_000 {
            let path = folder.join(format!("{stem}-{number}.jsonl"));
            let made = OpenOptions::new().read(true).append(true).create_new(true).open(&path);
            let file = match made {
                Err(error) if error.kind() == io::ErrorKind::AlreadyExists => continue,
                Err(error) => return Err(with_path(&error, &path)),
                Ok(file) => file,
            };
            // Nobody else knows the name yet.
            let _ = file.try_lock();
            let mut log = Self { file, path, read_only: false };
            if let Err(error) = log.begin(opening) {
                let _ = fs::remove_file(&log.path);
                return Err(error);
            }
            sync_folder(&log.path);
            return Ok(log);
        }
        Err(io::Error::other(format!("{} is full of logs named {stem}", shown(folder))))
    }

    /// Writes the opening of an empty log.
    ///
    /// # Errors
    /// As [`LogFile::append`].
    pub(crate) fn begin(&mut self, opening: &Opening) -> io::Result<()> {
        self.put(&OpeningLine { entry: "open", opening })
    }

    /// Writes an entry and waits until it is on disk.
    ///
    /// # Errors
    /// It is not on disk: what was written of it is taken off again.
    pub(crate) fn append(&mut self, entry: &Entry) -> io::Result<()> {
        self.put(entry)
    }

    fn put(&mut self, line: &impl Serialize) -> io::Result<()> {
        if self.read_only {
            return Err(io::Error::new(
                io::ErrorKind::PermissionDenied,
                format!("{} is only read by this one", shown(&self.path)),
            ));
        }
        let mut bytes = serde_json::to_vec(line)?;
        bytes.push(b'\n');
        self.is_in_place()?;
        let before = self.file.metadata().map_err(|error| with_path(&error, &self.path))?.len();
        let written = self.file.write_all(&bytes).and_then(|()| self.file.sync_data());
        written.map_err(|error| {
            let undone = self.file.set_len(before).and_then(|()| self.file.sync_data());
            match undone {
                Ok(()) => with_path(&error, &self.path),
                Err(again) => with_path(
                    &io::Error::new(
                        error.kind(),
                        format!("{error}; and a part of the line may be left ({again})"),
                    ),
                    &self.path,
                ),
            }
        })
    }

    #[cfg(feature = "command")]
    fn is_same(&self) -> io::Result<bool> {
        use same_file::Handle;
        let named = Handle::from_path(&self.path)?;
        Ok(named == Handle::from_file(self.file.try_clone()?)?)
    }

    #[cfg(not(feature = "command"))]
    #[allow(clippy::unused_self, reason = "stands for the same question")]
    fn is_same(&self) -> io::Result<bool> {
        Err(io::Error::new(io::ErrorKind::Unsupported, "this build keeps no files"))
    }

    /// Is the open file still the one that its name stands for? What is
    /// written to another one is lost with it.
    fn is_in_place(&self) -> io::Result<()> {
        match self.is_same() {
            Ok(true) => Ok(()),
            Ok(false) => Err(io::Error::other(format!(
                "{} was replaced by another file since it was opened",
                shown(&self.path)
            ))),
            Err(error) if error.kind() == io::ErrorKind::NotFound => Err(io::Error::other(
                format!("{} was moved or removed since it was opened", shown(&self.path)),
            )),
            Err(error) => Err(with_path(&error, &self.path)),
        }
    }

    pub(crate) fn is_read_only(&self) -> bool {
        self.read_only
    }

    /// What a person calls it: the file's name without its ending.
    pub(crate) fn name(&self) -> String {
        name_of(&self.path)
    }

    /// Reads all of it; sets a torn last line aside where this one may write.
    fn read(&mut self, notes: &mut Vec<String>) -> io::Result<Vec<PassLog>> {
        let mut bytes = Vec::new();
        self.file.seek(SeekFrom::Start(0))?;
        self.file.read_to_end(&mut bytes)?;
        let found = contents(&bytes);
        if found.is_foreign {
            return Err(io::Error::other("it does not begin as a pass log does"));
        }
        notes.extend(found.notes);
        if let Some(torn) = found.torn {
            self.mend(&bytes, &torn, notes)?;
        }
        Ok(found.logs)
    }

    fn mend(&mut self, bytes: &[u8], torn: &Torn, notes: &mut Vec<String>) -> io::Result<()> {
        let line = torn.line;
        if self.read_only {
            if !torn.is_whole {
                notes.push(format!("line {line} was torn and is left out"));
            }
            return Ok(());
        }
        if torn.is_whole {
            // Only its line feed is missing.
            self.file.write_all(b"\n")?;
            return self.file.sync_data();
        }
        // Never the log itself, whatever it is called.
        let mut aside = self.path.clone().into_os_string();
        aside.push(".torn");
        let aside = PathBuf::from(aside);
        let mut side = OpenOptions::new().append(true).create(true).open(&aside)?;
        side.write_all(bytes.get(torn.start..).unwrap_or_default())?;
        side.write_all(b"\n")?;
        side.sync_all()?;
        sync_folder(&aside);
        self.file.set_len(torn.start.try_into().unwrap_or(u64::MAX))?;
        self.file.sync_all()?;
        notes.push(format!(
            "line {line} was torn: it is set aside in {}; read the size again",
            shown(&aside)
        ));
        Ok(())
    }
}

/// A last line without its line feed.
struct Torn {
    line: usize,
    start: usize,
    is_whole: bool,
}

struct Contents {
    /// One after the other; the last one is the one that goes on.
    logs: Vec<PassLog>,
    torn: Option<Torn>,
    notes: Vec<String>,
    /// Something stands before the first opening.
    is_foreign: bool,
}

/// A line that was read.
enum Line {
    Opening(Opening),
    Entry(Entry),
}

#[derive(Deserialize)]
struct Tag {
    entry: String,
}

fn line_from(text: &[u8]) -> Option<Line> {
    let tag: Tag = serde_json::from_slice(text).ok()?;
    if tag.entry == "open" {
        let opening: Opening = serde_json::from_slice(text).ok()?;
        opening.limits().ok()?;
        return Some(Line::Opening(opening));
    }
    serde_json::from_slice(text).ok().map(Line::Entry)
}

/// What the bytes of a log hold.
fn contents(bytes: &[u8]) -> Contents {
    let mut found = Contents { logs: Vec::new(), torn: None, notes: Vec::new(), is_foreign: false };
    let mut start = 0;
    let mut lost = Vec::new();
    for (number, line) in (1..).zip(bytes.split_inclusive(|byte| *byte == b'\n')) {
        let ended = line.ends_with(b"\n");
        let text = line.trim_ascii();
        let here = start;
        start += line.len();
        let read = line_from(text);
        if !ended {
            let is_whole = read.is_some() || text.is_empty();
            found.torn = Some(Torn { line: number, start: here, is_whole });
        }
        match (read, found.logs.last_mut()) {
            _ if text.is_empty() => {}
            (Some(Line::Opening(opening)), _) => {
                if opening.version > VERSION {
                    found.notes.push(format!(
                        "line {number}: written by a later fits (version {} of the format)",
                        opening.version
                    ));
                }
                found.logs.push(PassLog::new(opening));
            }
            (Some(Line::Entry(entry)), Some(log)) => {
                unknown_keys(&mut found.notes, number, text, &entry);
                log.entries.push(entry);
            }
            (None, Some(log)) if ended => {
                log.entries.push(Entry::Lost);
                lost.push(number.to_string());
            }
            (_, None) if ended => found.is_foreign = true,
            _ => {}
        }
    }
    if !lost.is_empty() {
        let entries = found.logs.iter().flat_map(|log| &log.entries);
        let kept = entries.filter(|entry| **entry != Entry::Lost).count();
        found.notes.push(format!(
            "damaged: line {} cannot be read and is left in the file; {kept} other entries are \
             kept; read the size again before the next cut",
            lost.join(", ")
        ));
    }
    found
}

/// Says what an entry holds that is not understood; it stays in the file.
fn unknown_keys(notes: &mut Vec<String>, line: usize, text: &[u8], entry: &Entry) {
    let read = serde_json::from_slice::<serde_json::Value>(text);
    let known = serde_json::to_value(entry);
    if let (Ok(serde_json::Value::Object(read)), Ok(known)) = (read, known) {
        for key in read.keys().filter(|key| known.get(key.as_str()).is_none()) {
            // A default may be written out, too.
            if key != "sure" && key != "read" {
                notes.push(format!("line {line}: `{key}` is not understood; it is kept"));
            }
        }
    }
}

/// One log of a folder.
pub(crate) struct Listed {
    pub(crate) name: String,
    pub(crate) path: PathBuf,
    pub(crate) log: PassLog,
}

/// The logs of a folder, the last written first.
pub(crate) fn list(folder: &Path) -> Vec<Listed> {
    let Ok(entries) = fs::read_dir(folder) else { return Vec::new() };
    let mut found: Vec<(SystemTime, PathBuf)> = entries
        .filter_map(Result::ok)
        .map(|entry| entry.path())
        .filter(|path| path.extension().is_some_and(|ending| ending == "jsonl"))
        .filter_map(|path| {
            let metadata = fs::metadata(&path).ok()?;
            plain(&metadata).ok()?;
            Some((metadata.modified().unwrap_or(SystemTime::UNIX_EPOCH), path))
        })
        .collect();
    found.sort_by(|one, other| other.cmp(one));
    found
        .into_iter()
        .filter_map(|(_, path)| {
            let log = contents(&fs::read(&path).ok()?).logs.pop()?;
            Some(Listed { name: name_of(&path), path, log })
        })
        .collect()
}

/// Of the logs still open, the one that was written last.
pub(crate) fn latest_open(listed: &[Listed]) -> Option<&Listed> {
    listed.iter().find(|listed| listed.log.state() == LogState::Open)
}

/// The finished logs among them.
pub(crate) fn finished(listed: Vec<Listed>) -> Vec<PassLog> {
    listed
        .into_iter()
        .map(|listed| listed.log)
        .filter(|log| log.state() != LogState::Open && !log.entries.contains(&Entry::Lost))
        .collect()
}

fn name_of(path: &Path) -> String {
    path.file_stem().map_or_else(|| shown(path), |stem| stem.to_string_lossy().into_owned())
}

fn with_path(error: &io::Error, path: &Path) -> io::Error {
    io::Error::new(error.kind(), format!("{}: {error}", shown(path)))
}
