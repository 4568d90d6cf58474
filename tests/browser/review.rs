//! The Review screen: reading, commenting, accepting, deciding, looking back, printing.

use std::path::Path;

use leverwright_tests::browser::{Browser, Element, Media, Paper};

use crate::desk::{ROAD, overflow, right_hand_rests, start};

/// A plan whose right hand rests, all shifting left, seen by a clinician.
fn clinic() -> Browser {
    let clinic = Browser::open("clinic");
    clinic.viewport(1366, 768);
    start(&clinic, ROAD);
    right_hand_rests(&clinic);
    clinic.visit("#/layout");
    clinic.role("button", "All shifting left").click();
    clinic.visit("#/review");
    clinic
}

fn sit_down(browser: &Browser, role: &str, name: &str) {
    choose(browser, "review-role", role);
    browser.css(".review-seat input[type=text]").fill(name);
}

/// Chooses one of a row of answers by its words, as a pointer does.
fn choose(browser: &Browser, name: &str, words: &str) {
    let row = format!(".segment:has(input[name='{name}'])");
    let all = browser.css(&row).texts();
    let at = all.iter().position(|text| text == words);
    let one = browser
        .css(&row)
        .nth(at.unwrap_or_else(|| panic!("{words:?} is not among {all:?}")));
    one.scroll_into_view();
    one.click();
}

/// Opens a folded part by its words.
fn unfold(part: &Element<'_>, words: &str) {
    part.inner_css("summary").click();
    assert!(part.inner_css("summary").text().starts_with(words));
}

#[test]
fn looks() {
    let clinic = clinic();
    let Ok(shots) = std::env::var("REVIEW_SHOTS") else {
        return;
    };
    sit_down(&clinic, "clinician", "K. Example");
    for (width, dark) in [(1366, false), (1366, true), (390, false), (390, true)] {
        clinic.viewport(width, 768);
        clinic.media(Media {
            dark,
            ..Default::default()
        });
        clinic.screenshot_of_page(Path::new(&format!("{shots}/review-{width}-{dark}.png")));
        println!("{width} {}", overflow(&clinic));
    }
    clinic.print(Paper::A4).draw(Path::new(&shots), "paper");
}
