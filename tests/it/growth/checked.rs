//! Weights said to be right, and what a weight that has to be checked does not show. Source: common
//! practice (slips of typing).

use feedside::growth::{Checked, Question, of, of_checked, right};
use feedside::record::{Acknowledged, Label};

use super::{hours, pair, weighed};

fn said_right(age_h: i64) -> Checked {
    let acknowledged = Acknowledged {
        rule: right(hours(age_h)),
        by: Label::new("kb").unwrap(),
        wall: hours(age_h + 1),
    };
    let other = Acknowledged {
        rule: "weight-loss-over-ten".to_owned(),
        ..acknowledged.clone()
    };
    Checked::of([&acknowledged, &other])
}

#[test]
fn a_weight_said_to_be_right_is_not_asked_about_any_more() {
    let weighings = [weighed(24, 3300), weighed(48, 3900)];
    let asked = of(&pair(), &weighings, hours(50)).questions;
    assert_eq!(asked.len(), 1);
    assert_eq!(asked[0].why, Question::Jump);
    let checked = of_checked(&pair(), &weighings, &said_right(48), hours(50));
    assert_eq!(checked.questions, []);
    // Another one's answer is not its own.
    let other = of_checked(&pair(), &weighings, &said_right(24), hours(50));
    assert_eq!(other.questions, asked);
}

#[test]
fn the_next_weight_is_held_against_the_one_said_to_be_right() {
    let weighings = [weighed(24, 3300), weighed(48, 3900), weighed(60, 3320)];
    // Unanswered, the one that stands out is doubted and the next agrees with the first.
    let doubted = of(&pair(), &weighings, hours(61)).questions;
    let at: Vec<_> = doubted.iter().map(|it| it.at).collect();
    assert_eq!(at, [hours(48)]);
    // Said to be right, the fall after it is what stands out: 580 g of 3900 are 14.9 %, within what
    // is asked about; 3300 are 15.4 %.
    let answered = |last| {
        let weighings = [weighed(24, 3300), weighed(48, 3900), weighed(60, last)];
        of_checked(&pair(), &weighings, &said_right(48), hours(61)).questions
    };
    assert_eq!(answered(3320), []);
    assert_eq!(
        answered(3300).iter().map(|it| it.at).collect::<Vec<_>>(),
        [hours(60)]
    );
}

#[test]
fn a_weight_that_has_to_be_checked_shows_no_birth_weight_regained() {
    let birth = i64::from(pair().birth_weight.unwrap());
    let jump = birth + birth / 4;
    let weighings = [
        weighed(24, birth - 150),
        weighed(48, jump),
        weighed(240, birth - 50),
    ];
    assert_eq!(of(&pair(), &weighings, hours(360)).back_at, None);
    let checked = of_checked(&pair(), &weighings, &said_right(48), hours(360));
    assert_eq!(checked.back_at.map(|it| it.hours()), Some(48));
}
