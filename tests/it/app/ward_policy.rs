//! Which ward policy counts on a tablet. Source of what is expected: the project's own design: a
//! policy that is wrong never loads half.

use std::fs;

use feedside::app::ward_policy::{Counting, FILE, NotTakenUp, at_start, told};
use feedside::findings::Policy;
use feedside::store::Store;
use feedside::words::{Lang, Words};

use crate::store::Folder;

const GOOD: &str = "name = \"Ward W\"\nversion = \"3\"\nauthor = \"L\"\ndate = \"2026-01-01\"\n";

fn with(text: Option<&[u8]>, store: &Store, folder: &Folder) -> Counting {
    let file = folder.file(FILE);
    match text {
        Some(text) => fs::write(&file, text).unwrap(),
        None => {
            let _ = fs::remove_file(&file);
        }
    }
    at_start(store, file.parent().unwrap()).unwrap()
}

#[test]
fn without_a_file_the_built_in_policy_counts() {
    let (store, folder) = (Store::in_memory().unwrap(), Folder::new("policy-none"));
    let it = with(None, &store, &folder);
    assert_eq!(it.policy, Policy::built_in());
    assert_eq!(told(&it, &Words::new(Lang::En)), None);
}

#[test]
fn a_good_file_counts_and_still_does_when_it_is_gone() {
    let (store, folder) = (Store::in_memory().unwrap(), Folder::new("policy-good"));
    let it = with(Some(GOOD.as_bytes()), &store, &folder);
    assert_eq!(it.policy, Policy::from_toml(GOOD).unwrap());
    assert_eq!(with(None, &store, &folder), it);
}

#[test]
fn a_wrong_file_changes_nothing_and_is_told_with_line_and_column() {
    let (store, folder) = (Store::in_memory().unwrap(), Folder::new("policy-wrong"));
    let good = with(Some(GOOD.as_bytes()), &store, &folder);
    let wrong = GOOD.replace("Ward W", "Ward V") + "[limits]\nfeeds_least = 400\n";
    let it = with(Some(wrong.as_bytes()), &store, &folder);
    assert_eq!(it.policy, good.policy);
    let said = told(&it, &Words::new(Lang::En)).unwrap();
    assert!(said.contains(FILE) && said.contains("line 6"), "{said}");
    assert!(said.contains("Ward W 3"), "{said}");

    let it = with(Some(&[0xff, 0xfe]), &store, &folder);
    assert_eq!(it.policy, good.policy);
    assert_eq!(it.refused, Some(NotTakenUp::Unreadable));
}

#[test]
fn a_newer_file_takes_the_place_of_the_one_before() {
    let (store, folder) = (Store::in_memory().unwrap(), Folder::new("policy-newer"));
    with(Some(GOOD.as_bytes()), &store, &folder);
    let newer = GOOD.replace("\"3\"", "\"4\"");
    with(Some(newer.as_bytes()), &store, &folder);
    assert_eq!(with(None, &store, &folder).policy.version, "4");
}
