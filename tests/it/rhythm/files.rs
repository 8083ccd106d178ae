//! Tap files: every way of being wrong names its line, within bounded memory.

use std::io::{self, Cursor, ErrorKind, Read};

use feedside::practice::{Baby, HandLevel, simulate};
use feedside::record::{Tap, TapWhat};
use feedside::rhythm::{ROWS_MOST, TapFileError, read_taps, write_taps};

fn read(text: &str) -> Result<Vec<Tap>, TapFileError> {
    read_taps(text.as_bytes())
}

#[test]
fn a_good_file_is_read_with_either_line_end() {
    let expected = vec![
        Tap::new(0, TapWhat::On),
        Tap::new(1_000, TapWhat::Suck),
        Tap::new(1_000, TapWhat::Swallow),
        Tap::new(1_600, TapWhat::SuckSwallow),
        Tap::new(9_000, TapWhat::End),
    ];
    let lines = [
        "ms,what",
        "0,on",
        "1000,suck",
        "1000,swallow",
        "1600,suck_swallow",
        "9000,end",
    ];
    for end in ["\n", "\r\n"] {
        assert_eq!(read(&lines.join(end)), Ok(expected.clone()));
        assert_eq!(
            read(&format!("{}{end}", lines.join(end))),
            Ok(expected.clone())
        );
    }
    assert_eq!(read(&format!("\u{feff}{}", lines.join("\n"))), Ok(expected));
}

#[test]
fn a_file_in_another_encoding_has_no_header_that_is_known() {
    let wide: Vec<u8> = "\u{feff}ms,what\n0,on\n"
        .encode_utf16()
        .flat_map(u16::to_le_bytes)
        .collect();
    assert_eq!(read_taps(wide.as_slice()), Err(TapFileError::Header));
}

#[test]
fn a_bad_file_names_its_line() {
    let long = format!("ms,what\n0,on\n{},suck\n", "0".repeat(200));
    let cases = [
        ("", TapFileError::Empty),
        ("\n", TapFileError::Header),
        ("ms;what\n0;on\n", TapFileError::Header),
        ("0,on\n", TapFileError::Header),
        ("what,ms\n", TapFileError::Header),
        ("ms,what\n", TapFileError::NoTap),
        ("ms,what", TapFileError::NoTap),
        ("ms,what\n0,on\n5,blink\n", TapFileError::Word { line: 3 }),
        ("ms,what\n0,On\n", TapFileError::Word { line: 2 }),
        ("ms,what\n0,on,\n", TapFileError::Word { line: 2 }),
        ("ms,what\n0,on \n", TapFileError::Word { line: 2 }),
        (
            "ms,what\n0,on\n\n1,suck\n",
            TapFileError::NotARow { line: 3 },
        ),
        ("ms,what\n0 on\n", TapFileError::NotARow { line: 2 }),
        ("ms,what\n0,on\n-5,suck\n", TapFileError::Time { line: 3 }),
        ("ms,what\n1.5,suck\n", TapFileError::Time { line: 2 }),
        ("ms,what\n+5,suck\n", TapFileError::Time { line: 2 }),
        ("ms,what\n,suck\n", TapFileError::Time { line: 2 }),
        (
            "ms,what\n99999999999999999999999,suck\n",
            TapFileError::Time { line: 2 },
        ),
        (
            "ms,what\n18446744073709551615,suck\n",
            TapFileError::Time { line: 2 },
        ),
        (
            "ms,what\n10,on\n20,suck\n19,suck\n",
            TapFileError::TimeGoesBack { line: 4 },
        ),
        (long.as_str(), TapFileError::LineTooLong { line: 3 }),
    ];
    for (text, expected) in cases {
        let error = read(text).unwrap_err();
        assert_eq!(error, expected, "{text:?}");
        assert!(error.to_string().starts_with("line "), "{error}");
    }
    assert_eq!(
        read_taps(&b"ms,what\n0,\xff\xfe\n"[..]),
        Err(TapFileError::NotARow { line: 2 })
    );
}

/// Gives one byte over and over, and counts how many were taken.
struct Zeros {
    left: u64,
    taken: u64,
}

impl Read for Zeros {
    fn read(&mut self, into: &mut [u8]) -> io::Result<usize> {
        let count = (into.len() as u64).min(self.left) as usize;
        into[..count].fill(0);
        self.left -= count as u64;
        self.taken += count as u64;
        Ok(count)
    }
}

#[test]
fn two_hundred_megabytes_of_zeros_are_refused_after_the_first_few() {
    let mut zeros = Zeros {
        left: 200_000_000,
        taken: 0,
    };
    assert_eq!(
        read_taps(&mut zeros),
        Err(TapFileError::LineTooLong { line: 1 })
    );
    assert!(zeros.taken <= 64 * 1_024, "{}", zeros.taken);
    let mut later = Cursor::new(b"ms,what\n0,on\n").chain(Zeros {
        left: 200_000_000,
        taken: 0,
    });
    assert_eq!(
        read_taps(&mut later),
        Err(TapFileError::LineTooLong { line: 3 })
    );
}

#[test]
fn more_rows_than_taken_are_refused_at_the_first_too_many() {
    let rows = "1,suck\n".repeat(ROWS_MOST + 1);
    assert_eq!(
        read(&format!("ms,what\n{rows}")),
        Err(TapFileError::TooManyRows {
            line: ROWS_MOST + 2
        })
    );
}

#[test]
fn what_cannot_be_read_says_up_to_which_line() {
    struct Broken;
    impl Read for Broken {
        fn read(&mut self, _: &mut [u8]) -> io::Result<usize> {
            Err(ErrorKind::IsADirectory.into())
        }
    }
    assert_eq!(
        read_taps(Broken),
        Err(TapFileError::Unreadable {
            line: 1,
            kind: ErrorKind::IsADirectory
        })
    );
}

#[test]
fn what_is_written_is_read_back() {
    for level in HandLevel::ALL {
        let taps = simulate(Baby::Established, level.hand(), 7, 16).taps;
        let mut bytes = Vec::new();
        write_taps(&taps, &mut bytes).unwrap();
        assert_eq!(read_taps(bytes.as_slice()), Ok(taps));
    }
}
