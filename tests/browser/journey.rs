//! The shop's whole way, as a new user goes it: from a template to a printed sheet, and the same
//! sheet from the exported file in another browser.

use crate::desk::{open_file, start, wait_until_saved};
use leverwright_tests::browser::{Browser, Paper};

const PODS: &str = "Road drop bar, 2x12, with tops pods and sprint buttons";

#[test]
fn from_a_template_to_the_same_sheet_in_another_browser() {
    let shop = Browser::open("shop");
    start(&shop, PODS);
    shop.role("button", "Left hand rides, presses and brakes easily")
        .click();
    shop.role(
        "button",
        "Right hand rests on the bar and does nothing else",
    )
    .click();

    shop.visit("#/layout");
    shop.css("main").wait_for_text("must fix");
    shop.role("button", "All shifting left").click();
    shop.role("button", "All brakes on left lever").click();
    let still_live = || {
        let says = shop.css(".finding .says").texts();
        says.iter()
            .filter(|text| text.contains("sprint button is live"))
            .count()
    };
    shop.wait_for("the sprint button is live under the right hand", || {
        still_live() == 1
    });
    shop.role("button", "Unplug the right sprint button")
        .click();
    shop.wait_for("the fix took the finding away", || still_live() == 0);

    shop.role("button", "Undo").click();
    shop.wait_for("undo brings it back", || still_live() == 1);
    shop.role("button", "Redo").click();
    shop.wait_for("redo takes it away", || still_live() == 0);

    wait_until_saved(&shop);
    shop.reload();
    shop.wait_for("everything is still there after a reload", || {
        shop.css(".finding .says").count() > 0 && still_live() == 0
    });

    // Undo is kept with the plan.
    shop.role("button", "Undo").click();
    shop.wait_for("undo works after the reload", || still_live() == 1);
    shop.role("button", "Redo").click();
    shop.wait_for("and so does redo", || still_live() == 0);
    wait_until_saved(&shop);

    shop.visit("#/sheet");
    let a4 = shop.print(Paper::A4);
    let letter = shop.print(Paper::Letter);
    for print in [&a4, &letter] {
        let text = print.text();
        assert!(text.contains("NOT READY"), "the throw is untested: {text}");
        assert!(text.contains("left outer paddle"), "{text}");
    }

    shop.visit("#/plans");
    crate::desk::pick(&shop, PODS, "Export as a file");
    // A long name is cut.
    let name = "Road-drop-bar-2x12-with-tops-pods-and-sprint-butto.leverwright.json";
    let file = shop.wait_for_download(name);

    let other = Browser::open("other");
    other.visit("#/plans");
    open_file(&other, &file);
    other.css("main").wait_for_text(PODS);
    other.visit("#/sheet");
    other.css("main").wait_for_text("NOT READY");
    assert_eq!(plain(&other.print(Paper::A4).text()), plain(&a4.text()));
}

/// The words of a print, however they were broken into lines.
fn plain(text: &str) -> Vec<String> {
    text.split_whitespace().map(str::to_owned).collect()
}
