//! Makes the vectors of `tests/data/handover`: `cargo run --no-default-features --example
//! code_vectors DIR`. It was run once for format version 2; its files are never made again.
//!
//! Each invalid one is sound up to the layer that it is bad in: an altered record is squeezed, signed
//! and sealed as it should be.

#![allow(missing_docs, clippy::unwrap_used)]

#[path = "../tests/it/handover/sample.rs"]
mod sample;
#[path = "../tests/it/handover/stages.rs"]
mod stages;
#[path = "../tests/it/handover/visits.rs"]
mod visits;

use std::fs;
use std::path::{Path, PathBuf};

use feedside::handover::cbor::{self, Item};
use feedside::handover::{
    DeskKeyPair, Handed, TabletKey, VersionCap, coding, deflate, digits, pack, pieces, qr, seal,
    sign, wire,
};
use serde_json::json;

struct Out {
    folder: PathBuf,
    lines: Vec<String>,
}

impl Out {
    fn put(&mut self, layer: &str, name: &str, why: &str, texts: &[String]) {
        let told = stages::walk(texts);
        let last = told
            .iter()
            .next_back()
            .map(|(stage, it)| (stage.clone(), it.clone()))
            .unwrap();
        let valid = layer == "none";
        let folder = self.folder.join(if valid { "valid" } else { "invalid" });
        fs::create_dir_all(&folder).unwrap();
        let vector = json!({
            "name": name,
            "layer": layer,
            "why": why,
            "format": 2,
            "desk_secret": sample::hex(&*sample::desk().secret_bytes()),
            "tablet_public": sample::hex(&sample::tablet().public().to_bytes()),
            "codes": texts,
            "stages": told,
        });
        fs::write(folder.join(format!("{name}.json")), format!("{vector:#}\n")).unwrap();
        let refused = last.1["refused"].as_str().unwrap_or("-");
        let outcome = if valid {
            "read".to_owned()
        } else {
            format!("{} by {}", refused, last.0)
        };
        self.lines
            .push(format!("| {layer} | `{name}` | {why} | {outcome} |"));
    }
}

fn of_sealed(sealed: &[u8]) -> Vec<String> {
    let cut = pieces::cut(sealed, 0x0102_0304, qr::payload_most(20)).unwrap();
    cut.iter()
        .map(|piece| digits::wrap(piece.index, &piece.to_bytes()))
        .collect()
}

fn of_short(short: &[u8]) -> Vec<String> {
    of_sealed(
        &seal::seal(short, &sample::desk().public(), &[3; 32])
            .unwrap()
            .0,
    )
}

fn of_packed(packed: &[u8]) -> Vec<String> {
    let desk = sample::desk().public().kid();
    let signed = sign::sign(packed.to_vec(), &sample::tablet(), &desk).unwrap();
    of_short(&sign::shorten(&signed).unwrap())
}

/// Bytes that need not be CBOR, in the plain coding.
fn of_content(content: &[u8]) -> Vec<String> {
    let deflated = deflate::deflate(content).unwrap();
    of_packed(&[&[coding::DEFLATED], deflated.as_slice()].concat())
}

fn of_item(item: &Item) -> Vec<String> {
    let content = cbor::to_bytes(item).unwrap();
    let item = cbor::from_bytes(&content).unwrap();
    of_packed(&coding::packed_as(coding::SQUEEZED, &item).unwrap())
}

fn item_of(handed: &Handed) -> Item {
    cbor::from_bytes(&cbor::to_bytes(&wire::to_wire(handed).unwrap()).unwrap()).unwrap()
}

/// A record with one of its fields changed; the path names keys of maps and places of lists.
fn changed(handed: &Handed, path: &[i64], to: Option<Item>) -> Item {
    fn at(item: &mut Item, step: i64) -> &mut Item {
        match item {
            Item::Map(pairs) => {
                let found = pairs.iter_mut().find(|(key, _)| *key == Item::Int(step));
                &mut found.unwrap().1
            }
            Item::List(items) => &mut items[step as usize],
            _ => panic!("nothing inside"),
        }
    }
    let mut item = item_of(handed);
    let (last, way) = path.split_last().unwrap();
    let inner = way.iter().fold(&mut item, |inner, step| at(inner, *step));
    match to {
        Some(to) => match inner {
            Item::Map(pairs) if !pairs.iter().any(|(key, _)| *key == Item::Int(*last)) => {
                pairs.push((Item::Int(*last), to));
            }
            inner => *at(inner, *last) = to,
        },
        None => {
            if let Item::Map(pairs) = inner {
                pairs.retain(|(key, _)| *key != Item::Int(*last));
            } else if let Item::List(items) = inner {
                items.remove(*last as usize);
            }
        }
    }
    item
}

fn main() {
    let folder = std::env::args().nth(1).expect("a folder");
    let mut out = Out {
        folder: Path::new(&folder).to_owned(),
        lines: Vec::new(),
    };
    valid(&mut out);
    text_and_pieces(&mut out);
    sealed(&mut out);
    signed(&mut out);
    coded(&mut out);
    contents(&mut out);
    records(&mut out);
    println!("{}", out.lines.join("\n"));
}

fn packed(handed: &Handed) -> feedside::handover::Packed {
    let desk = sample::desk().public();
    pack(
        handed,
        &sample::tablet(),
        &desk,
        &sample::fresh(5),
        VersionCap::V20,
    )
    .unwrap()
}

fn valid(out: &mut Out) {
    let visit = visits::visit(3, &visits::ORDINARY);
    for (name, why, handed) in [
        ("smallest", "no entry, no feed", sample::smallest()),
        (
            "ordinary",
            "an ordinary visit in one code",
            visit.for_codes(false).unwrap(),
        ),
        (
            "with-taps",
            "the same with its single taps",
            visit.for_codes(true).unwrap(),
        ),
        (
            "milliseconds",
            "times that are not rounded",
            sample::ordinary(4, true),
        ),
    ] {
        out.put("none", name, why, &packed(&handed).pieces);
    }
    let plain = coding::packed_as(coding::DEFLATED, &item_of(&sample::ordinary(4, false))).unwrap();
    out.put("none", "deflated", "the plain coding", &of_packed(&plain));
    let newer = r#"{"tune":"low","times":3}"#.to_owned();
    let mut handed = sample::smallest();
    let what = feedside::record::What::Unknown {
        kind: "hummed".to_owned(),
        body: newer,
    };
    let entry = handed
        .visit
        .journal
        .next(feedside::record::At::ms(9), sample::began(), what);
    handed.visit.journal.push(entry).unwrap();
    out.put(
        "none",
        "newer-entry",
        "an entry of a newer version, kept whole",
        &packed(&handed).pieces,
    );
    let mut backwards = packed(&visit.for_codes(true).unwrap()).pieces;
    backwards.reverse();
    out.put("none", "backwards", "pieces from last to first", &backwards);
}

fn text_and_pieces(out: &mut Out) {
    let text = packed(&sample::smallest()).pieces.remove(0);
    let mut put = |name, why, text: String| out.put("text", name, why, &[text]);
    put("not-ours", "another code", "4006381333931".to_owned());
    put("too-long", "more than any code holds", "7".repeat(20_000));
    put(
        "cut-scan",
        "the scan was cut",
        text[..text.len() - 40].to_owned(),
    );
    let mut slip = text.clone().into_bytes();
    slip[200] = b'0' + (slip[200] - b'0' + 1) % 10;
    put(
        "one-digit",
        "one digit is another",
        String::from_utf8(slip).unwrap(),
    );
    put(
        "preamble-alone",
        "nothing behind the preamble",
        digits::PREAMBLE.to_owned(),
    );
    let piece = pieces::cut(&packed(&sample::smallest()).sealed, 7, 600)
        .unwrap()
        .remove(0);
    let mut put = |name, why, change: &dyn Fn(&mut pieces::Piece)| {
        let mut piece = piece.clone();
        change(&mut piece);
        out.put(
            "piece",
            name,
            why,
            &[digits::wrap(piece.index, &piece.to_bytes())],
        );
    };
    put("piece-newer", "a later version of pieces", &|it| {
        it.version = 0x12
    });
    put("piece-of-none", "no pieces in all", &|it| it.count = 0);
    put("piece-past-last", "number 3 of 2", &|it| {
        (it.index, it.count) = (3, 2)
    });
    put("piece-of-too-many", "61 pieces in all", &|it| it.count = 61);
    let mut two = piece.clone();
    two.payload[0] ^= 1;
    let texts = [&piece, &two].map(|it| {
        let it = pieces::Piece {
            count: 2,
            index: 1,
            ..it.clone()
        };
        digits::wrap(it.index, &it.to_bytes())
    });
    out.put(
        "piece",
        "piece-mixed",
        "two first pieces under one number",
        &texts,
    );
}

fn sealed(out: &mut Out) {
    let good = packed(&sample::smallest()).sealed;
    let mut put = |name: &str, why: &str, change: &dyn Fn(&mut Vec<u8>)| {
        let mut sealed = good.clone();
        change(&mut sealed);
        out.put("seal", name, why, &of_sealed(&sealed));
    };
    put("seal-version-1", "the version before", &|it| it[0] = 1);
    put("seal-version-3", "a later version", &|it| it[0] = 3);
    put("seal-short", "fewer bytes than the ids and keys", &|it| {
        it.truncate(30)
    });
    put("seal-cut", "one byte less", &|it| it.truncate(it.len() - 1));
    put("seal-longer", "one byte more", &|it| it.push(0));
    put("seal-ciphertext", "a bit of the ciphertext", &|it| {
        it[60] ^= 1
    });
    put("seal-tag", "a bit of the tag", &|it| {
        *it.last_mut().unwrap() ^= 1
    });
    put("seal-one-time-key", "a bit of the one-time key", &|it| {
        it[20] ^= 1
    });
    put(
        "seal-key-of-small-order",
        "a one-time key that gives no secret",
        &|it| it[9..41].fill(0),
    );
    put("seal-other-id", "a bit of the desk's id", &|it| it[4] ^= 1);
    let other = DeskKeyPair::from_random([44; 32]).unwrap().public();
    let elsewhere = seal::seal(b"anything", &other, &[3; 32]).unwrap().0;
    out.put(
        "seal",
        "seal-other-desk",
        "sealed for another desk",
        &of_sealed(&elsewhere),
    );
}

fn signed(out: &mut Out) {
    let desk = sample::desk().public().kid();
    let packed = coding::pack(&sample::smallest()).unwrap();
    let of = |tablet: &TabletKey, desk| {
        sign::shorten(&sign::sign(packed.clone(), tablet, &desk).unwrap()).unwrap()
    };
    let good = of(&sample::tablet(), desk);
    let mut put =
        |name: &str, why: &str, short: Vec<u8>| out.put("signature", name, why, &of_short(&short));
    put(
        "tablet-unknown",
        "a tablet that is not enrolled",
        of(&TabletKey::from_random([45; 32]), desk),
    );
    let other = DeskKeyPair::from_random([44; 32]).unwrap().public().kid();
    put(
        "signed-for-other-desk",
        "signed for another desk, sealed for this",
        of(&sample::tablet(), other),
    );
    for (name, why, at) in [
        ("signature-bit", "a bit of the signature", 20),
        ("payload-bit", "a bit of what is signed", good.len() - 1),
    ] {
        let mut short = good.clone();
        short[at] ^= 1;
        put(name, why, short);
    }
    let mut foreign = of(&TabletKey::from_random([45; 32]), desk);
    foreign[..8].copy_from_slice(sample::tablet().public().kid().as_bytes());
    put(
        "signed-by-another",
        "another tablet's signature under a known id",
        foreign,
    );
    put("signed-short", "no whole signature", good[..40].to_vec());
}

fn coded(out: &mut Out) {
    let squeezed = coding::pack(&sample::smallest()).unwrap();
    let deflated = coding::packed_as(coding::DEFLATED, &item_of(&sample::smallest())).unwrap();
    let mut put =
        |name: &str, why: &str, packed: &[u8]| out.put("coding", name, why, &of_packed(packed));
    put("coding-none", "nothing signed", &[]);
    put("coding-0", "coding 0", &[&[0], &deflated[1..]].concat());
    put(
        "coding-3",
        "a later coding",
        &[&[3], &squeezed[1..]].concat(),
    );
    put("deflate-damaged", "a block of no kind", &[1, 0xff, 0xff]);
    put(
        "deflate-cut",
        "cut DEFLATE",
        &deflated[..deflated.len() - 3],
    );
    put(
        "deflate-longer",
        "bytes behind the end",
        &[&deflated[..], &[0]].concat(),
    );
    let bomb = deflate::deflate(&vec![0; 8_000_000]).unwrap();
    put(
        "deflate-bomb",
        "8 MB of zeros",
        &[&[1], bomb.as_slice()].concat(),
    );
    put(
        "squeezed-longer",
        "a zero behind the end",
        &[&squeezed[..], &[0]].concat(),
    );
    put(
        "squeezed-noise",
        "bytes of no value",
        &[&[2], [0xa7; 90].as_slice()].concat(),
    );
    put(
        "squeezed-as-deflate",
        "the other coding's bytes",
        &[&[2], &deflated[1..]].concat(),
    );
}

fn contents(out: &mut Out) {
    let mut put =
        |name: &str, why: &str, content: &[u8]| out.put("content", name, why, &of_content(content));
    put("no-cbor", "no CBOR", b"no CBOR");
    put("cbor-empty", "nothing", &[]);
    put(
        "cbor-longer",
        "a value behind the value",
        &[0xa1, 0x00, 0x02, 0x00],
    );
    put("cbor-long-int", "2 in two bytes", &[0xa1, 0x00, 0x18, 0x02]);
    put(
        "cbor-endless-map",
        "a map without a length",
        &[0xbf, 0x00, 0x02, 0xff],
    );
    put(
        "cbor-key-twice",
        "a key twice",
        &[0xa2, 0x00, 0x02, 0x00, 0x02],
    );
    put(
        "cbor-order",
        "keys out of order",
        &[0xa2, 0x01, 0x02, 0x00, 0x02],
    );
    put(
        "cbor-float",
        "a number that is not whole",
        &[0xa1, 0x00, 0xf9, 0x40, 0x00],
    );
    put("cbor-tag", "a tag", &[0xa1, 0x00, 0xc1, 0x02]);
    put(
        "cbor-text",
        "text that is no UTF-8",
        &[0xa1, 0x00, 0x61, 0xff],
    );
    put(
        "cbor-huge-list",
        "a list of 2^63 values",
        &[0x9b, 0x7f, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff],
    );
    put("cbor-deep", "a list in a list, 300 deep", &[0x81; 300]);
}

fn records(out: &mut Out) {
    let handed = sample::ordinary(4, false);
    let int = |value| Some(Item::Int(value));
    for (name, why, path, to) in [
        ("wire-version-1", "the version before", vec![0], int(1)),
        ("wire-version-3", "a later version", vec![0], int(3)),
        ("no-version", "the version is missing", vec![0], None),
        ("no-journal", "the journal is missing", vec![4], None),
        (
            "field-too-many",
            "a field that no record has",
            vec![99],
            int(1),
        ),
        (
            "field-of-another-kind",
            "a number for a list",
            vec![6],
            int(1),
        ),
        ("weight-0", "a birth weight of 0 g", vec![2, 9], int(0)),
        (
            "weight-huge",
            "a birth weight of 99 kg",
            vec![2, 9],
            int(99_000),
        ),
        (
            "gestation-60-weeks",
            "60 weeks of gestation",
            vec![2, 8],
            int(420),
        ),
        (
            "label-empty",
            "an empty name",
            vec![3, 3],
            Some(Item::Text(String::new())),
        ),
        (
            "id-short",
            "an id of three bytes",
            vec![3, 0],
            Some(Item::Bytes(vec![1, 2, 3])),
        ),
        ("unit-7", "a unit that is none", vec![4, 0], int(7)),
        (
            "kind-unknown",
            "a kind past the list",
            vec![4, 1, 0],
            int(9_999),
        ),
        (
            "column-short",
            "a column with a row less",
            vec![4, 3, 0],
            None,
        ),
        (
            "numbers-go-back",
            "an entry's number goes back",
            vec![4, 4, 3],
            int(-9),
        ),
        (
            "word-unknown",
            "a word past the list",
            vec![2, 7],
            int(-9_999),
        ),
        (
            "rule-unknown",
            "a rule past the list",
            vec![7, 0, 0],
            int(9_999),
        ),
        (
            "finding-not-there",
            "a finding that should follow in full and does not",
            vec![7, 2],
            Some(Item::List(Vec::new())),
        ),
        (
            "findings-too-few",
            "fewer values than findings",
            vec![7, 1, 0],
            None,
        ),
        (
            "unjudged-rule-unknown",
            "a rule past the list that could not be judged",
            vec![8],
            Some(Item::Map(vec![(Item::Int(9_999), Item::Int(-1))])),
        ),
        ("percent-101", "101 per cent", vec![6, 0, 2, 2, 0], int(101)),
        (
            "run-of-minus-1",
            "a run of -1 sucks",
            vec![6, 0, 1, 1, 1, 0],
            int(-1),
        ),
    ] {
        out.put("record", name, why, &of_item(&changed(&handed, &path, to)));
    }
}
