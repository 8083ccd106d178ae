//! Pictures of codes. The codes are drawn by the handover room; reading is the library's. Source:
//! the project's own design (several codes in one picture, any order).

use feedside::desk::DeskError;
use feedside::desk::read::{picture, texts_in};
use feedside::handover::Code;
use image::{DynamicImage, GrayImage, ImageFormat, Luma, imageops};

use super::{packed, set_up, tablet};

fn drawn(code: &Code, px: usize) -> GrayImage {
    let (side, pixels) = code.to_luma(px, 4);
    let side = u32::try_from(side).unwrap();
    GrayImage::from_raw(side, side, pixels).unwrap()
}

fn beside(pictures: &[GrayImage]) -> DynamicImage {
    let width = pictures.iter().map(|it| it.width() + 40).sum();
    let height = pictures.iter().map(|it| it.height() + 60).max().unwrap();
    let mut all = GrayImage::from_pixel(width, height, Luma([230]));
    let mut x = 20;
    for one in pictures {
        imageops::replace(&mut all, one, x, 30);
        x += i64::from(one.width()) + 40;
    }
    DynamicImage::ImageLuma8(all)
}

#[test]
fn one_code_is_read() {
    let packed = packed(&set_up().1);
    let picture = DynamicImage::ImageLuma8(drawn(&packed.codes[0], 4));
    assert_eq!(texts_in(&picture), [packed.pieces[0].clone()]);
}

#[test]
fn several_codes_in_one_picture_are_read() {
    let packed = packed(&set_up().1);
    let codes: Vec<_> = packed
        .codes
        .iter()
        .take(2)
        .map(|code| drawn(code, 4))
        .collect();
    let mut texts = texts_in(&beside(&codes));
    texts.sort();
    assert_eq!(texts, packed.pieces[..2]);
}

#[test]
fn a_code_in_night_colours_and_a_turned_one_are_read() {
    let code = tablet().public().to_code().unwrap();
    let mut night = DynamicImage::ImageLuma8(drawn(&code, 6));
    let turned = night.rotate90();
    night.invert();
    for picture in [night, turned] {
        assert_eq!(texts_in(&picture), [tablet().public().to_code_text()]);
    }
}

#[test]
fn a_picture_without_a_code_gives_nothing() {
    let empty = DynamicImage::ImageLuma8(GrayImage::from_pixel(200, 100, Luma([255])));
    assert!(texts_in(&empty).is_empty());
}

#[test]
fn what_is_no_picture_is_told_by_its_name() {
    for bytes in [
        &b""[..],
        b"not a picture",
        &[0x89, b'P', b'N', b'G', 13, 10, 26, 10],
    ] {
        assert!(matches!(
            picture(bytes, "x.png"),
            Err(DeskError::NotAPicture { file }) if file == "x.png"
        ));
    }
}

#[test]
fn a_picture_too_large_to_be_one_is_refused_before_it_is_unpacked() {
    // A PNG whose header claims 4 billion pixels; PNG specification, 11.2.2 IHDR.
    let small = DynamicImage::ImageLuma8(GrayImage::new(1, 1));
    let mut bytes = std::io::Cursor::new(Vec::new());
    small.write_to(&mut bytes, ImageFormat::Png).unwrap();
    let mut bytes = bytes.into_inner();
    bytes[16..24].copy_from_slice(&[0, 1, 0, 0, 0, 1, 0, 0]);
    let crc = crc32fast::hash(&bytes[12..29]);
    bytes[29..33].copy_from_slice(&crc.to_be_bytes());
    assert!(matches!(
        picture(&bytes, "x.png"),
        Err(DeskError::NotAPicture { .. })
    ));
}
