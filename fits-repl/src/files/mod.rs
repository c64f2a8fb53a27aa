//! What is kept on disk: the crib, the settings, the pass logs. A file is
//! replaced only by writing beside it and renaming; a log is only ever
//! appended to. A damaged file is said with its line and never written over.

mod crib_file;
mod job_file;
mod log_file;
mod settings_file;

use std::{
    fs, io,
    path::{Path, PathBuf},
};

pub(crate) use crib_file::CribFile;
pub(crate) use job_file::JobFile;
pub(crate) use log_file::{LogFile, Opened, finished, latest_open, list};
pub(crate) use settings_file::{Dials, SettingsFile};

/// The longest file read: more is not a crib and no log.
const MOST_BYTES: u64 = 16 << 20;

/// The user's folders, where the system names them.
#[derive(Clone, Debug, Default)]
#[expect(clippy::exhaustive_structs, reason = "files are kept in these two folders")]
pub struct Home {
    /// Of the crib and the settings.
    pub config: Option<PathBuf>,
    /// Of the pass logs.
    pub data: Option<PathBuf>,
}

impl Home {
    /// The system's own for this user.
    #[cfg(feature = "command")]
    pub fn of_user() -> Self {
        Self {
            config: dirs::config_dir().map(|folder| folder.join("fits")),
            data: dirs::data_dir().map(|folder| folder.join("fits")),
        }
    }
}

/// The text of a file; nothing where there is none.
///
/// # Errors
/// It is there and cannot be read, is not a plain file, or is too long.
fn text_of(path: &Path) -> io::Result<Option<String>> {
    let metadata = match fs::metadata(path) {
        Ok(metadata) => metadata,
        Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
        Err(error) => return Err(error),
    };
    plain(&metadata)?;
    fs::read_to_string(path).map(Some)
}

/// Refuses what is not a file to read through: a folder, a device.
fn plain(metadata: &fs::Metadata) -> io::Result<()> {
    if !metadata.is_file() {
        return Err(io::Error::other("it is not a plain file"));
    }
    if metadata.len() > MOST_BYTES {
        return Err(io::Error::other("it is longer than 16 MiB"));
    }
    Ok(())
}

/// Puts a text in a file's place, all or nothing: beside it, to the disk,
/// renamed.
///
/// # Errors
/// The folder cannot be made or written; the file is as it was.
fn replace(path: &Path, text: &str) -> io::Result<()> {
    if let Some(folder) = path.parent().filter(|folder| !folder.as_os_str().is_empty()) {
        make_folder(folder)?;
    }
    // A link is followed, not replaced.
    let path = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    if fs::metadata(&path).is_ok_and(|metadata| metadata.permissions().readonly()) {
        return Err(io::Error::new(io::ErrorKind::PermissionDenied, "it is read-only"));
    }
    put(&path, text)?;
    sync_folder(&path);
    Ok(())
}

#[cfg(feature = "command")]
fn put(path: &Path, text: &str) -> io::Result<()> {
    use std::io::Write as _;
    let mut file = atomic_write_file::AtomicWriteFile::open(path)?;
    file.write_all(text.as_bytes())?;
    file.commit()
}

#[cfg(not(feature = "command"))]
fn put(_: &Path, _: &str) -> io::Result<()> {
    Err(io::Error::new(io::ErrorKind::Unsupported, "this build keeps no files"))
}

/// Changes a file while no other program does: a lock on a file beside it,
/// that stays, since its own place is taken by a new file each time.
///
/// # Errors
/// The lock cannot be had, or the change fails.
fn alone<T>(path: &Path, change: impl FnOnce() -> io::Result<T>) -> io::Result<T> {
    // Two names of one file share the lock.
    let path = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    // Nothing is put beside a device.
    if let Ok(metadata) = fs::metadata(&path) {
        plain(&metadata)?;
    }
    if let Some(folder) = path.parent().filter(|folder| !folder.as_os_str().is_empty()) {
        make_folder(folder)?;
    }
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    let beside = path.with_file_name(format!(".{name}.lock"));
    let lock = fs::OpenOptions::new().create(true).append(true).open(beside)?;
    lock.lock()?;
    change()
}

/// Makes a folder and those above it, each on disk.
fn make_folder(folder: &Path) -> io::Result<()> {
    if folder.as_os_str().is_empty() || folder.is_dir() {
        return Ok(());
    }
    if let Some(above) = folder.parent() {
        make_folder(above)?;
    }
    match fs::create_dir(folder) {
        Err(error) if error.kind() != io::ErrorKind::AlreadyExists || !folder.is_dir() => {
            Err(error)
        }
        _ => {
            sync_folder(folder);
            Ok(())
        }
    }
}

/// A new name in a folder is on disk when the folder is. Where a folder
/// cannot be opened (Windows), the system sees to it.
fn sync_folder(path: &Path) {
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty());
    if let Ok(folder) = fs::File::open(folder.unwrap_or(Path::new("."))) {
        let _ = folder.sync_all();
    }
}

/// The line of a byte in a text, the first is 1.
fn line_of(text: &str, at: usize) -> usize {
    text.bytes().take(at).filter(|byte| *byte == b'\n').count() + 1
}

/// The shortest name for a file in a message.
fn shown(path: &Path) -> String {
    path.display().to_string()
}
