//! From the form to the Pair screen.

use crate::app::lists::list;
use crate::app::{say, ui};
use crate::record::{Coded, Reason, RiskNote, Sex, WayOfBirth};
use crate::words::Words;

use super::{BABIES_MOST, Form, FormTrouble, LANGUAGES};

pub(super) fn form_of(
    form: &Form,
    trouble: Option<FormTrouble>,
    words: &Words,
    screen: &ui::PairAdapter<'_>,
) {
    screen.set_title(
        form.of
            .as_ref()
            .map_or_else(
                || words.say("pair-new"),
                |pair| pair.bed.as_str().to_owned(),
            )
            .into(),
    );
    screen.set_quiet("".into());
    screen.set_bed(form.bed.as_str().into());
    screen.set_initials(form.initials.as_str().into());
    screen.set_birth(form.birth.as_str().into());
    screen.set_weight(form.weight.as_str().into());
    screen.set_gestation(form.gestation.as_str().into());
    screen.set_mother_number(form.mother_number.as_str().into());
    screen.set_baby_number(form.baby_number.as_str().into());
    screen.set_languages(list(LANGUAGES.iter().map(|tag| {
        let chosen = form.language.as_ref().is_some_and(|it| it.tag() == *tag);
        ui::Choice {
            label: say::coded(words, "language", tag).into(),
            chosen,
        }
    })));
    screen.set_babies(list((1..=BABIES_MOST).map(|count| ui::Choice {
        label: count.to_string().into(),
        chosen: form.babies.max(1) == count,
    })));
    let choice = |label: String, chosen: bool| ui::Choice {
        label: label.into(),
        chosen,
    };
    screen.set_sexes(list(Sex::ALL.iter().map(|sex| {
        choice(say::stored(words, "sex", *sex), form.sex == Some(*sex))
    })));
    screen.set_ways(list(WayOfBirth::ALL.iter().map(|way| {
        choice(say::stored(words, "birth", *way), form.way == Some(*way))
    })));
    screen.set_reasons(list(Reason::ALL.iter().map(|reason| {
        choice(
            say::stored(words, "reason", *reason),
            form.reasons.contains(&Coded::Known(*reason)),
        )
    })));
    screen.set_risks(list(RiskNote::ALL.iter().map(|risk| {
        choice(
            say::stored(words, "risk", *risk),
            form.risks.contains(&Coded::Known(*risk)),
        )
    })));
    screen.set_form_trouble(
        trouble
            .map_or_else(String::new, |trouble| {
                words.say(match trouble {
                    FormTrouble::Bed => "pair-trouble-bed",
                    FormTrouble::Initials => "pair-trouble-initials",
                    FormTrouble::Birth => "pair-trouble-birth",
                    FormTrouble::Weight => "pair-trouble-weight",
                    FormTrouble::Gestation => "pair-trouble-gestation",
                    FormTrouble::Number => "pair-trouble-number",
                })
            })
            .into(),
    );
}
