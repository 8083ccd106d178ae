//! What the window takes from the system: private files, and programs that print and play.

use std::fs::{self, OpenOptions};
use std::io::{self, Write};
use std::path::Path;
use std::process::{Command, Stdio};

/// Gives a file to the printer; whether it was taken.
pub type Printer = Box<dyn Fn(&Path) -> bool + Send>;

/// Writes a file that only this account may read, in place of an older one.
///
/// # Errors
/// As the system tells.
pub fn write_privately(file: &Path, bytes: &[u8]) -> io::Result<()> {
    if let Some(folder) = file.parent() {
        fs::create_dir_all(folder)?;
    }
    match fs::remove_file(file) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => return Err(error),
        _ => {}
    }
    let mut options = OpenOptions::new();
    options.write(true).create_new(true);
    #[cfg(unix)]
    {
        use std::os::unix::fs::OpenOptionsExt;
        options.mode(0o600);
    }
    let mut open = options.open(file)?;
    open.write_all(bytes)?;
    open.sync_all()
}

/// Runs a program to its end, unseen; whether it is there and did what it was to do.
pub fn quietly(program: &str, arguments: &[&str], file: &Path) -> bool {
    let mut command = Command::new(program);
    let command = command
        .args(arguments)
        .arg(file)
        .stdin(Stdio::null())
        .stdout(Stdio::null())
        .stderr(Stdio::null());
    command.status().is_ok_and(|status| status.success())
}

/// The usual commands for the printer that the system has set up: `lp` of CUPS, else `lpr`. The
/// job's title is the file's name, in which nobody is named.
pub fn print(file: &Path) -> bool {
    ["lp", "lpr"]
        .iter()
        .any(|program| quietly(program, &["--"], file))
}
