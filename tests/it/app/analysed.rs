//! What `feedside rhythm` prints for people.

use std::fs;

use feedside::app::command;
use feedside::practice::{Baby, HandLevel, simulate};
use feedside::record::Tap;
use feedside::rhythm::{of, write_taps};

use crate::store::Folder;

/// Every line is how long something took, or how long after the first row it was.
#[test]
fn a_file_whose_times_begin_later_prints_the_same_lines() {
    let folder = Folder::new("rhythm-lines");
    let file = folder.file("taps.csv");
    let feed = simulate(Baby::Established, HandLevel::Careful.hand(), 3, 12);
    assert!(of(&feed.taps).first_flow.is_some());
    let printed = |later_ms| {
        let tap = |it: &Tap| Tap {
            at: it.at.plus_ms(later_ms),
            ..*it
        };
        let taps: Vec<Tap> = feed.taps.iter().map(tap).collect();
        let mut bytes = Vec::new();
        write_taps(&taps, &mut bytes).unwrap();
        fs::write(&file, bytes).unwrap();
        let json = command::taps(&file, true).unwrap();
        let json: serde_json::Value = serde_json::from_str(&json).unwrap();
        (
            command::taps(&file, false).unwrap(),
            json["first_flow_ms"].as_u64().unwrap(),
        )
    };
    let (lines, flow_ms) = printed(0);
    let (later, later_flow_ms) = printed(7_200_000);
    assert_eq!(lines, later);
    assert_eq!(
        flow_ms + 7_200_000,
        later_flow_ms,
        "the object has the file's own times"
    );
}
