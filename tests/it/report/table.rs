//! The table: one row for each fact.

use feedside::record::Label;
use feedside::report::csv::{HEADER, write};

use crate::support::{bare_visit, both_breasts_visit, facts_of, sample_facts};

/// Reads RFC 4180 back: rows of cells.
fn read(text: &str) -> Vec<Vec<String>> {
    let (mut rows, mut row, mut cell) = (Vec::new(), Vec::new(), String::new());
    let mut chars = text.chars().peekable();
    let mut quoted = false;
    while let Some(c) = chars.next() {
        match (quoted, c) {
            (true, '"') if chars.peek() == Some(&'"') => cell.extend(chars.next()),
            (_, '"') => quoted = !quoted,
            (false, ',') => row.push(std::mem::take(&mut cell)),
            (false, '\r') => {}
            (false, '\n') => {
                row.push(std::mem::take(&mut cell));
                rows.push(std::mem::take(&mut row));
            }
            (_, c) => cell.push(c),
        }
    }
    assert!(row.is_empty() && cell.is_empty() && !quoted);
    rows
}

#[test]
fn a_visit_without_anything_is_this_table() {
    let mut facts = facts_of(&bare_visit());
    facts.judged = Default::default();
    let table = write(&facts);
    let lines: Vec<&str> = table.split("\r\n").collect();
    assert_eq!(
        lines[..13],
        [
            "section,at,name,value,unit,low,high,source",
            "visit,2026-03-04T09:30:00.000+01:00,id,abcdef01-2345-4678-89ab-cdef01234567,,,,journal",
            "visit,,specialist,kb,,,,journal",
            "visit,2026-03-04T09:30:01.000+01:00,signed,kb,,,,journal",
            "visit,,app_version,0.0.0,,,,journal",
            "visit,,rhythm_version,rhythm-1,,,,journal",
            "visit,,growth_version,growth-1,,,,journal",
            "visit,,findings_version,findings-1,,,,journal",
            "policy,,name,Sample ward,,,,journal",
            "policy,,version,3,,,,journal",
            "policy,,sha256,5f5f5f5f5f5f5f5f5f5f5f5f5f5f5f5f5f5f5f5f5f5f5f5f5f5f5f5f5f5f5f5f,,,,journal",
            "pair,,bed,Bay 2 bed 4,,,,journal",
            "pair,,initials,T. W.,,,,journal",
        ]
    );
    assert_eq!(lines[lines.len() - 2], "plan,,next_look,unknown,,,,journal");
    assert_eq!(lines[lines.len() - 1], "");
}

#[test]
fn words_that_were_left_out_are_told_in_the_table() {
    let unknown = vec![("phase".to_owned(), "=dozing".to_owned())];
    let table = write(&sample_facts().with_unknown(unknown));
    assert!(table.contains("\r\ndoubt,,unknown phase,'=dozing,,,,journal\r\n"));
}

#[test]
fn every_row_has_the_cells_of_the_header() {
    let rows = read(&write(&sample_facts()));
    assert_eq!(rows[0].join(","), HEADER);
    for row in &rows {
        assert_eq!(row.len(), 8, "{row:?}");
    }
}

#[test]
fn facts_stand_with_unit_interval_and_source() {
    let facts = sample_facts();
    let table = write(&facts);
    for line in [
        "finding,,weight-loss-over-ten,medical_review_now,,,,findings-1 sample-source",
        "finding,,weight-loss-over-ten loss,10.3,%,,,findings-1 sample-source",
        "unjudged,,sample-temperature-rule,missing: temperature,,,,findings-1",
        "growth,2026-03-04T09:31:00.000+01:00,weight_change,-10.3,%,,,growth-1",
        "growth,2026-03-04T09:31:00.000+01:00,weight_change_grams,-351,g,,,growth-1",
        "growth,,missing,second_weight,,,,growth-1",
        "weight,2026-03-04T09:31:00.000+01:00,routine,3049,g,3046.5,3051.5,journal",
        "last_day,,dirty,unknown,{count},,,journal",
        "last_day,,mother_danger,none,,,,journal",
        "last_day,,baby_danger,unknown,,,,journal",
        "sign,,quiet,not_looked,,,,journal",
        "feed 1,2026-03-04T09:32:00.000+01:00,pain,6,{score},,,journal",
        "feed 1,,sucks_per_swallow_flow,3.08,1,1.90,5.20,rhythm-1",
        "feed 1,,sucks_per_swallow_feed,unknown,1,,,rhythm-1",
        "feed 1,2026-03-04T09:32:22.000+01:00,first_flow,42000,ms,,,rhythm-1",
        "feed 1,,doubt,few_swallows,,,,rhythm-1",
    ] {
        assert!(
            table.contains(&format!("\r\n{line}\r\n")),
            "{line} in\n{table}"
        );
    }
}

/// RFC 4180, section 2; what a spreadsheet takes for a formula: OWASP, "CSV injection" (from memory).
#[test]
fn text_is_quoted_and_no_cell_of_it_is_a_formula() {
    let table = write(&sample_facts());
    assert!(table.contains("\"'=she says \"\"better\"\", and smiles\""));
    for start in ["=1+1", "+1", "-1", "@x"] {
        let mut facts = sample_facts();
        facts.pair.bed = Label::new(start).unwrap();
        let rows = read(&write(&facts));
        let bed = rows.iter().find(|row| row[2] == "bed").unwrap();
        assert_eq!(bed[3], format!("'{start}"));
    }
}

#[test]
fn a_feed_without_first_flow_says_none_seen() {
    let mut facts = sample_facts();
    facts.feeds[0].rhythm.as_mut().unwrap().first_flow = None;
    assert!(write(&facts).contains("feed 1,,first_flow,none_seen,ms,,,rhythm-1"));
}

#[test]
fn at_both_breasts_each_feed_has_its_section_of_signs() {
    let rows = read(&write(&facts_of(&both_breasts_visit())));
    let state = |section: &str, name: &str| {
        let of = |row: &&Vec<String>| row[0] == section && row[2] == name;
        rows.iter().find(of).map(|row| row[3].clone())
    };
    for (section, name, expected) in [
        ("sign feed 1", "chin_in", "not_seen"),
        ("sign feed 2", "chin_in", "seen"),
        ("sign feed 1", "mouth_wide", "seen"),
        ("sign feed 2", "mouth_wide", "not_looked"),
    ] {
        assert_eq!(state(section, name).as_deref(), Some(expected));
    }
    assert_eq!(state("sign", "chin_in"), None);
}
