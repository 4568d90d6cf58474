//! Handing a plan on without a server: links, files, codes; opening and merging what came.

use std::path::Path;
use std::process::Command;

use base64::Engine;
use base64::prelude::BASE64_URL_SAFE_NO_PAD;
use leverwright_core::document;
use leverwright_core::plan::Plan;
use leverwright_core::share;
use leverwright_tests::browser::{Browser, Media, Paper, Pdf};
use zune_inflate::DeflateDecoder;

use crate::desk::{
    ROAD, file_field, overflow, pick, right_hand_rests, start, stored, wait_for_names,
    wait_until_saved,
};

const WORDS: &str = "the thumb tires after an hour";
const NICKNAME: &str = "Ringdove";

/// A plan that says something of the hands, of the rider in words, and of the layout.
fn told(browser: &Browser) {
    start(browser, ROAD);
    right_hand_rests(browser);
    browser.css(".nickname input").fill(NICKNAME);
    browser.press("Tab");
    browser.css("details.question > summary").nth(0).click();
    browser.css("textarea.own-words").fill(WORDS);
    browser.press("Tab");
    browser.visit("#/layout");
    browser.role("button", "All shifting left").click();
    wait_until_saved(browser);
}

/// The link that the Share screen shows.
pub fn link(browser: &Browser, with_details: bool) -> String {
    browser.visit("#/share");
    if with_details {
        browser
            .mouse()
            .tap(&browser.role("radio", "with rider details"));
    }
    let field = browser.css(".link-text textarea");
    let opens = |text: &str| {
        let packed = share::fragment_of(text)?;
        Some(share::open(packed).ok()?.plan.has_hand_details())
    };
    browser.wait_for("the link is as chosen", || {
        with_details == (opens(&field.value()) == Some(true))
    });
    field.value()
}

/// Follows a link as from a message.
pub fn follow(browser: &Browser, link: &str) {
    let at = link.find('#').expect("a link has a fragment");
    browser.visit(&link[at..]);
    browser.role("heading", "Open").wait_until_shown();
}

/// Takes what came as a plan of its own.
pub fn take(browser: &Browser) {
    browser.role("button", "Open as a new plan").click();
    browser.role("heading", "Layout").wait_until_shown();
    wait_until_saved(browser);
}

pub fn put_together(browser: &Browser) {
    browser.role("button", "Put the two together").click();
    browser.role("heading", "Layout").wait_until_shown();
    browser
        .css(".status-line")
        .wait_for_text("are put together");
    wait_until_saved(browser);
}

/// The plan in a link.
pub fn plan_in(link: &str) -> Plan {
    let packed = share::fragment_of(link).expect("it is a link to a plan");
    share::open(packed).expect("it opens").plan
}

/// What an independent library finds in a link (RFC 4648, section 5; RFC 1950).
fn inflated(link: &str) -> String {
    let (_, packed) = link.split_once("#/open/").expect("it is a link to a plan");
    let packed = BASE64_URL_SAFE_NO_PAD.decode(packed).expect("base64url");
    let plain = DeflateDecoder::new(&packed).decode_zlib().expect("zlib");
    String::from_utf8(plain).expect("text")
}

/// That the words before the choices say this.
#[track_caller]
fn assert_merge_says(browser: &Browser, words: &str) {
    browser.css(".merge-said").wait_until_shown();
    let said = browser.css(".merge-said").text();
    assert!(said.contains(words), "{words:?} is not in {said}");
}

/// Makes a change on a telephone, where the acts are folded away.
fn mirror_by_finger(browser: &Browser) {
    browser
        .finger()
        .tap(&browser.role("button", "Quick starts, reach"));
    let act = browser.role("button", "Mirror");
    act.scroll_into_view();
    browser.finger().tap(&act);
    wait_until_saved(browser);
}

#[test]
fn a_plan_goes_to_the_rider_is_changed_and_comes_back() {
    let shop = Browser::open("shop");
    told(&shop);
    let to_rider = link(&shop, true);

    let rider = Browser::open_phone("rider");
    follow(&rider, &to_rider);
    assert_eq!(rider.route(), "#/open");
    rider.css("#came").wait_for_text("A plan came by link");
    rider.css(".came").wait_for_text("Left hand");
    rider.assert_accessible();
    rider
        .finger()
        .tap(&rider.role("button", "Open as a new plan"));
    rider.role("heading", "Layout").wait_until_shown();
    mirror_by_finger(&rider);
    let back = link(&rider, true);

    // The page is open: the link arrives by a change of the address alone.
    follow(&shop, &back);
    assert_eq!(shop.route(), "#/open");
    shop.css("#came").wait_for_text("a copy of it is here");
    assert_merge_says(&shop, "One part is newer in theirs");
    let parts = shop.css(".merge-parts > li h4").texts();
    assert!(parts[0].contains("Layout"), "{parts:?}");
    let words = shop.css(".merge-part .differences").nth(0).text();
    assert!(words.contains("was "), "{words}");
    shop.assert_accessible();
    put_together(&shop);
    let merged = plan_in(&link(&shop, true));
    assert_eq!(merged.layouts, plan_in(&back).layouts);
    assert_eq!(merged.rider.own_words.as_str(), WORDS);

    shop.visit("#/layout");
    shop.role("button", "Undo").click();
    wait_until_saved(&shop);
    assert_eq!(
        plan_in(&link(&shop, true)).layouts,
        plan_in(&to_rider).layouts
    );
}

#[test]
fn somebody_may_keep_what_is_theirs_or_open_a_copy_beside_it() {
    let shop = Browser::open("shop");
    told(&shop);
    let before = link(&shop, true);
    let rider = Browser::open("rider");
    follow(&rider, &before);
    take(&rider);
    rider.role("button", "Mirror").click();
    wait_until_saved(&rider);
    let back = link(&rider, true);

    shop.visit("#/layout");
    shop.role("button", "Clear all buttons").click();
    wait_until_saved(&shop);
    follow(&shop, &back);
    assert_merge_says(&shop, "One part was changed in both");
    assert_fits_everybody(&shop, "merge");
    let choices = shop.css(".merge-part .segment").texts();
    assert_eq!(choices, ["keep mine", "take theirs", "keep both"]);
    shop.mouse().tap(&shop.role("radio", "keep both"));
    put_together(&shop);
    let merged = plan_in(&link(&shop, true));
    assert_eq!(merged.layouts.len(), 2);
    assert!(merged.layouts[0].taps.is_empty());
    assert_eq!(merged.layouts[1].taps, plan_in(&back).layouts[0].taps);

    follow(&shop, &back);
    shop.role("button", "Open as a new plan instead").click();
    shop.role("heading", "Layout").wait_until_shown();
    shop.visit("#/plans");
    wait_for_names(&shop, &[ROAD, ROAD]);
}

#[test]
fn without_being_asked_nothing_about_the_rider_goes_along() {
    let shop = Browser::open("shop");
    told(&shop);
    let usual = link(&shop, false);
    let plain = inflated(&usual);
    for word in [WORDS, NICKNAME, "\"rests\"", "about the rider"] {
        assert!(!plain.contains(word), "{word} is in {plain}");
    }
    assert!(!plan_in(&usual).has_hand_details());
    assert!(shop.css("main").text().contains(share::IMPLIED));
    assert!(shop.css("main").text().contains(share::LASTING));
    let size = format!("The link has {} characters", usual.len());
    assert!(shop.css(".share-ways").text().contains(&size), "{size}");
    let full = inflated(&link(&shop, true));
    for word in [WORDS, NICKNAME] {
        assert!(full.contains(word), "{word} is not in {full}");
    }

    // The usual choice stands again for the next one, and holds for files, too.
    shop.visit("#/layout");
    shop.visit("#/share");
    shop.role("button", "Save a file").click();
    let file = shop.wait_for_download("Road-drop-bar-2x12.leverwright.json");
    let file = std::fs::read_to_string(file).expect("a text");
    assert!(!file.contains(WORDS) && !file.contains(NICKNAME), "{file}");
}

#[test]
fn removal_of_hand_details_wins_on_every_way() {
    let shop = Browser::open("shop");
    told(&shop);
    let old = link(&shop, true);
    let rider = Browser::open("rider");
    follow(&rider, &old);
    take(&rider);
    assert!(format!("{:?}", stored(&rider)).contains(WORDS));

    rider.visit("#/plans");
    pick(&rider, ROAD, "Remove hand details");
    rider.role("button", "Remove them").click();
    rider
        .css(".notices")
        .wait_for_text("Hand details are removed");
    wait_until_saved(&rider);

    // An older copy does not bring them back.
    follow(&rider, &old);
    assert_merge_says(&rider, "does not come back");
    rider.visit("#/plans");
    assert!(!format!("{:?}", stored(&rider)).contains(WORDS));

    // And they go where the copy goes that lost them: from undo and from every copy, too.
    let bare = link(&rider, false);
    follow(&shop, &bare);
    assert_merge_says(&shop, "hand details were removed. They go here, too");
    let decided = shop.css(".merge-part .decided").texts();
    assert!(!decided.is_empty());
    put_together(&shop);
    assert!(!format!("{:?}", stored(&shop)).contains(WORDS));
    shop.role("button", "Undo").click();
    wait_until_saved(&shop);
    assert!(!format!("{:?}", stored(&shop)).contains(WORDS));
}

#[test]
fn links_cut_off_hostile_or_too_long_are_refused_in_words() {
    let shop = Browser::open("shop");
    told(&shop);
    let good = link(&shop, false);
    let at = good.find("#/open/").expect("it is a link") + "#/open/".len();
    let (before, packed) = good.split_at(at);
    let markup = "<img src=x onerror=alert(1)>";
    for (packed, words) in [
        (packed[..packed.len() / 2].to_owned(), "is cut off"),
        (String::new(), "is empty after its address"),
        ("AAAA".to_owned(), "was damaged on its way"),
        (
            packed.replacen(&packed[40..44], "%3C.", 1),
            "which no link to a plan does",
        ),
        (format!("{packed}{markup}"), "which no link to a plan does"),
        ("A".repeat(70_000), "is too long: 70000 characters"),
    ] {
        follow(&shop, &format!("{before}{packed}"));
        shop.css(".refused").wait_for_text(words);
        assert_eq!(shop.route(), "#/open");
        assert!(!shop.eval::<String>("return location.href").contains("AAAA"));
        shop.role("button", "Open another link").click();
        shop.css(".refused").wait_until_gone();
    }

    // One that came as text.
    let field = shop.role("textbox", "The link");
    field.fill("https://example.org/");
    shop.role("button", "Open the link").click();
    shop.css("#paste-error")
        .wait_for_text("This is no link to a plan: such a link has “#/open/” in it");
    shop.assert_accessible();
    field.fill(&good);
    shop.role("button", "Open the link").click();
    shop.css(".merge-said").wait_for_text("brings nothing that");
    shop.role("button", "Go on with yours").click();
    shop.role("heading", "Layout").wait_until_shown();
    shop.visit("#/plans");
    wait_for_names(&shop, &[ROAD]);
}

#[test]
fn the_address_is_cleared_at_the_start_and_nothing_is_asked_of_anybody() {
    let shop = Browser::open("shop");
    told(&shop);
    shop.visit("#/share");
    shop.css(".qr").wait_until_shown();
    let before = shop.requests().len();
    shop.offline(true);
    shop.role("button", "Copy the link").click();
    shop.css(".status-line").wait_for_text("The link is copied");
    shop.role("button", "Save a file").click();
    shop.wait_for_download("Road-drop-bar-2x12.leverwright.json");
    let usual = shop.css(".link-text textarea").value();
    follow(&shop, &usual);
    shop.css(".merge-said").wait_until_shown();
    // What was copied is what the page shows.
    shop.role("button", "Do not open it").click();
    shop.visit("#/open");
    shop.role("textbox", "The link").focus();
    shop.press("Control+v");
    assert_eq!(shop.role("textbox", "The link").value(), usual);
    shop.offline(false);
    let since: Vec<String> = shop.requests().split_off(before);
    let since: Vec<_> = since.iter().filter(|to| !to.starts_with("blob:")).collect();
    assert!(since.is_empty(), "{since:?}");

    let rider = Browser::open("rider");
    // Notes the address as soon as the program could have shown anything.
    follow(&rider, &usual);
    assert_eq!(rider.route(), "#/open");
    let packed = share::fragment_of(&usual).expect("it is a link");
    let asked: Vec<String> = rider.requests();
    assert!(
        asked
            .iter()
            .all(|to| !to.contains(&packed[..40]) || to.contains('#')),
        "{asked:?}"
    );
    assert!(
        stored(&rider).values().all(|value| !value.contains(ROAD)),
        "it is kept only when asked"
    );
    rider.reload();
    rider.role("heading", "Open").wait_until_shown();
    assert_eq!(rider.css(".came").count(), 0);
}

/// Draws the leaves of a print and reads the code on them (ISO/IEC 18004) by the crate `rqrr`.
fn scanned(print: &Pdf) -> Option<String> {
    // A camera comes as near as it must.
    ["300", "400", "600"]
        .iter()
        .find_map(|dots| scanned_at(print, dots))
}

fn scanned_at(print: &Pdf, dots: &str) -> Option<String> {
    let folder = tempfile::tempdir().expect("a folder");
    let target = folder.path().join("leaf");
    let drawn = Command::new("pdftoppm")
        .args(["-gray", "-l", "1", "-r", dots])
        .arg(print.path())
        .arg(&target)
        .status();
    assert!(drawn.expect("pdftoppm runs").success());
    let mut leaves: Vec<_> = std::fs::read_dir(folder.path())
        .expect("the folder is there")
        .map(|leaf| leaf.expect("a leaf").path())
        .collect();
    leaves.sort();
    leaves.iter().find_map(|leaf| read_code(leaf))
}

fn read_code(leaf: &Path) -> Option<String> {
    let picture = std::fs::read(leaf).expect("a leaf is drawn");
    // PGM: a head of three lines, then a byte for each dot.
    let mut lines = picture.splitn(4, |byte| *byte == b'\n');
    assert_eq!(lines.next(), Some(&b"P5"[..]));
    let size = String::from_utf8_lossy(lines.next()?).into_owned();
    let (width, height) = size.split_once(' ')?;
    let (width, height): (usize, usize) = (width.parse().ok()?, height.parse().ok()?);
    let dots = &picture[picture.len() - width * height..];
    // As a telephone is held over it: the whole leaf, then nearer, without the boxes around.
    let frames = [
        (0, 0),
        (45, 50),
        (45, 60),
        (60, 65),
        (66, 68),
        (45, 70),
        (60, 10),
    ];
    frames.iter().find_map(|(left, top)| {
        let (left, top) = (width * left / 100, height * top / 100);
        let mut picture =
            rqrr::PreparedImage::prepare_from_greyscale(width - left, height - top, |x, y| {
                dots[(y + top) * width + x + left]
            });
        let grids = picture.detect_grids();
        // What looks like a code but is none does not decode.
        let read = |grid: &rqrr::Grid<_>| grid.decode().ok().map(|(_, text)| text);
        grids.iter().find_map(read)
    })
}

#[test]
fn the_code_on_the_sheet_opens_the_layout_on_a_telephone() {
    let shop = Browser::open("shop");
    told(&shop);
    let own = plan_in(&link(&shop, true));
    shop.visit("#/sheet");
    shop.css(".sheet-code").wait_until_shown();
    shop.mouse().tap(&shop.role("radio", "A4"));
    shop.css(".sheet.a4").wait_until_shown();
    let print = shop.print(Paper::A4);
    if let Ok(shots) = std::env::var("TRAVEL_SHOTS") {
        print.draw(Path::new(&shots), "sheet-paper");
    }
    let text = scanned(&print).expect("the code is read from paper");
    let scanned_plan = plan_in(&text);
    assert_eq!(scanned_plan.layout(), own.layout());
    assert!(!scanned_plan.has_hand_details());

    let home = Browser::open_phone("home");
    follow(&home, &text);
    home.css("#came").wait_for_text("A plan came by link");
    home.finger()
        .tap(&home.role("button", "Open as a new plan"));
    home.role("heading", "Layout").wait_until_shown();

    shop.role(
        "checkbox",
        "Code to scan, where the first page has room (not in large print)",
    )
    .click();
    shop.css(".sheet-code").wait_until_gone();
    assert_eq!(scanned(&shop.print(Paper::A4)), None);
}

#[test]
fn a_file_goes_there_and_back_on_a_telephone() {
    let shop = Browser::open("shop");
    told(&shop);
    shop.visit("#/share");
    shop.role("button", "Save a file").click();
    let file = shop.wait_for_download("Road-drop-bar-2x12.leverwright.json");

    let home = Browser::open_phone("home");
    home.visit("#/plans");
    file_field(&home).choose_file(&file);
    home.role("heading", "Layout").wait_until_shown();
    mirror_by_finger(&home);
    home.visit("#/share");
    home.role("button", "Save a file").scroll_into_view();
    home.finger().tap(&home.role("button", "Save a file"));
    let back = home.wait_for_download("Road-drop-bar-2x12.leverwright.json");
    let theirs = document::read(std::fs::read(&back).expect("a file"))
        .expect("a plan")
        .plan;

    shop.visit("#/plans");
    file_field(&shop).choose_file(&back);
    shop.css("#came")
        .wait_for_text("A plan came as a file, and a copy of it is here");
    assert_merge_says(&shop, "One part is newer in theirs");
    put_together(&shop);
    let merged = plan_in(&link(&shop, true));
    assert_eq!(merged.layouts, theirs.layouts);
    // What was left out on the way is still here.
    assert_eq!(merged.rider.own_words.as_str(), WORDS);
}

#[test]
fn share_and_open_keep_within_narrow_windows_and_can_be_used_by_everybody() {
    let shop = Browser::open("shop");
    told(&shop);
    let old = link(&shop, true);
    shop.visit("#/layout");
    shop.role("button", "Clear all buttons").click();
    wait_until_saved(&shop);
    for (name, go) in [
        ("share", &(|| shop.visit("#/share")) as &dyn Fn()),
        ("paste", &|| shop.visit("#/open")),
        ("open", &|| follow(&shop, &old)),
    ] {
        go();
        assert_fits_everybody(&shop, name);
    }
}

/// Light and dark, on narrow windows and with large text.
#[track_caller]
fn assert_fits_everybody(browser: &Browser, name: &str) {
    let shots = std::env::var("TRAVEL_SHOTS").ok();
    for (width, dark) in [
        (1280, false),
        (1280, true),
        (390, false),
        (390, true),
        (320, false),
    ] {
        browser.viewport(width, 844);
        browser.media(Media {
            dark,
            ..Media::default()
        });
        assert!(overflow(browser) <= 0.0, "{name} is wider than {width} px");
        browser.assert_accessible();
        if let Some(shots) = &shots {
            browser.screenshot_of_page(Path::new(&format!("{shots}/{name}-{width}-{dark}.png")));
        }
    }
    browser.viewport(1280, 844);
    browser.text_size(200);
    assert!(overflow(browser) <= 0.0, "{name} is too wide at 200 % text");
    browser.text_size(100);
}
