//! Every error has its two sentences, in every language, with nothing left unfilled.

use feedside::desk::DeskError;
use feedside::fault::{self, Explained};
use feedside::handover::HandoverError;
use feedside::record::{
    Gestation, Grams, Label, Language, LastDay, Millilitres, Pain, RecordError, ScaleStep,
    TenthsCelsius, WallTime,
};
use feedside::report::codes::CodesError;
use feedside::store::StoreError;
use feedside::words::{Lang, Words};

fn check(told: &Explained) {
    for sentence in [&told.happened, &told.now_do] {
        assert!(
            sentence.contains(' '),
            "an id instead of a sentence: {sentence}"
        );
        assert!(!sentence.contains(['{', '}', '$']), "{sentence}");
        assert!(sentence.ends_with('.'), "{sentence}");
    }
}

fn each(check_in: impl Fn(&Words)) {
    for lang in Lang::ALL {
        check_in(&Words::new(*lang));
    }
}

/// Every kind of value that the record's constructors name.
fn refused_values() -> Vec<RecordError> {
    let day = |day: LastDay| day.checked().unwrap_err();
    vec![
        Grams::new(0).unwrap_err(),
        Millilitres::new(-1).unwrap_err(),
        ScaleStep::new(0).unwrap_err(),
        TenthsCelsius::new(0).unwrap_err(),
        WallTime::new(-1, 0).unwrap_err(),
        WallTime::new(0, 10_000).unwrap_err(),
        Pain::score(11).unwrap_err(),
        Gestation::weeks_days(40, 9).unwrap_err(),
        Gestation::weeks_days(2, 0).unwrap_err(),
        Language::new("?").unwrap_err(),
        Label::new("").unwrap_err(),
        Label::new(&"x".repeat(41)).unwrap_err(),
        Label::new("a\u{7}b").unwrap_err(),
        day(LastDay {
            feeds: Some(200),
            ..LastDay::default()
        }),
        day(LastDay {
            wet: Some(200),
            ..LastDay::default()
        }),
        day(LastDay {
            dirty: Some(200),
            ..LastDay::default()
        }),
        day(LastDay {
            hours_since_wet: Some(200),
            ..LastDay::default()
        }),
    ]
}

#[test]
fn a_refused_value_is_named_in_the_readers_language() {
    each(|words| {
        let other = words.say("value-other");
        for error in refused_values() {
            let told = fault::record(&error, words);
            check(&told);
            assert!(!told.happened.starts_with(&other), "{error} has no name");
        }
    });
}

#[test]
fn every_error_of_the_record_is_explained() {
    each(|words| {
        for error in [
            RecordError::OutOfOrder { given: 3, last: 1 },
            RecordError::NothingToStrike(3),
            RecordError::AlreadySigned,
            RecordError::Unreadable {
                kind: "x".to_owned(),
            },
            RecordError::NotKnown { what: "sex" },
        ] {
            check(&fault::record(&error, words));
        }
    });
}

#[test]
fn every_error_of_the_store_is_explained_and_shows_no_path() {
    each(|words| {
        for error in [
            StoreError::TooNew { found: 7, known: 1 },
            StoreError::Damaged {
                kept_as: Some("/somewhere/data.damaged-1".into()),
            },
            StoreError::Damaged { kept_as: None },
            StoreError::NotOurs,
            StoreError::Locked,
            StoreError::Full,
            StoreError::NoAccess,
            StoreError::Disk,
            StoreError::NotKept { what: "pair" },
            StoreError::Refused,
            StoreError::Unreadable(RecordError::NotKnown { what: "sex" }),
            StoreError::Sql(rusqlite::Error::InvalidQuery),
        ] {
            let told = fault::store(&error, words);
            check(&told);
            assert!(!told.happened.contains("somewhere"));
        }
    });
}

#[test]
fn every_error_of_the_desk_is_explained() {
    let file = || "a.png".to_owned();
    each(|words| {
        for error in [
            DeskError::Store(StoreError::Full),
            DeskError::Record(RecordError::AlreadySigned),
            DeskError::NotSetUp,
            DeskError::TabletStruckOff {
                name: Label::new("Tablet 1").unwrap(),
                since: super::now(),
            },
            DeskError::NoSuchKey { id: file() },
            DeskError::OnlyKey,
            DeskError::NoSuchTablet { which: file() },
            DeskError::NoSuchRecord { number: 3 },
            DeskError::CannotRead { file: file() },
            DeskError::NotAPicture { file: file() },
            DeskError::NoCode { file: file() },
            DeskError::CannotWrite { file: file() },
            DeskError::NoTabletKey,
            DeskError::WordsDiffer,
            DeskError::NotConfirmed,
            DeskError::NoRandom,
            DeskError::NoClock,
            DeskError::NoWindow,
            DeskError::NoDisplay,
            DeskError::NoFolder,
            DeskError::NoSerial { port: file() },
            DeskError::NoTestCode,
            DeskError::Input,
            DeskError::ServerAddress,
            DeskError::ServerUnreachable,
            DeskError::ServerLogin,
            DeskError::ServerFailed,
            DeskError::PlaceAddress,
            DeskError::PlaceNeedsTls,
            DeskError::NoCertificate,
            DeskError::NotGivenUp { number: 3 },
            DeskError::Codes(CodesError::Header),
            DeskError::Codes(CodesError::Line { line: 3 }),
            DeskError::Codes(CodesError::NotOurs { line: 3 }),
            DeskError::Codes(CodesError::Twice { line: 3 }),
            DeskError::Codes(CodesError::TooLong),
            DeskError::NotLaidOut,
        ] {
            check(&error.explained(words));
        }
    });
}

#[test]
fn every_error_of_the_handover_is_explained() {
    let kid = feedside::handover::Kid::of([1; 8]);
    each(|words| {
        for error in [
            HandoverError::NotOurs,
            HandoverError::UnknownVersion { found: 9 },
            HandoverError::CodeDamaged,
            HandoverError::PieceDamaged { piece: 2 },
            HandoverError::PieceCut { piece: 2 },
            HandoverError::PieceMixed { piece: 2 },
            HandoverError::TooLarge,
            HandoverError::NotForThisDesk { desk: kid },
            HandoverError::Altered,
            HandoverError::TabletNotEnrolled { tablet: kid },
            HandoverError::SignatureWrong,
            HandoverError::CannotUnpack,
            HandoverError::NotReadable,
            HandoverError::NotPossible(RecordError::AlreadySigned),
        ] {
            let told = fault::handover(&error, words);
            check(&told);
            if let Some(piece) = error.piece() {
                assert!(
                    told.happened.contains(&piece.to_string()),
                    "{}",
                    told.happened
                );
            }
        }
    });
}
