//! The vectors in `tests/data/handover`: what an old tablet wrote is read as it was, and what is
//! wrong is refused by the stage that it was refused by.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use serde_json::Value;
use sha2::{Digest, Sha256};

use super::sample;
use super::stages::{STAGES, walk};

/// Over all files of both folders in the order of their names. Never changes: vectors are added in a
/// new folder with a new version.
const ALL: &str = "5128d4126d5388db09e36f81c6be46a493743d24add9900a56e346acb503308b";

fn files(folder: &str) -> BTreeMap<String, String> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("tests/data/handover")
        .join(folder);
    fs::read_dir(path)
        .unwrap()
        .map(|file| {
            let file = file.unwrap();
            let name = format!("{folder}/{}", file.file_name().to_string_lossy());
            (name, fs::read_to_string(file.path()).unwrap())
        })
        .collect()
}

fn check(folder: &str) -> usize {
    let all = files(folder);
    for (name, text) in &all {
        let vector: Value = serde_json::from_str(text).unwrap();
        let codes = vector["codes"].as_array().unwrap().iter();
        let texts: Vec<String> = codes.map(|it| it.as_str().unwrap().to_owned()).collect();
        assert_eq!(
            vector["desk_secret"],
            sample::hex(&*sample::desk().secret_bytes())
        );
        let tablet = sample::tablet().public().to_bytes();
        assert_eq!(vector["tablet_public"], sample::hex(&tablet));
        let told = Value::Object(walk(&texts));
        for stage in STAGES {
            assert!(told[stage] == vector["stages"][stage], "{name}: {stage}");
        }
    }
    all.len()
}

#[test]
fn valid_vectors_are_read_to_the_same_bytes_at_every_stage() {
    assert!(6 <= check("valid"));
}

#[test]
fn invalid_vectors_are_refused_by_the_same_stage_for_the_same_reason() {
    assert!(files("valid").len() < check("invalid"));
}

#[test]
fn vectors_are_never_edited() {
    let mut digest = Sha256::new();
    for (name, text) in files("valid").iter().chain(&files("invalid")) {
        digest.update(name);
        digest.update(text);
    }
    assert_eq!(sample::hex(&digest.finalize()), ALL);
}
