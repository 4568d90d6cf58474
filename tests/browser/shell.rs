//! The frame round every screen: ways, undo, messages, settings, rules, small screens, axe.

use crate::desk::{
    ROAD, overflow, pick, right_hand_rests, start, stored, wait_for_names, wait_until_saved,
};
use leverwright_tests::browser::{Browser, Media};

const SCREENS: [&str; 5] = ["Plans", "Rider", "Bike", "Layout", "Sheet"];

#[test]
fn screens_are_reached_by_their_names_and_take_the_focus() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    for name in SCREENS {
        shop.role("link", name).click();
        shop.role("heading", name).wait_until_shown();
        shop.wait_for("the heading has the focus", || {
            shop.focused() == ("heading".into(), name.into())
        });
        let title: String = shop.eval("return document.title");
        let wanted = match name {
            "Plans" => "Plans · Leverwright".to_owned(),
            _ => format!("{name} · {ROAD} · Leverwright"),
        };
        assert_eq!(title, wanted);
        assert_eq!(shop.css(".screens [aria-current=page]").text(), name);
    }
    shop.back();
    shop.role("heading", "Layout").wait_until_shown();
}

#[test]
fn further_screens_are_behind_one_button_that_says_where_one_is() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    shop.role("button", "More").click();
    shop.role("link", "Ride").click();
    shop.role("heading", "Ride").wait_until_shown();
    shop.css(".more-screens").wait_until_gone();
    shop.role("button", "More Ride").focus();
    shop.press("Enter");
    shop.press("Tab");
    assert_eq!(shop.focused().0, "link");
    shop.press("Escape");
    shop.css(".more-screens").wait_until_gone();
    assert_eq!(shop.focused(), ("button".into(), "More Ride".into()));
    // It goes with its screen, however that goes.
    shop.press("Enter");
    shop.css(".more-screens").wait_until_shown();
    shop.back();
    shop.css(".more-screens").wait_until_gone();
}

#[test]
fn the_list_of_further_screens_keeps_within_every_window() {
    let home = Browser::open_phone("home");
    start(&home, ROAD);
    for (width, height) in [(390_u32, 844_u32), (320, 640), (844, 390), (1280, 800)] {
        home.viewport(width, height);
        home.role("button", "More").click();
        let (left, top, list_width, list_height) = home.css(".more-screens").rect();
        assert!(left >= 0.0 && top >= 0.0, "{width}: {left} {top}");
        assert!(left + list_width <= f64::from(width), "{width}");
        assert!(top + list_height <= f64::from(height), "{width}");
        assert!(overflow(&home) <= 0.0, "{width}");
        home.role("button", "More").click();
    }
}

#[test]
fn the_bar_of_a_small_telephone_keeps_its_words_apart() {
    let home = Browser::open_phone("home");
    start(&home, ROAD);
    right_hand_rests(&home);
    home.viewport(320, 640);
    // Undo leaves something to redo, which takes room only then.
    assert!(!home.css(".undo-bar button").nth(1).is_shown());
    let outside: Vec<String> = home.eval(
        "return [...document.querySelectorAll('.screens > ul > li')].flatMap((li) => {
           const field = li.getBoundingClientRect();
           return [...li.querySelectorAll('a, .more-name, .missing-short')].filter((e) => {
             const words = document.createRange(); words.selectNodeContents(e);
             const r = words.getBoundingClientRect();
             return r.width && (r.left < field.left - 0.5 || r.right > field.right + 0.5);
           }).map((e) => e.textContent) })",
    );
    assert_eq!(outside, [""; 0]);
    // A scroll bar of the desk takes 15 px of this window; a telephone has none.
    let narrow: Vec<f64> = home.eval(
        "return [...document.querySelectorAll('.screens > ul > li, .undo-bar button')]
           .filter((e) => e.checkVisibility()).map((e) => e.getBoundingClientRect().width).filter((w) => w < 43)",
    );
    assert_eq!(narrow, [0.0; 0]);
    let undo = home.role("button", "Undo").centre();
    home.finger().tap(&home.role("button", "Undo"));
    home.role("button", "Redo").wait_until_shown();
    assert_eq!(home.role("button", "Undo").centre().x, undo.x);
}

#[test]
fn the_list_of_further_screens_is_at_the_thumb_and_over_messages() {
    let home = Browser::open_phone("home");
    start(&home, ROAD);
    right_hand_rests(&home);
    home.css(".status-line").wait_until_shown();
    home.finger().tap(&home.role("button", "More"));
    // The last of the list is what lies on top where it is tapped.
    let on_top: bool = home.eval(
        "const last = document.querySelector('.more-screens li:last-child');
         const r = last.getBoundingClientRect();
         return last.contains(document.elementFromPoint(r.x + r.width / 2, r.bottom - 4));",
    );
    assert!(on_top, "the list is covered");
    home.finger()
        .tap(&home.css(".more-screens a[href='#/settings']"));
    home.role("heading", "Settings").wait_until_shown();
    home.finger().tap(&home.role("radio", "Left"));
    home.wait_for("More stands on the left", || {
        home.css(".screens > ul > li.more").rect().0 < 195.0
    });
}

#[test]
fn what_is_missing_is_told_beside_each_screen() {
    let shop = Browser::open("shop");
    shop.viewport(1440, 900);
    start(&shop, ROAD);
    let missing = |name: &str| shop.css(&format!("#missing-{name}")).text();
    assert_eq!(missing("rider"), "12 questions open");
    assert!(
        missing("bike").ends_with("points open"),
        "{}",
        missing("bike")
    );
    assert!(missing("layout").contains("check"), "{}", missing("layout"));
    right_hand_rests(&shop);
    shop.css("#missing-layout").wait_for_text("must fix");
    // In fewer words where they would be cut.
    for width in [1440, 1439, 1280, 1024, 1023, 705] {
        shop.viewport(width, 900);
        let (told, cut): (usize, Vec<String>) = shop.eval(
            "const told = [...document.querySelectorAll('.missing, .missing-short')]
               .filter((e) => e.textContent && e.checkVisibility());
             const cut = told.filter((e) => e.scrollWidth > e.clientWidth);
             return [told.length, cut.map((e) => e.textContent)]",
        );
        assert_eq!((told, cut), (4, vec![]), "{width}");
    }
}

#[test]
fn a_keyboard_skips_to_the_screen() {
    let shop = Browser::open("shop");
    shop.visit("#/settings");
    shop.press("Tab");
    assert_eq!(shop.focused(), ("link".into(), "Skip to the screen".into()));
    shop.press("Enter");
    assert_eq!(shop.route(), "#/settings");
    let main: bool = shop.eval("return document.activeElement === document.querySelector('main')");
    assert!(main);
}

#[test]
fn undo_and_redo_answer_to_buttons_and_keys_but_not_while_typing() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    shop.visit("#/plans");
    let rename = |from: &str, to: &str| {
        pick(&shop, from, "Rename");
        shop.role("textbox", "Name of the plan").fill(to);
        shop.press("Enter");
        wait_for_names(&shop, &[to]);
    };
    rename(ROAD, "One");
    rename("One", "Two");
    let undo_label: String = shop.eval("return document.querySelector('#undo-label').textContent");
    assert_eq!(undo_label, "rename the plan");
    shop.press("Control+z");
    wait_for_names(&shop, &["One"]);
    shop.css("[role=status]")
        .wait_for_text("Undone: rename the plan.");
    shop.press("Control+z");
    wait_for_names(&shop, &[ROAD]);
    shop.press("Control+Shift+z");
    wait_for_names(&shop, &["One"]);
    shop.press("Control+y");
    wait_for_names(&shop, &["Two"]);
    shop.press("Meta+z");
    wait_for_names(&shop, &["One"]);
    shop.role("button", "Redo").click();
    wait_for_names(&shop, &["Two"]);
    shop.finger().tap(&shop.role("button", "Undo"));
    wait_for_names(&shop, &["One"]);

    pick(&shop, "One", "Rename");
    shop.type_text("x");
    shop.press("Control+z");
    assert_eq!(shop.role("textbox", "Name of the plan").value(), "One");
    shop.press("Escape");
    wait_for_names(&shop, &["One"]);
    wait_until_saved(&shop);
}

#[test]
fn settings_hold_and_are_kept_apart_from_plans() {
    let shop = Browser::open("shop");
    shop.visit("#/settings");
    assert!(stored(&shop).is_empty());
    let root = |name: &str| shop.css("html").attribute(name);
    for (choice, attribute, value) in [
        ("Dark", "data-theme", "dark"),
        ("High contrast", "data-theme", "high-contrast"),
        ("Light", "data-theme", "light"),
        ("Left", "data-thumb", "left"),
        ("All on the right", "data-lists", "right"),
    ] {
        let radio = shop.role("radio", choice);
        radio.scroll_into_view();
        shop.mouse().tap(&radio);
        shop.wait_for(&format!("{choice} holds"), || {
            root(attribute).as_deref() == Some(value)
        });
    }
    shop.reload();
    assert_eq!(root("data-theme").as_deref(), Some("light"));
    assert_eq!(root("data-thumb").as_deref(), Some("left"));
    assert_eq!(
        stored(&shop).into_keys().collect::<Vec<_>>(),
        ["leverwright/settings"]
    );
}

#[test]
fn tones_follow_the_device_until_chosen() {
    let shop = Browser::open("shop");
    shop.visit("#/settings");
    let dark = Media {
        dark: true,
        ..Media::default()
    };
    let paper = || shop.css("body").style("background-color");
    let light = paper();
    shop.media(dark);
    assert_ne!(paper(), light);
    shop.mouse().tap(&shop.role("radio", "Light"));
    shop.wait_for("the paper is light", || paper() == light);
    shop.mouse().tap(&shop.role("radio", "High contrast"));
    shop.wait_for("the paper is white", || paper() == "rgba(255, 255, 255, 1)");
}

#[test]
fn a_second_tap_does_not_count_where_it_is_filtered() {
    let shop = Browser::open("shop");
    shop.visit("#/settings");
    shop.mouse().tap(&shop.role("radio", "After 1 second"));
    std::thread::sleep(std::time::Duration::from_millis(1200));
    shop.role("link", "Plans").click();
    shop.role("heading", "Plans").wait_until_shown();
    let shared = shop.role("checkbox", "Others use this computer");
    std::thread::sleep(std::time::Duration::from_millis(1200));
    shared.scroll_into_view();
    let place = shared.centre();
    shop.mouse().tap_at(place);
    shop.mouse().tap_at(place);
    assert!(shared.is_selected());
    std::thread::sleep(std::time::Duration::from_millis(1200));
    shop.mouse().tap_at(place);
    assert!(!shared.is_selected());
}

#[test]
fn each_rule_has_its_page() {
    let shop = Browser::open("shop");
    shop.visit("#/rules");
    let titles = shop.css(".rule-list a").texts();
    assert!(titles.len() >= 30, "{titles:?}");
    for title in [&titles[0], &titles[titles.len() - 1]] {
        shop.visit("#/rules");
        shop.role("link", title).click();
        shop.role("heading", title).wait_until_shown();
        let headings = shop.css(".rule-text h2").texts();
        assert_eq!(
            headings,
            [
                "What it looks at",
                "Why",
                "What to do",
                "Where it comes from"
            ]
        );
        assert!(
            shop.css(".rule-text p")
                .texts()
                .iter()
                .all(|text| text.len() > 15)
        );
    }
    shop.visit("#/rules/no-such-rule");
    shop.role("heading", "No such rule").wait_until_shown();
}

#[test]
fn a_rule_s_page_fixes_what_it_found_in_the_open_plan() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    right_hand_rests(&shop);
    shop.visit("#/rules/live-button-under-resting-hand");
    let fix = shop.css(".finding .fixes button").nth(0);
    let before = shop.css(".finding").count();
    assert!(before > 0);
    fix.click();
    shop.wait_for("the finding is gone", || {
        shop.css(".finding").count() < before
    });
    shop.css("[role=status]").wait_for_text("Done: ");
    shop.role("button", "Undo").click();
    shop.wait_for("the finding is back", || {
        shop.css(".finding").count() == before
    });
}

#[test]
fn nothing_scrolls_sideways_on_a_small_screen_or_with_large_text() {
    let home = Browser::open_phone("home");
    start(&home, ROAD);
    // What undo would take back is long.
    right_hand_rests(&home);
    wait_until_saved(&home);
    for (width, percent) in [(320, 100), (1280, 100), (390, 200), (320, 200), (1280, 200)] {
        home.viewport(width, 700);
        home.text_size(percent);
        for route in [
            "#/plans",
            "#/settings",
            "#/rules",
            "#/rules/needed-function-missing",
            "#/rider",
            "#/bike",
            "#/layout",
            "#/sheet",
        ] {
            home.visit(route);
            home.reload();
            assert!(overflow(&home) <= 0.0, "{route} at {width} px, {percent} %");
        }
    }
}

#[test]
fn targets_are_large_enough_for_a_thumb() {
    let home = Browser::open_phone("home");
    start(&home, ROAD);
    for route in ["#/plans", "#/settings", "#/rules"] {
        home.visit(route);
        // WCAG 2.2 SC 2.5.5 (AAA): at least 44 by 44 CSS pixels.
        let small: Vec<String> = home.eval(
            "return [...document.querySelectorAll('button, a, input, summary')]
               .filter((e) => e.checkVisibility() && !e.closest('.skip') && e.tabIndex >= 0)
               .map((e) => [e.closest('label, li:has(> a:only-of-type)') ?? e, e])
               .filter(([box]) => { const r = box.getBoundingClientRect(); return r.width < 44 || r.height < 44; })
               .map(([, e]) => e.outerHTML)",
        );
        assert_eq!(small, [""; 0], "{route}");
    }
}

#[test]
fn on_a_telephone_the_ways_stand_at_the_thumb() {
    let home = Browser::open_phone("home");
    start(&home, ROAD);
    let (.., top, _, height) = home.css(".dock").rect();
    assert!((top + height - 844.0).abs() < 1.0, "{top} {height}");
    home.visit("#/settings");
    let undo_is_left = || home.css(".undo-bar").rect().0 < home.css(".screens").rect().0;
    assert!(!undo_is_left());
    home.finger().tap(&home.role("radio", "Left"));
    home.wait_for("undo stands on the left", undo_is_left);
}

#[test]
fn axe_core_objects_to_nothing_on_plans_settings_and_rules() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    for dark in [false, true] {
        shop.media(Media {
            dark,
            ..Media::default()
        });
        for route in [
            "#/plans",
            "#/settings",
            "#/rules",
            "#/rules/needed-function-missing",
        ] {
            shop.visit(route);
            shop.assert_accessible();
        }
        shop.visit("#/plans");
        shop.role("button", &format!("More {ROAD}")).click();
        shop.assert_accessible();
        shop.press("Escape");
        pick(&shop, ROAD, "Delete");
        shop.assert_accessible();
        shop.role("button", "Bring it back").click();
        wait_for_names(&shop, &[ROAD]);
    }
}

#[test]
fn all_buttons_stand_in_one_list_on_the_chosen_side() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    let middle = |selector: &str| shop.css(selector).nth(0).centre().x;
    shop.visit("#/layout");
    shop.css(".cockpit-frame.margins").wait_until_shown();
    for (choice, list_is_left) in [("All on the left", true), ("All on the right", false)] {
        shop.visit("#/settings");
        shop.mouse().tap(&shop.role("radio", choice));
        shop.visit("#/layout");
        shop.css(".cockpit-frame.list-beside").wait_until_shown();
        let drawn = middle(".cockpit-frame .drawn");
        let slots = shop.css(".cockpit-frame .slot-group .slot");
        assert!(slots.count() >= 6);
        for at in 0..slots.count() {
            assert_eq!(slots.nth(at).centre().x < drawn, list_is_left, "{choice}");
        }
        assert!(overflow(&shop) <= 0.0);
    }
}
