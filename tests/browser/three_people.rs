//! One plan and three people, each with a browser of their own: the shop plans and hands on, the
//! rider practises and changes, the therapist reads and decides, the shop puts all together, builds
//! and proves.

use leverwright_core::review::{self, MarkKind};
use leverwright_core::share;
use leverwright_tests::browser::{Browser, Paper};

use crate::desk::{ROAD, right_hand_rests, start, wait_until_saved};
use crate::practice::{answer as answer_call, wait_for_call};
use crate::review as clinic_page;
use crate::share::{follow, link, plan_in, put_together, take};
use crate::stand::{answer, ok_until, sign};

const NICKNAME: &str = "Siskin";
/// On the plain road bar: the button that the rider leaves for the lights, and the one that hurts.
const HOOD: &str = "slot-1.hood-button";
const PADDLE: &str = "left outer paddle";

/// The rider says of a button that it hurts.
fn mark(rider: &Browser) {
    if !rider.css(".mark-rows").is_shown() {
        let summary = rider.css("details > summary");
        let texts = summary.texts();
        let at = texts
            .iter()
            .position(|text| text.contains("Hurts, confuses, change"));
        let summary = summary.nth(at.expect("the rider can say so"));
        summary.scroll_into_view();
        rider.finger().tap(&summary);
    }
    let rows = rider.css(".mark-rows li");
    let at = rows.texts().iter().position(|text| text.contains(PADDLE));
    let hurts = rows
        .nth(at.expect("it is listed"))
        .inner_css("button")
        .nth(0);
    hurts.scroll_into_view();
    rider.finger().tap(&hurts);
    rider.wait_for("it is marked", || {
        hurts.attribute("aria-pressed").as_deref() == Some("true")
    });
}

/// The rider puts another function on one button: a tap on the function, a tap on the button.
fn change_one_button(rider: &Browser) {
    rider.visit("#/layout");
    let lights = rider.css("[id='tray-function:lights']");
    lights.scroll_into_view();
    rider.finger().tap(&lights);
    let hood = rider.css(&format!("[id='{HOOD}']"));
    hood.scroll_into_view();
    rider.finger().tap(&hood);
    hood.wait_for_text("lights");
    wait_until_saved(rider);
}

/// The therapist accepts the first finding that only hand use decides.
fn accept_one(clinic: &Browser) {
    let card = clinic.css(".review-cards .finding").nth(0);
    clinic_page::press(&card.inner_css("summary"));
    card.inner_css("textarea").fill("Seen on the closed lane.");
    clinic_page::press(&card.inner_css("button[type=submit]"));
    clinic
        .css(".review-cards .accepted")
        .wait_for_text("K. Example, clinician");
}

#[test]
fn one_plan_goes_through_three_hands_and_is_proved() {
    // The shop: a plan for a rider whose right hand rests, and a link.
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    right_hand_rests(&shop);
    shop.css(".nickname input").fill(NICKNAME);
    shop.press("Tab");
    shop.visit("#/layout");
    shop.role("button", "All shifting left").click();
    shop.role("button", "All brakes on left lever").click();
    wait_until_saved(&shop);
    let to_rider = link(&shop, true);

    // The rider, on a telephone, with one thumb: opens, practises, changes one button, sends back.
    let rider = Browser::open_phone("rider");
    follow(&rider, &to_rider);
    take(&rider);
    rider.finger().tap(&rider.role("link", "Try it"));
    rider
        .finger()
        .tap(&rider.role("button", "Start with one button"));
    wait_for_call(&rider, "Easier");
    for _ in 0..4 {
        answer_call(&rider);
    }
    rider.finger().tap(&rider.role("button", "Pause"));
    rider.finger().tap(&rider.role("button", "Stop"));
    rider.role("heading", "How it went").wait_until_shown();
    rider.finger().tap(&rider.role("button", "Keep"));
    mark(&rider);
    change_one_button(&rider);
    let from_rider = link(&rider, true);
    let changed = plan_in(&from_rider);
    assert_ne!(changed.layouts, plan_in(&to_rider).layouts);
    assert!(
        !changed.record.entries.is_empty(),
        "practice and mark go along"
    );

    // The therapist: reads, comments, accepts one finding, recommends, sends back.
    let clinic = Browser::open("clinic");
    clinic.viewport(1366, 768);
    follow(&clinic, &from_rider);
    take(&clinic);
    clinic.visit("#/review");
    clinic.css("main").wait_for_text("hurts");
    clinic_page::sit_down(&clinic, "clinician", "K. Example");
    clinic_page::record_comment(&clinic, "Try a softer glove first.");
    accept_one(&clinic);
    clinic_page::decide_on_changes(&clinic);
    clinic_page::press(&clinic.role("button", "Record the decision"));
    clinic
        .css(".review-record")
        .wait_for_text("Go on after these changes");
    wait_until_saved(&clinic);
    let from_clinic = link(&clinic, true);

    // The shop: what both did comes together; nothing of either is lost.
    for (came, from) in [(&from_rider, "rider"), (&from_clinic, "clinic")] {
        follow(&shop, came);
        shop.css("#came").wait_for_text("a copy of it is here");
        put_together(&shop);
        let now = plan_in(&link(&shop, true));
        assert_eq!(
            now.layouts, changed.layouts,
            "after what came from the {from}"
        );
    }
    let merged = plan_in(&link(&shop, true));
    assert_eq!(merged.record.entries, plan_in(&from_clinic).record.entries);
    let marks = review::marks(&merged);
    assert_eq!(marks, review::marks(&changed));
    assert_eq!(marks[0].kind, MarkKind::Hurts);
    assert_eq!(merged.accepted.len(), 1);

    // The sheet, and a check in which one button does nothing at first.
    shop.visit("#/sheet");
    let print = shop.print(Paper::A4).text();
    assert!(print.contains(NICKNAME), "{print}");
    shop.visit("#/stand/stand");
    ok_until(&shop, "press the left outer paddle");
    shop.finger().tap(&answer(&shop, "Nothing happened"));
    ok_until(&shop, "did not go as expected");
    shop.role("button", "Mended: do this step again").click();
    ok_until(&shop, "Every step is OK");
    sign(&shop, "Wired and working");
    shop.css(".proved").wait_for_text("Wired and working: yes");
    shop.visit("#/sheet");
    shop.css(".sheet-proved")
        .wait_for_text("Wired and working: yes, for revision");

    // Nobody's link was longer than a message takes.
    for link in [&to_rider, &from_rider, &from_clinic] {
        assert!(
            link.len() <= share::LONGEST_LINK,
            "{} characters",
            link.len()
        );
    }
}
