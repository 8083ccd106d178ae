//! The whole program without a process: arguments, input, time and random bytes in; lines and exit
//! code out. Source: the project's own commands (exit codes 0 done, 1 refused or failed, 2 bad input).

use std::ffi::OsString;
use std::path::Path;

use feedside::desk::command::{World, run};
use feedside::handover::{Code, DeskKeyPair, DeskPublic, Packed};
use image::{DynamicImage, GrayImage};

use super::{handed_of, now, packed, packed_as, place, tablet};
use crate::store::Folder;
use crate::support;

pub(super) struct Ran {
    pub code: u8,
    pub out: String,
    pub err: String,
}

/// The inbox on a server, if the tests run against one.
fn inbox(data: &Path) -> Vec<OsString> {
    let url = place::server().map(|server| place::schema_of(&server, data));
    url.map_or_else(Vec::new, |url| vec!["--inbox".into(), url.into()])
}

pub(super) fn desk(data: &Path, arguments: &[&str], input: &str) -> Ran {
    desk_with(data, arguments, input, [5; 32])
}

fn desk_with(data: &Path, arguments: &[&str], input: &str, random: [u8; 32]) -> Ran {
    let (mut out, mut err) = (Vec::new(), Vec::new());
    let mut input = input.as_bytes();
    let given = ["feedside-desk", "--lang", "en", "--data"].map(OsString::from);
    let given = given
        .into_iter()
        .chain([data.as_os_str().to_owned()])
        .chain(inbox(data))
        .chain(arguments.iter().map(OsString::from));
    let code = run(
        given,
        &mut World {
            input: &mut input,
            keyboard: &|| None,
            out: &mut out,
            err: &mut err,
            now: &|| now().local(),
            random: &|| Some(random),
            variable: &|_| None,
            window: None,
        },
    );
    Ran {
        code,
        out: String::from_utf8(out).unwrap(),
        err: String::from_utf8(err).unwrap(),
    }
}

/// Makes the key and enrols the tablet by commands alone.
pub(super) fn set_up(data: &Path) -> DeskPublic {
    let made = desk(data, &["keys", "new"], "");
    assert_eq!(made.code, 0, "{}", made.err);
    let typed = made.out.lines().nth(2).unwrap();
    let public = DeskPublic::from_typed(typed).unwrap();
    assert!(made.out.contains(&public.fingerprint().join(" ")));

    let six = tablet().public().fingerprint().join(" ");
    let code = tablet().public().to_code_text() + "\n";
    let arguments = ["keys", "enrol", "--name", "Tablet 1", "--words", &six];
    let enrolled = desk(data, &arguments, &code);
    assert_eq!(enrolled.code, 0, "{}", enrolled.err);
    public
}

#[test]
fn a_whole_day_at_the_desk() {
    let folder = Folder::new("desk-day");
    let data = folder.file("data");
    let public = set_up(&data);
    let packed = packed(&public);
    let shown = desk(&data, &["keys", "show"], "");
    assert!(shown.out.contains(&public.to_typed()));
    assert!(
        desk(&data, &["keys", "list"], "")
            .out
            .contains(&public.kid().to_string())
    );
    assert!(
        desk(&data, &["keys", "tablets"], "")
            .out
            .contains("Tablet 1")
    );
    assert_eq!(desk(&data, &["inbox"], "").code, 0);

    let scans = packed.pieces.join("\n") + "\n";
    let first = desk(&data, &["listen"], &scans);
    assert_eq!((first.code, first.err.as_str()), (0, ""));
    assert!(first.out.contains(&packed.receipt.grouped()));
    assert!(first.out.contains("Bay 2 bed 4"));
    assert!(first.out.contains("medical review now"));

    let again = desk(&data, &["listen"], &scans);
    assert_eq!(again.code, 0);
    assert!(again.out.contains(&packed.receipt.grouped()));
    assert!(again.out.contains("Nothing was stored twice"));

    let inbox = desk(&data, &["inbox"], "");
    assert_eq!(inbox.out.matches("Receipt").count(), 1);
    let page = desk(&data, &["show", "1"], "");
    assert!(page.code == 0 && page.out.contains("Bay 2 bed 4"));
    let table = desk(&data, &["export", "1", "--as", "csv"], "");
    assert!(table.out.starts_with("section,"));
    let file = folder.file("visit.fhir.json");
    let arguments = [
        "export",
        "1",
        "--as",
        "fhir",
        "--out",
        file.to_str().unwrap(),
    ];
    assert_eq!(desk(&data, &arguments, "").code, 0);
    assert!(
        std::fs::read_to_string(file)
            .unwrap()
            .contains("\"transaction\"")
    );
}

#[test]
fn a_program_without_the_window_says_what_to_use_instead() {
    let folder = Folder::new("desk-no-window");
    let ran = desk(&folder.file("desk"), &["window"], "");
    assert_eq!(ran.code, 1);
    assert!(ran.err.contains("feedside-desk listen"), "{}", ran.err);
}

#[test]
fn a_new_folder_shows_no_record_and_says_that_it_is_not_enrolled() {
    let folder = Folder::new("desk-new");
    let public = set_up(&folder.file("other"));
    let scans = packed(&public).pieces.join("\n") + "\n";
    let ran = desk(&folder.file("new"), &["listen"], &scans);
    assert_eq!(ran.code, 1);
    assert!(ran.err.contains("not enrolled"), "{}", ran.err);
    assert!(ran.err.contains("keys new"), "{}", ran.err);
    for person in ["Bay 2", "T. W.", "kb"] {
        assert!(!(ran.out.clone() + &ran.err).contains(person));
    }
    assert!(
        desk(&folder.file("new"), &["inbox"], "")
            .out
            .contains("empty")
    );
}

#[test]
fn pictures_are_read_in_any_order_and_what_is_missing_is_told() {
    let folder = Folder::new("desk-read");
    let data = folder.file("data");
    let packed = packed(&set_up(&data));
    let mut files = Vec::new();
    for (index, code) in packed.codes.iter().enumerate() {
        let file = folder.file(&format!("record-{}.png", index + 1));
        picture(code).save(&file).unwrap();
        files.push(file.to_str().unwrap().to_owned());
    }
    let part = desk(&data, &["read", &files[1]], "");
    assert_eq!(part.code, 1);
    assert!(
        part.err.contains("piece number 1 is still missing"),
        "{}",
        part.err
    );

    files.reverse();
    let arguments: Vec<&str> = ["read"]
        .into_iter()
        .chain(files.iter().map(String::as_str))
        .collect();
    let whole = desk(&data, &arguments, "");
    assert_eq!((whole.code, whole.err.as_str()), (0, ""));
    assert!(whole.out.contains(&packed.receipt.grouped()));
}

/// Exit codes: 0 done, 1 refused or failed, 2 bad input. A record that is safe does not hide another
/// that is not.
#[test]
fn what_was_refused_or_is_not_whole_ends_with_one_whatever_was_kept_beside_it() {
    let folder = Folder::new("desk-codes");
    let data = folder.file("data");
    let public = set_up(&data);
    let good = packed(&public);
    let half = packed_as(&handed_of(support::sample_visit()), &public, 40);
    let foreign = DeskKeyPair::from_random([9; 32]).unwrap().public();
    let foreign = packed_as(&handed_of(support::sample_visit()), &foreign, 41);
    let lines = |packed: &Packed| packed.pieces.join("\n") + "\n";
    let beside = [
        ("another's half", half.pieces[0].clone() + "\n", 1),
        ("another desk's", lines(&foreign), 1),
        ("no code of ours", "4006381333931\n".to_owned(), 2),
        ("nothing", String::new(), 0),
    ];
    for (what, other, code) in &beside {
        for scans in [lines(&good) + other, other.clone() + &lines(&good)] {
            let ran = desk(&data, &["listen"], &scans);
            assert_eq!(ran.code, *code, "{what}: {}", ran.err);
            assert!(ran.out.contains(&good.receipt.grouped()), "{what}");
        }
    }

    let mut files = Vec::new();
    let of_half = half.codes.iter().take(1);
    for (index, code) in good
        .codes
        .iter()
        .chain(of_half)
        .chain(&foreign.codes)
        .enumerate()
    {
        let file = folder.file(&format!("{index}.png"));
        picture(code).save(&file).unwrap();
        files.push(file.to_str().unwrap().to_owned());
    }
    let whole = good.codes.len();
    let read = |files: &[&[String]]| {
        let files = files.iter().flat_map(|it| it.iter()).map(String::as_str);
        let arguments: Vec<&str> = ["read"].into_iter().chain(files).collect();
        desk(&data, &arguments, "")
    };
    let (own, of_half, of_foreign) = (&files[..whole], &files[whole..=whole], &files[whole + 1..]);
    assert_eq!(read(&[own]).code, 0);
    assert_eq!(read(&[own, of_half]).code, 1);
    assert_eq!(read(&[of_half, own]).code, 1);
    assert_eq!(read(&[own, of_foreign]).code, 1);
    assert_eq!(read(&[own, &["no-such.png".to_owned()]]).code, 2);
}

/// A code that was cut or damaged and then read whole is no failure; one that was not, is one.
#[test]
fn a_code_read_badly_counts_until_it_is_read_whole() {
    let folder = Folder::new("desk-misread");
    let data = folder.file("data");
    let pieces = packed(&set_up(&data)).pieces;
    let damaged = |piece: &str| {
        let mut text = piece.as_bytes().to_vec();
        text[300] = b'0' + (text[300] - b'0' + 1) % 10;
        String::from_utf8(text).unwrap() + "\n"
    };
    let rest = pieces[1..].join("\n") + "\n";
    let first = pieces[0].clone() + "\n";
    for (scans, code) in [
        (damaged(&pieces[0]) + &first + &rest, 0),
        (damaged(&pieces[0]) + &rest + &first, 0),
        (first.clone() + &rest + &damaged(&pieces[0]), 1),
        (damaged(&pieces[0]) + &rest, 1),
    ] {
        assert_eq!(desk(&data, &["listen"], &scans).code, code);
    }
}

#[test]
fn show_and_export_say_which_record_stands() {
    let folder = Folder::new("desk-stands");
    let data = folder.file("data");
    let public = set_up(&data);
    for (seed, visit) in [
        (50, support::sample_amendment()),
        (51, support::sample_visit()),
    ] {
        let scans = packed_as(&handed_of(visit), &public, seed)
            .pieces
            .join("\n")
            + "\n";
        assert_eq!(desk(&data, &["listen"], &scans).code, 0);
    }
    let stands = "Number 1 stands for it now";
    let plain = |text: &str| text.replace(['\u{2068}', '\u{2069}'], "");
    assert!(plain(&desk(&data, &["show", "2"], "").out).contains(stands));
    assert!(!plain(&desk(&data, &["show", "1"], "").out).contains("stands for it"));
    let older = desk(&data, &["export", "2", "--as", "csv"], "");
    assert!(older.code == 0 && plain(&older.err).contains(stands));
    assert!(!plain(&older.out).contains(stands), "the table is a table");
    assert_eq!(desk(&data, &["export", "1", "--as", "csv"], "").err, "");
    assert_eq!(
        plain(&desk(&data, &["inbox"], "").out)
            .matches(stands)
            .count(),
        1
    );
}

#[test]
fn the_key_is_written_as_a_file_that_the_tablet_reads() {
    let folder = Folder::new("desk-key-file");
    let data = folder.file("data");
    let public = set_up(&data);
    let tablet = folder.file("tablet");
    std::fs::create_dir(&tablet).unwrap();
    let file = tablet.join("desk-key.txt");
    let ran = desk(
        &data,
        &["keys", "show", "--out", file.to_str().unwrap()],
        "",
    );
    assert_eq!((ran.code, ran.err.as_str()), (0, ""));
    assert!(ran.out.contains(&public.to_typed()), "{}", ran.out);
    let text = std::fs::read_to_string(&file).unwrap();
    assert!(text.contains(&public.fingerprint().join(" ")), "{text}");
    #[cfg(feature = "app")]
    assert_eq!(
        feedside::app::desk_key_file::in_folder(&tablet),
        Some(Ok(public))
    );
    let no = folder.file("no/such/place.txt");
    assert_eq!(
        desk(&data, &["keys", "show", "--out", no.to_str().unwrap()], "").code,
        1
    );
}

fn picture(code: &Code) -> DynamicImage {
    let (side, pixels) = code.to_luma(4, 4);
    let side = u32::try_from(side).unwrap();
    DynamicImage::ImageLuma8(GrayImage::from_raw(side, side, pixels).unwrap())
}

#[test]
fn one_digit_altered_is_refused_by_the_piece() {
    let folder = Folder::new("desk-altered");
    let data = folder.file("data");
    let packed = packed(&set_up(&data));
    let mut altered = packed.pieces[1].clone().into_bytes();
    altered[300] = b'0' + (altered[300] - b'0' + 1) % 10;
    let scans = format!(
        "{}\n{}\n",
        packed.pieces[0],
        String::from_utf8(altered).unwrap()
    );
    let ran = desk(&data, &["listen"], &scans);
    assert_eq!(ran.code, 1);
    assert!(ran.err.contains('2'), "{}", ran.err);
    assert!(desk(&data, &["inbox"], "").out.contains("empty"));
}

#[test]
fn a_tablet_is_enrolled_only_when_the_words_are_the_same() {
    let folder = Folder::new("desk-words");
    let data = folder.file("data");
    let code = tablet().public().to_code_text() + "\n";
    let wrong = desk(&data, &["keys", "enrol", "--words", "a b c d e f"], &code);
    assert_eq!(wrong.code, 1);
    let no = desk(&data, &["keys", "enrol"], &format!("{code}no\n"));
    assert_eq!(no.code, 1);
    let other = desk(&data, &["keys", "enrol"], "4006381333931\n");
    assert_eq!(other.code, 2);
    assert!(
        desk(&data, &["keys", "tablets"], "")
            .out
            .contains("No tablet")
    );
    let yes = desk(&data, &["keys", "enrol"], &format!("{code}yes\n"));
    assert_eq!(yes.code, 0, "{}", yes.err);
    assert!(yes.out.contains(&tablet().public().fingerprint().join(" ")));
}

#[test]
fn keys_are_renewed_and_a_lost_tablet_is_struck_off_by_commands_alone() {
    let folder = Folder::new("desk-renewed");
    let data = folder.file("data");
    let old = set_up(&data);
    let id = old.kid().to_string();
    assert_eq!(
        desk(&data, &["keys", "retire", &id], "").code,
        1,
        "the only one"
    );
    let made = desk_with(&data, &["keys", "new"], "", [6; 32]);
    let new = DeskPublic::from_typed(made.out.lines().nth(2).unwrap()).unwrap();
    let retired = desk(&data, &["keys", "retire", &id[..6]], "");
    assert_eq!(retired.code, 0, "{}", retired.err);
    let shown = desk(&data, &["keys", "show"], "");
    assert!(shown.out.contains(&new.to_typed()) && !shown.out.contains(&old.to_typed()));
    assert!(desk(&data, &["keys", "list"], "").out.contains("Retired"));

    let struck = desk(&data, &["keys", "strike-off", "Tablet 1"], "");
    assert_eq!(struck.code, 0, "{}", struck.err);
    assert!(
        desk(&data, &["keys", "tablets"], "")
            .out
            .contains("Struck off")
    );
    let scans = packed(&new).pieces.join("\n") + "\n";
    let ran = desk(&data, &["listen"], &scans);
    assert_eq!(ran.code, 1);
    assert!(ran.err.contains("struck off"), "{}", ran.err);
    assert_eq!(desk(&data, &["keys", "strike-off", "Tablet 9"], "").code, 1);
}

#[test]
fn the_test_code_is_made_read_from_its_picture_and_judged() {
    let folder = Folder::new("desk-scanner");
    let data = folder.file("data");
    let file = folder.file("test.png");
    let out = file.to_str().unwrap();
    for (largest, digits) in [("15", "991"), ("20", "1600"), ("25", "2395")] {
        let arguments = ["scanner", "code", "--largest", largest, "--out", out];
        let made = desk(&data, &arguments, "");
        assert_eq!(made.code, 0, "{}", made.err);
        let read = desk(&data, &["read", out], "");
        assert_eq!(read.code, 0, "{}", read.err);
        let all = format!("All {digits} digits arrived");
        assert!(
            read.out
                .replace([',', '\u{2068}', '\u{2069}'], "")
                .contains(&all),
            "{}",
            read.out
        );
    }
    let text = feedside::handover::test_code::text(feedside::handover::VersionCap::V20);
    let typed = desk(&data, &["scanner", "test"], &format!("]Q1{text}\t"));
    assert_eq!(typed.code, 0, "{}", typed.err);
    for told in ["]Q1", "tab key", "arrive as digits", "can be used"] {
        assert!(typed.out.contains(told), "{told}: {}", typed.out);
    }
    let lossy = text[..600].to_owned() + &text[601..];
    let typed = desk(&data, &["scanner", "test"], &lossy);
    for told in [
        "lost: 1, doubled: 0",
        "Do not choose",
        "After the code: nothing",
    ] {
        assert!(typed.out.contains(told), "{told}: {}", typed.out);
    }
    let shown = desk(&data, &["scanner", "code"], "");
    assert!(shown.code == 0 && shown.out.lines().count() > 50);
    assert_eq!(
        desk(&data, &["scanner", "test"], "nothing of ours\n").code,
        2
    );
    assert_eq!(desk(&data, &["listen", "--serial", out], "").code, 1);
}

#[test]
fn after_a_silence_a_cut_code_and_what_is_missing_are_told() {
    /// Gives its parts one after the other; each empty one is a silence.
    struct Parts(Vec<String>);
    impl std::io::Read for Parts {
        fn read(&mut self, into: &mut [u8]) -> std::io::Result<usize> {
            if self.0.is_empty() {
                return Ok(0);
            }
            let part = self.0.remove(0);
            if part.is_empty() {
                return Err(std::io::ErrorKind::TimedOut.into());
            }
            into[..part.len()].copy_from_slice(part.as_bytes());
            Ok(part.len())
        }
    }
    let folder = Folder::new("desk-silence");
    let data = folder.file("data");
    let pieces = packed(&set_up(&data)).pieces;
    let half = pieces[1].len() / 2;
    let silence = String::new;
    let mut parts = vec![pieces[0].clone(), pieces[1][..half].to_owned(), silence()];
    parts.extend((0..4).map(|_| silence()));
    // The rest of the cut code, then the others.
    parts.push(pieces[1][half..].to_owned());
    parts.push(silence());
    parts.extend(pieces[2..].iter().cloned());
    let (mut out, mut err) = (Vec::new(), Vec::new());
    let given = ["feedside-desk", "--lang", "en", "--data"].map(OsString::from);
    let server = inbox(&data);
    let given = given
        .into_iter()
        .chain([data.into(), "listen".into()])
        .chain(server);
    let code = run(
        given,
        &mut World {
            input: &mut Parts(parts),
            keyboard: &|| None,
            out: &mut out,
            err: &mut err,
            now: &|| now().local(),
            random: &|| None,
            variable: &|_| None,
            window: None,
        },
    );
    let (out, err) = (
        String::from_utf8(out).unwrap(),
        String::from_utf8(err).unwrap(),
    );
    assert!(code == 0 && out.contains("Receipt"), "{out}{err}");
    assert!(err.contains("Code 2 was read only in part"), "{err}");
    assert_eq!(err.matches("still missing").count(), 1, "{err}");
    assert!(err.contains("piece number 2 is still missing"), "{err}");
}

#[test]
fn a_scan_in_bytes_that_are_no_text_is_no_panic() {
    let folder = Folder::new("desk-bytes");
    let (mut out, mut err) = (Vec::new(), Vec::new());
    let noise: Vec<u8> = (0..20_000_u32).map(|n| (n * 7 % 251) as u8).collect();
    let data = folder.file("data");
    let given = ["feedside-desk", "--data", data.to_str().unwrap(), "listen"];
    let code = run(
        given.map(OsString::from),
        &mut World {
            input: &mut noise.as_slice(),
            keyboard: &|| None,
            out: &mut out,
            err: &mut err,
            now: &|| now().local(),
            random: &|| None,
            variable: &|_| None,
            window: None,
        },
    );
    assert_ne!(code, 0);
}

#[test]
fn bad_arguments_end_with_two_and_help_with_nought() {
    let folder = Folder::new("desk-arguments");
    let data = folder.file("data");
    for (arguments, code) in [
        (&["--help"][..], 0),
        (&["keys"][..], 2),
        (&["sweep"][..], 2),
        (&["show", "one"][..], 2),
        (&["export", "1", "--as", "poem"][..], 2),
        (&["show", "1"][..], 1),
        (&["keys", "show"][..], 1),
        (&["read", "no-such-picture.png"][..], 2),
    ] {
        let ran = desk(&data, arguments, "");
        assert_eq!(ran.code, code, "{arguments:?}: {}", ran.err);
        assert_eq!(ran.err.is_empty(), code == 0, "{arguments:?}");
    }
}
