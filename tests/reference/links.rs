//! Links and codes, read by libraries that had no part in making them.

use std::io::ErrorKind;

use base64::Engine;
use base64::prelude::BASE64_URL_SAFE_NO_PAD;
use leverwright_core::Vocabulary;
use leverwright_core::catalogue::{DemoId, TemplateId, demo, template};
use leverwright_core::document;
use leverwright_core::plan::Plan;
use leverwright_core::share::{Along, QrMatrix, content, fragment_of, link, open, qr_of};
use zune_inflate::{DeflateDecoder, DeflateOptions};

const ADDRESS: &str = "https://example.org/leverwright/";

fn demos() -> impl Iterator<Item = Plan> {
    DemoId::ALL.iter().map(|id| demo(*id).plan)
}

/// zlib (RFC 1950) in base64url (RFC 4648, section 5): inflated by the crate `zune-inflate`, the
/// content is the plan's document.
#[test]
fn link_data_inflates_to_the_document() {
    for plan in demos() {
        for along in Along::ALL {
            let sent = content(&plan, *along);
            let link = link(ADDRESS, &sent).expect("a demo fits into a link");
            let packed = fragment_of(&link).expect("it is a link to a plan");
            let bytes = BASE64_URL_SAFE_NO_PAD
                .decode(packed)
                .expect("base64url without padding");
            let options = DeflateOptions::default().set_confirm_checksum(true);
            let text = DeflateDecoder::new_with_options(&bytes, options)
                .decode_zlib()
                .expect("zlib");
            let opened = document::read(&text).expect("the document of a plan").plan;
            assert_eq!(opened, open(packed).expect("it opens").plan);
            assert_eq!(opened.layout(), plan.layout());
        }
    }
}

/// What Python's standard library packs is opened, too, whatever the level of compression:
/// `base64.urlsafe_b64encode(zlib.compress(b'{"leverwright":"plan","format":99}', 1)).rstrip(b"=")`.
#[test]
fn data_of_another_compressor_opens() {
    let refused =
        open("eAGrVspJLUstKi_KTM8oUbJSKshJzFPSUUrLL8pNBPItLWsB128Lvg").map(|opened| opened.plan);
    let words = refused.expect_err("no such format is known").to_string();
    assert!(words.contains("The file has format 99"), "{words}");
}

/// QR codes (ISO/IEC 18004) read back by the crate `rqrr` from a picture of the printed size.
#[test]
fn codes_read_back_as_the_link_to_the_layout() {
    let templates = TemplateId::ALL.iter().map(|id| template(*id).plan("Test"));
    let mut read = 0;
    for plan in demos().chain(templates) {
        let Some(code) = qr_of(ADDRESS, &plan) else {
            continue;
        };
        let text = decoded(&code).expect("the code is read");
        let packed = fragment_of(&text).expect("it is a link to a plan");
        let opened = open(packed).expect("it opens").plan;
        assert_eq!(opened.layout(), plan.layout());
        assert!(!opened.has_hand_details());
        read += 1;
    }
    assert!(read >= DemoId::ALL.len(), "{read} codes were read");
}

/// The reader can tell: a code with a corner painted over is not read.
#[test]
fn a_spoilt_code_is_not_read() {
    let mut code = qr_of(ADDRESS, &demo(DemoId::Plover).plan).expect("it fits");
    let spoilt = code.side / 2;
    for y in 0..spoilt {
        for x in 0..spoilt {
            code.dark[y * code.side + x] = true;
        }
    }
    assert!(decoded(&code).is_err());
}

fn decoded(code: &QrMatrix) -> Result<String, ErrorKind> {
    /// Dots of the picture along a module.
    const DOTS: usize = 4;
    let quiet = code.quiet_zone();
    let side = (code.side + 2 * quiet) * DOTS;
    let is_dark = |x: usize, y: usize| {
        let module = |dot: usize| (dot / DOTS).checked_sub(quiet);
        module(x)
            .zip(module(y))
            .is_some_and(|(x, y)| code.is_dark(x, y))
    };
    let mut picture = rqrr::PreparedImage::prepare_from_greyscale(side, side, |x, y| {
        if is_dark(x, y) { 0 } else { 255 }
    });
    let grids = picture.detect_grids();
    let [grid] = &grids[..] else {
        return Err(ErrorKind::NotFound);
    };
    let (_, text) = grid.decode().map_err(|_| ErrorKind::InvalidData)?;
    Ok(text)
}
