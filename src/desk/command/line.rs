//! The two lines on which a scanner types: the terminal's keyboard and a serial port. Both are set
//! so that each character comes at once, as it is, and is not written back.

use std::fs::File;
use std::path::Path;

/// The key that ends listening while the keyboard is the scanner's.
pub(super) const CTRL_C: u8 = 3;

/// The keyboard of a terminal, given to the scanner; given back when dropped.
#[derive(Debug)]
pub struct Keyboard {
    #[cfg(unix)]
    before: rustix::termios::Termios,
}

#[cfg(unix)]
impl Keyboard {
    /// Gives the keyboard to the scanner; nothing where standard input is no terminal.
    ///
    /// A terminal by itself holds each line back until Enter, cuts it at 4,095 characters, and shows
    /// it: all three are wrong for a scanner.
    pub fn to_scanner() -> Option<Self> {
        use rustix::termios::{
            InputModes, LocalModes, OptionalActions, SpecialCodeIndex, tcgetattr, tcsetattr,
        };
        let keyboard = std::io::stdin();
        let before = tcgetattr(&keyboard).ok()?;
        let mut now = before.clone();
        now.input_modes
            .remove(InputModes::IXON | InputModes::ISTRIP | InputModes::INLCR);
        now.local_modes
            .remove(LocalModes::ICANON | LocalModes::ECHO | LocalModes::ISIG | LocalModes::IEXTEN);
        now.special_codes[SpecialCodeIndex::VMIN] = 1;
        now.special_codes[SpecialCodeIndex::VTIME] = 0;
        tcsetattr(&keyboard, OptionalActions::Now, &now).ok()?;
        Some(Self { before })
    }
}

#[cfg(unix)]
impl Drop for Keyboard {
    fn drop(&mut self) {
        use rustix::termios::{OptionalActions, tcsetattr};
        let _ = tcsetattr(std::io::stdin(), OptionalActions::Now, &self.before);
    }
}

#[cfg(not(unix))]
impl Keyboard {
    /// Nothing on this kind of system: the console hands over whole lines, so the scanner must end
    /// each code with Enter.
    pub fn to_scanner() -> Option<Self> {
        None
    }
}

/// Opens a serial port for reading: eight bits, no parity, one stop bit, no flow control.
///
/// # Errors
/// Any of the system's, and where it is no serial port.
#[cfg(unix)]
pub(super) fn serial(port: &Path, baud: u32) -> std::io::Result<File> {
    use rustix::termios::{ControlModes, OptionalActions, tcgetattr, tcsetattr};
    use std::os::unix::fs::OpenOptionsExt;
    // Opening must neither wait for a carrier nor make the port this program's terminal.
    let flags = rustix::fs::OFlags::NOCTTY | rustix::fs::OFlags::NONBLOCK;
    let file = File::options()
        .read(true)
        .write(true)
        .custom_flags(flags.bits().cast_signed())
        .open(port)?;
    let mut settings = tcgetattr(&file)?;
    settings.make_raw();
    settings
        .control_modes
        .remove(ControlModes::CSTOPB | ControlModes::CRTSCTS);
    settings
        .control_modes
        .insert(ControlModes::CLOCAL | ControlModes::CREAD);
    settings.set_speed(baud)?;
    tcsetattr(&file, OptionalActions::Now, &settings)?;
    // From here on a read waits.
    let flags = rustix::fs::fcntl_getfl(&file)?;
    rustix::fs::fcntl_setfl(&file, flags.difference(rustix::fs::OFlags::NONBLOCK))?;
    Ok(file)
}

/// Opens a serial port for reading, at the speed that the system set for it.
///
/// # Errors
/// Any of the system's.
#[cfg(not(unix))]
pub(super) fn serial(port: &Path, _baud: u32) -> std::io::Result<File> {
    File::open(port)
}
