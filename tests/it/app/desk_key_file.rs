//! A desk's key from a file in the data folder: offered with its six words, kept when they were
//! compared.

use std::fs;

use feedside::app::desk_key_file::{FILE, NotAKey, in_folder};
use feedside::app::event::Event;
use feedside::app::inside::Inside;
use feedside::app::{ui, ward};
use feedside::handover::{DeskKeyPair, DeskPublic, HandoverError};
use feedside::store::Store;
use feedside::store::vault::{Cost, Vault};
use slint::Global;

use super::tablet::{Tablet, tablet_over};
use crate::store::Folder;
use crate::support::{sample_began, sample_pair};

fn key(seed: u8) -> DeskPublic {
    DeskKeyPair::from_random([seed; 32]).unwrap().public()
}

#[test]
fn a_file_is_read_as_the_desk_writes_it_and_as_people_do() {
    let folder = Folder::new("desk-key-file");
    let data = folder.file("data");
    fs::create_dir(&data).unwrap();
    assert_eq!(in_folder(&data), None);
    let typed = key(5).to_typed();
    let in_lines = typed.replace(' ', "\r\n");
    for text in [
        format!("# a b c d e f\n{typed}\n"),
        format!("\u{feff}{typed}"),
        format!("{in_lines}\r\n  # from the desk\r\n"),
    ] {
        fs::write(data.join(FILE), &text).unwrap();
        assert_eq!(in_folder(&data), Some(Ok(key(5))), "{text:?}");
    }
    let mut wrong = typed.clone();
    wrong.replace_range(0..1, if typed.starts_with('2') { "3" } else { "2" });
    let length = |given| HandoverError::KeyLengthWrong { given };
    for (bytes, why) in [
        (
            wrong.into_bytes(),
            NotAKey::Wrong(HandoverError::KeyGroupWrong { group: 1 }),
        ),
        (b"# nothing else\n".to_vec(), NotAKey::Wrong(length(0))),
        (vec![], NotAKey::Wrong(length(0))),
        (vec![0xff, 0xfe, 0], NotAKey::Unreadable),
    ] {
        fs::write(data.join(FILE), bytes).unwrap();
        assert_eq!(in_folder(&data), Some(Err(why)));
    }
    fs::write(data.join(FILE), "x".repeat(1 << 20)).unwrap();
    assert!(matches!(in_folder(&data), Some(Err(NotAKey::Wrong(_)))));
}

fn shown(tablet: &Tablet) -> (String, bool, String) {
    let screen = ui::SettingsAdapter::get(&tablet.window);
    let plain = |text: slint::SharedString| text.replace(['\u{2068}', '\u{2069}'], "");
    (
        plain(screen.get_desk_file()),
        screen.get_desk_file_holds(),
        plain(screen.get_desk_key()),
    )
}

#[test]
fn a_key_from_a_file_is_shown_with_its_words_and_kept_at_a_touch() {
    let store = Store::in_memory().unwrap();
    store.save_pair(&sample_pair()).unwrap();
    let tablet = tablet_over(store, (1280, 800));
    (tablet.hear)(Event::Ward(ward::Event::SettingsWanted));
    assert_eq!(shown(&tablet), (String::new(), false, String::new()));
    let key = key(6);
    tablet
        .shell
        .borrow_mut()
        .offer_desk_key(Some(Ok(key.clone())));
    (tablet.hear)(Event::Ticked);
    let (told, holds, kept) = shown(&tablet);
    assert!(
        told.contains(&key.fingerprint().join(" ")) && told.contains(FILE),
        "{told}"
    );
    assert!(
        holds && kept.is_empty(),
        "nothing is kept before the words were compared"
    );
    ui::SettingsAdapter::get(&tablet.window).invoke_keep_desk_file();
    assert_eq!(shown(&tablet), (String::new(), false, key.to_typed()));
    // A file that holds the key that is kept is not offered once more.
    tablet
        .shell
        .borrow_mut()
        .offer_desk_key(Some(Ok(key.clone())));
    (tablet.hear)(Event::Ticked);
    assert_eq!(shown(&tablet).0, "");
}

#[test]
fn a_file_without_a_key_is_told_with_why_and_changes_nothing() {
    let store = Store::in_memory().unwrap();
    let tablet = tablet_over(store, (1280, 800));
    (tablet.hear)(Event::Ward(ward::Event::SettingsWanted));
    let wrong = NotAKey::Wrong(HandoverError::KeyGroupWrong { group: 3 });
    tablet.shell.borrow_mut().offer_desk_key(Some(Err(wrong)));
    (tablet.hear)(Event::Ticked);
    let (told, holds, _) = shown(&tablet);
    assert!(
        told.contains(FILE) && told.contains('3') && !holds,
        "{told}"
    );
    ui::SettingsAdapter::get(&tablet.window).invoke_keep_desk_file();
    assert_eq!(shown(&tablet).2, "");
}

#[test]
fn a_file_that_lies_there_at_the_start_is_pointed_out() {
    let folder = Folder::new("desk-key-start");
    let data = folder.file("data");
    fs::create_dir(&data).unwrap();
    let open = || {
        let vault = Vault::of(&data, Cost::LEAST).unwrap();
        let key = vault.key_without_pin().unwrap().unwrap();
        Inside::of(&data, vault, &key, sample_began()).unwrap()
    };
    assert!(open().desk_key.is_none() && open().trouble().is_none());
    fs::write(data.join(FILE), key(7).to_typed()).unwrap();
    let inside = open();
    assert_eq!(inside.desk_key, Some(Ok(key(7))));
    assert!(inside.trouble().unwrap().contains(FILE));
    inside
        .store
        .set_setting("desk_key", &key(7).to_typed())
        .unwrap();
    drop(inside);
    assert!(open().desk_key.is_none() && open().trouble().is_none());
}
