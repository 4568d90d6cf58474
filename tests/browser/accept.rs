//! Accepting findings: in whose name, in what role, and when that ends.

use crate::desk::{ROAD, right_hand_rests, start};
use leverwright_tests::browser::{Browser, Element};

/// The finding that says these words.
fn finding<'a>(browser: &'a Browser, words: &str) -> Element<'a> {
    let mut at = None;
    browser.wait_for(&format!("a finding says {words:?}"), || {
        let says = browser.css(".finding .says").texts();
        at = says.iter().position(|text| text.contains(words));
        at.is_some()
    });
    browser.css(".finding").nth(at.unwrap_or_default())
}

const STEERS: &str = "only one that steers";

#[test]
fn nobody_signs_as_the_shop_unasked_and_a_changed_answer_ends_it() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    right_hand_rests(&shop);
    shop.visit("#/layout");
    let card = finding(&shop, STEERS);
    card.inner_css("summary").click();
    card.inner_css("textarea").fill("Seen on the closed lane.");
    card.inner_css("input[type=text]").fill("A. Fitter");
    card.inner_css("button[type=submit]").click();
    card.inner_css("[role=alert]:not(:empty)")
        .wait_for_text("Say in what role you accept it.");
    card.inner_role("radio", "clinician").click();
    card.inner_css("button[type=submit]").click();
    shop.css(".finding .accepted")
        .wait_for_text("A. Fitter, clinician");

    // The next one takes the name along, and asks for the role again.
    let next = finding(&shop, "Not asked yet about the left hand");
    next.inner_css("summary").click();
    assert_eq!(next.inner_css("input[type=text]").value(), "A. Fitter");
    assert_eq!(next.inner_css("input[type=radio]:checked").count(), 0);

    // What it rested on changes: it no longer counts, and is still told.
    shop.visit("#/rider");
    let answer = shop.css("label:has(input[name='left-stays-on'])").nth(2);
    answer.scroll_into_view();
    answer.click();
    shop.css("[role=status]")
        .wait_for_text("What was accepted rests on this, and is open again.");
    shop.visit("#/layout");
    let card = finding(&shop, STEERS);
    card.inner_css(".lapsed")
        .wait_for_text("It was accepted (A. Fitter, clinician");
    assert_eq!(shop.css(".finding .accepted").count(), 0);
    shop.assert_accessible();
}
