//! The clerk's job on the real window: scan, read the receipt, search, read, print, export, enrol.
//! The receipt is held against the one that the packing side computed on its own.

use feedside::clerk::sound::Tone;
use feedside::clerk::ui::Mood;
use feedside::clerk::worker::FORMS;
use feedside::desk::As;
use feedside::handover::ReceiptCheck;
use feedside::words::Lang;
use slint::Model;

use super::place::{Clerk, clerk_over};
use crate::desk::place::new_desk;
use crate::desk::{packed, set_up, tablet};

/// A window whose desk has the sample record.
fn with_a_record() -> Clerk {
    let (desk, public) = set_up();
    let clerk = clerk_over(desk, Lang::En, true);
    for piece in &packed(&public).pieces {
        clerk.scan(piece);
    }
    clerk
}

#[test]
fn a_record_scanned_into_the_window_shows_its_receipt_in_groups() {
    let (desk, public) = set_up();
    let clerk = clerk_over(desk, Lang::En, true);
    let packed = packed(&public);
    let count = packed.pieces.len();
    for (at, piece) in packed.pieces.iter().enumerate() {
        clerk.scan(piece);
        if at + 1 < count {
            // Boxes: which pieces are there.
            let there: Vec<bool> = clerk.shows().get_pieces().iter().collect();
            let expected: Vec<bool> = (0..count).map(|it| it <= at).collect();
            assert_eq!(there, expected);
            assert_eq!(clerk.shows().get_receipt(), "");
        }
    }
    let receipt = clerk.shows().get_receipt();
    let groups: Vec<usize> = receipt.split(' ').map(str::len).collect();
    assert_eq!(groups, [3, 3, 4]);
    let digits = receipt.replace(' ', "");
    assert_eq!(packed.receipt.check(&digits), ReceiptCheck::Fits);
    let expected: Vec<Tone> = (1..count)
        .map(|_| Tone::Piece)
        .chain([Tone::Kept])
        .collect();
    assert_eq!(*clerk.sounds.borrow(), expected);
    assert_eq!(clerk.shows().get_heads().row_count(), 1);
    assert_eq!(clerk.shows().get_mood(), Mood::Ready);
}

#[test]
fn a_scan_behind_a_search_is_kept_and_the_search_stays() {
    let (desk, public) = set_up();
    let clerk = clerk_over(desk, Lang::En, true);
    clerk.touch(&clerk.say("clerk-search"));
    clerk.write("nobody");
    clerk.wait_ms(600);
    assert_eq!(
        clerk.shows().get_none_found(),
        clerk.say("desk-inbox-none-found")
    );
    for piece in &packed(&public).pieces {
        clerk.scan(piece);
    }
    assert_ne!(clerk.shows().get_receipt(), "");
    assert_eq!(clerk.shows().get_typed(), "nobody");
    assert_eq!(clerk.desk.borrow().inbox().heads().unwrap().len(), 1);
}

#[test]
fn a_record_is_found_by_its_initials_read_and_left() {
    let clerk = with_a_record();
    let head = clerk.desk.borrow().inbox().head(1).unwrap();
    clerk.touch(&clerk.say("clerk-search"));
    clerk.write(head.initials.as_str());
    clerk.wait_ms(600);
    assert_eq!(clerk.shows().get_heads().row_count(), 1);
    let row = clerk.shows().get_heads().row_data(0).unwrap();
    clerk.touch(&row.record);
    assert!(clerk.shows().get_page_open());
    let (page, _) = clerk.desk.borrow().page(1, &clerk.words).unwrap();
    assert_eq!(clerk.shows().get_page(), page);
    clerk.touch(&clerk.say("clerk-leave-page"));
    assert!(!clerk.shows().get_page_open());
}

#[test]
fn every_form_is_written_to_a_private_file_as_the_desk_exports_it() {
    let clerk = with_a_record();
    let record = clerk.shows().get_heads().row_data(0).unwrap().record;
    clerk.touch(&record);
    for (place, id) in [
        "clerk-as-pdf",
        "clerk-as-fhir",
        "clerk-as-document",
        "clerk-as-hl7",
        "clerk-as-csv",
        "clerk-as-note",
    ]
    .into_iter()
    .enumerate()
    {
        clerk.touch(&clerk.say(id));
        let form = FORMS[place];
        let folder = clerk.folder.file("exports");
        let written = std::fs::read_dir(&folder).unwrap().map(|it| it.unwrap());
        let file = written.max_by_key(|it| it.metadata().unwrap().modified().unwrap());
        let file = file.unwrap().path();
        let bytes = std::fs::read(&file).unwrap();
        let codes = feedside::report::codes::Codes::built_in();
        let desk = clerk.desk.borrow();
        let expected = desk.export_with(1, form, &codes, &clerk.words).unwrap();
        assert_eq!(bytes, expected, "{form:?}");
        #[cfg(unix)]
        {
            use std::os::unix::fs::PermissionsExt;
            let mode = std::fs::metadata(&file).unwrap().permissions().mode();
            assert_eq!(mode & 0o777, 0o600);
        }
        let told = clerk.shows().get_notice();
        assert!(told.contains(file.to_str().unwrap()), "{told}");
        std::fs::remove_file(&file).unwrap();
    }
    assert_eq!(FORMS.len(), 6);
    assert_eq!(FORMS[0], As::Pdf);
}

#[test]
fn a_page_is_printed_and_not_left_behind() {
    let clerk = with_a_record();
    let record = clerk.shows().get_heads().row_data(0).unwrap().record;
    clerk.touch(&record);
    clerk.touch(&clerk.say("clerk-print"));
    assert_eq!(clerk.shows().get_notice(), clerk.say("clerk-printed"));
    let printed = clerk.printed.lock().unwrap();
    assert_eq!(printed.len(), 1);
    assert!(!printed[0].exists());
}

#[test]
fn without_a_printer_the_page_is_left_in_a_file_and_told() {
    let (desk, public) = set_up();
    let clerk = clerk_over(desk, Lang::En, false);
    for piece in &packed(&public).pieces {
        clerk.scan(piece);
    }
    let record = clerk.shows().get_heads().row_data(0).unwrap().record;
    clerk.touch(&record);
    clerk.touch(&clerk.say("clerk-print"));
    let file = clerk.folder.file("exports").join("record-1.pdf");
    assert!(file.exists());
    assert!(clerk.shows().get_notice_is_bad());
    let told = clerk.shows().get_notice();
    assert!(told.contains(file.to_str().unwrap()), "{told}");
}

#[test]
fn a_tablet_is_enrolled_once_its_words_are_the_same_and_it_has_a_name() {
    let mut desk = new_desk();
    desk.new_key([5; 32], crate::desk::now()).unwrap();
    let clerk = clerk_over(desk, Lang::En, true);
    clerk.scan(&tablet().public().to_code_text());
    let six = tablet().public().fingerprint().join(" ");
    assert!(clerk.shows().get_headline().contains(&six));
    clerk.touch(&clerk.say("clerk-words-same"));
    assert!(clerk.desk.borrow().inbox().tablets().unwrap().is_empty());
    // Enter alone is no name.
    clerk.write("\n");
    clerk.write("Tablet 3\n");
    let tablets = clerk.desk.borrow().inbox().tablets().unwrap();
    assert_eq!(tablets.len(), 1);
    assert_eq!(tablets[0].name.as_str(), "Tablet 3");
}

#[test]
fn a_tablet_whose_words_differ_is_not_enrolled() {
    let mut desk = new_desk();
    desk.new_key([5; 32], crate::desk::now()).unwrap();
    let clerk = clerk_over(desk, Lang::En, true);
    clerk.scan(&tablet().public().to_code_text());
    clerk.touch(&clerk.say("clerk-words-differ"));
    clerk.write("Tablet 3\n");
    assert!(clerk.desk.borrow().inbox().tablets().unwrap().is_empty());
}

#[test]
fn what_stands_in_the_window_says_when_it_does_not_hear() {
    use feedside::clerk::event::Event;
    let (desk, _) = set_up();
    let clerk = clerk_over(desk, Lang::En, true);
    assert_eq!(clerk.shows().get_mood(), Mood::Ready);
    clerk.hear(Event::InFront(false));
    assert_eq!(clerk.shows().get_mood(), Mood::Deaf);
    assert_eq!(
        clerk.shows().get_headline(),
        clerk.say("clerk-not-in-front")
    );
    clerk.hear(Event::InFront(true));
    assert_eq!(clerk.shows().get_mood(), Mood::Ready);
}

#[test]
fn a_desk_without_a_key_says_so_before_anything_is_scanned() {
    let clerk = clerk_over(new_desk(), Lang::En, true);
    assert_eq!(clerk.shows().get_headline(), clerk.say("clerk-no-key"));
}

#[test]
fn a_broken_scan_is_told_after_two_seconds_and_the_receipt_stays() {
    let clerk = with_a_record();
    let receipt = clerk.shows().get_receipt();
    clerk.write("hello");
    assert_eq!(clerk.shows().get_mood(), Mood::Reading);
    clerk.wait_ms(2_000);
    assert_eq!(clerk.shows().get_mood(), Mood::Refused);
    assert_eq!(clerk.sounds.borrow().last(), Some(&Tone::Refused));
    assert_eq!(clerk.shows().get_receipt(), receipt);
}

#[test]
fn a_tab_behind_a_scan_moves_nothing_and_presses_nothing() {
    let (desk, public) = set_up();
    let clerk = clerk_over(desk, Lang::En, true);
    // The focus is on the first key that the tab key reaches.
    clerk.write("\t");
    for piece in &packed(&public).pieces {
        clerk.wait_ms(600);
        for c in piece.chars() {
            clerk.press(slint::SharedString::from(c));
        }
        clerk.press(slint::platform::Key::Tab);
        clerk.press(slint::platform::Key::Return);
    }
    clerk.wait_ms(0);
    assert_ne!(clerk.shows().get_receipt(), "");
    // Nothing that has the focus was pressed: no search was opened.
    assert_eq!(clerk.shows().get_line(), feedside::clerk::ui::Line::None);
}
