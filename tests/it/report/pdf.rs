//! Printed pages as PDF.

use feedside::report::pdf::{Pdf, write};
use feedside::report::printed::{Block, Printed, Table, TextSize, isolated};
use feedside::words::Lang;
use proptest::prelude::*;

use crate::support::sample_began;

fn page(blocks: Vec<Block>) -> Printed {
    let mut page = Printed::new("A page".to_owned(), Lang::En, sample_began());
    page.foot = "The foot of the page".to_owned();
    page.blocks = blocks;
    page
}

fn written(page: &Printed) -> Pdf {
    write(page).unwrap()
}

fn has(pdf: &Pdf, bytes: &[u8]) -> bool {
    pdf.bytes.windows(bytes.len()).any(|window| window == bytes)
}

fn of_every_kind() -> Vec<Block> {
    vec![
        Block::Heading("A heading".to_owned()),
        Block::Text("A paragraph. ".repeat(20)),
        Block::Quiet("A quiet line".to_owned()),
        Block::List(vec!["One".to_owned(), "Two ".repeat(60)]),
        Block::Urgent {
            heading: "Get help now".to_owned(),
            points: vec!["This".to_owned(), "That".to_owned()],
            after: "Then this".to_owned(),
        },
        Block::Table(Table {
            head: vec!["Bed".to_owned(), "Weight".to_owned()],
            rows: vec![
                vec!["4".to_owned(), "3049 g".to_owned()],
                vec!["5".to_owned()],
            ],
            shares: vec![1, 3],
        }),
    ]
}

#[test]
fn a_page_is_a_tagged_file_with_its_fonts_in_it() {
    let pdf = written(&page(of_every_kind()));
    assert_eq!(pdf.sheets, 1);
    assert!(pdf.bytes.starts_with(b"%PDF-1.7"));
    // ISO 32000-1, 14.8: a tagged file has a tree of tags and says that it is marked.
    for part in ["/StructTreeRoot", "/Marked true", "/FontFile2"] {
        let plain = has(&pdf, part.as_bytes());
        // Objects may lie in compressed streams; then the outside check with `pdffonts` tells.
        assert!(plain || has(&pdf, b"/ObjStm"), "{part}");
    }
}

#[test]
fn the_same_page_gives_the_same_bytes() {
    assert_eq!(
        written(&page(of_every_kind())),
        written(&page(of_every_kind()))
    );
}

#[test]
fn a_long_table_goes_on_over_the_sheets() {
    let rows = |count: usize| {
        let table = Table {
            head: vec!["Bed".to_owned(), "What".to_owned()],
            rows: vec![vec!["4".to_owned(), "A line".to_owned()]; count],
            shares: Vec::new(),
        };
        let mut page = page(vec![Block::Table(table)]);
        page.size = TextSize::Small;
        written(&page).sheets
    };
    assert_eq!(rows(10), 1);
    assert_eq!(rows(0), 1);
    let sheets = rows(300);
    assert!((6..=12).contains(&sheets), "{sheets}");
}

#[test]
fn letters_from_right_to_left_and_letters_that_no_font_has_can_be_written() {
    let mut page = page(vec![
        Block::Heading("\u{645}\u{631}\u{62d}\u{628}\u{627}".to_owned()),
        Block::Text(format!(
            "\u{627}\u{644}\u{648}\u{632}\u{646} {} \u{627}\u{644}\u{64a}\u{648}\u{645}",
            isolated("3049 g")
        )),
        Block::Text(
            "Ask for \u{633}\u{627}\u{631}\u{629} or \u{65e5}\u{672c} \u{1f600}.".to_owned(),
        ),
        Block::List(vec!["\u{648}\u{627}\u{62d}\u{62f}".to_owned()]),
    ]);
    for right_to_left in [false, true] {
        page.right_to_left = right_to_left;
        assert_eq!(written(&page).sheets, 1);
    }
}

#[test]
fn an_empty_page_and_a_word_wider_than_the_sheet_can_be_written() {
    assert_eq!(written(&page(Vec::new())).sheets, 1);
    let word = "w".repeat(400);
    let table = Table {
        head: vec![word.clone(); 6],
        rows: vec![vec![word.clone(); 6]],
        shares: vec![1],
    };
    let blocks = vec![
        Block::Text(word.clone()),
        Block::Heading(word),
        Block::Table(table),
    ];
    assert!(1 <= written(&page(blocks)).sheets);
}

#[test]
fn a_mark_of_another_script_on_a_letter_can_be_written() {
    // Found by the property below: each is in a font, the two together are in none.
    for text in [
        "[\u{8ca}",
        "a\u{8ca}\u{8ca}b",
        "\u{628}\u{301}",
        "x\u{64e}\u{301}",
    ] {
        assert_eq!(
            write(&page(vec![Block::Text(text.to_owned())]))
                .unwrap()
                .sheets,
            1
        );
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    #[test]
    fn any_text_can_be_written(
        texts in prop::collection::vec("\\PC{0,80}", 0..6),
        arabic in "[\u{627}-\u{64a} 0-9a-z\u{2066}\u{2069}]{0,40}",
        right_to_left in any::<bool>(),
    ) {
        let mut page = page(vec![
            Block::Text(arabic.clone()),
            Block::List(texts.clone()),
            Block::Urgent { heading: arabic.clone(), points: texts.clone(), after: arabic.clone() },
            Block::Table(Table { head: texts.clone(), rows: vec![texts], shares: vec![2] }),
        ]);
        page.title = arabic;
        page.right_to_left = right_to_left;
        prop_assert!(1 <= write(&page).map_err(|it| TestCaseError::fail(it.to_string()))?.sheets);
    }
}
