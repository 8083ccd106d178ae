//! What a line of the ward's list says in words, so that nothing is told by colour alone.

use feedside::app::event::Event;
use feedside::app::keeper::{Ask, Told, answer};
use feedside::app::{demo, ui};
use feedside::findings::{Finding, Level, Policy};
use feedside::report::phrase;
use feedside::store::Store;
use feedside::words::{Lang, Words};
use slint::{Global, Model};

use super::tablet::tablet_over;
use crate::support::{sample_began, sample_facts};

fn rows() -> Vec<ui::WardRow> {
    let mut store = Store::in_memory().unwrap();
    let policy = Policy::built_in();
    let fill = Ask::Fill(demo::ward(sample_began()));
    let lines = match answer(&mut store, &policy, fill) {
        Told::Ward(lines) => lines,
        other => panic!("{other:?}"),
    };
    let tablet = tablet_over(store, (1280, 800));
    (tablet.hear)(Event::Told(Told::Ward(lines)));
    ui::WardAdapter::get(&tablet.window)
        .get_rows()
        .iter()
        .collect()
}

#[test]
fn each_line_says_its_level_and_a_red_one_by_which_rule() {
    let words = Words::new(Lang::En);
    let levels = Level::ALL
        .iter()
        .map(|level| phrase::of(&words, "level", *level));
    let levels: Vec<String> = levels.collect();
    let rows = rows();
    assert!(rows.iter().any(|row| !row.found.is_empty()));
    for row in &rows {
        let level = levels
            .iter()
            .find(|level| row.found.starts_with(level.as_str()));
        assert!(row.found.is_empty() || level.is_some(), "{}", row.found);
        if row.review {
            let rule = row.found.strip_prefix("Medical review now: ");
            assert!(rule.is_some_and(|rule| !rule.is_empty()), "{}", row.found);
        }
    }
}

#[test]
fn a_finding_says_whom_to_call_with_the_wards_number_and_what_is_usually_tried() {
    let words = Words::new(Lang::En);
    let facts = sample_facts();
    let mut finding: Finding = facts.judged.findings[0].clone();
    finding.call = feedside::findings::CallWhom::FeedingTeam;
    let call = |number| phrase::call(&words, &finding, number);
    assert_eq!(call(None).unwrap(), "Call: Feeding team");
    assert_eq!(
        call(Some("bleep 7")).unwrap(),
        "Call: Feeding team (bleep 7)"
    );
    finding.tries = [feedside::record::Adjustment::CloserIn]
        .map(feedside::record::Coded::Known)
        .to_vec();
    let tries = phrase::tries(&words, &finding);
    assert_eq!(tries.unwrap(), "Usually tried: Bring closer in");
    finding.call = feedside::findings::CallWhom::Nobody;
    finding.tries.clear();
    assert_eq!(phrase::call(&words, &finding, Some("bleep 7")), None);
    assert_eq!(phrase::tries(&words, &finding), None);
}
