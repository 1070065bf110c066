//! Opens ordinary files and nothing else: a pipe or a device might never end.

use std::fs::{File, OpenOptions};
use std::io;
use std::path::Path;

/// Opens a file to read. What is opened is looked at, not what stood there before.
///
/// # Errors
/// Whatever the system says, and when it is no ordinary file.
pub fn open_regular(path: &Path) -> io::Result<File> {
    let mut options = OpenOptions::new();
    options.read(true);
    not_waiting(&mut options);
    let file = options.open(path)?;
    if !file.metadata()?.is_file() {
        return Err(io::Error::other("it is no ordinary file"));
    }
    Ok(file)
}

/// Opening a pipe would wait for whoever writes into it.
#[cfg(unix)]
fn not_waiting(options: &mut OpenOptions) {
    use std::os::unix::fs::OpenOptionsExt;
    // `O_NONBLOCK` (POSIX), by the headers of each system; without effect on ordinary files.
    let flag = if cfg!(any(target_os = "linux", target_os = "android")) { 0o4000 } else { 0x4 };
    options.custom_flags(flag);
}

#[cfg(not(unix))]
fn not_waiting(_: &mut OpenOptions) {}

#[cfg(all(test, unix))]
mod tests {
    use super::*;

    #[test]
    fn a_pipe_a_device_and_a_folder_are_refused_at_once() {
        let folder = tempfile::tempdir().unwrap();
        let pipe = folder.path().join("pipe");
        assert!(std::process::Command::new("mkfifo").arg(&pipe).status().unwrap().success());
        for path in [pipe.as_path(), Path::new("/dev/zero"), folder.path()] {
            assert!(open_regular(path).is_err(), "{}", path.display());
        }
        let file = folder.path().join("file");
        std::fs::write(&file, "words").unwrap();
        assert!(open_regular(&file).is_ok());
    }
}
