//! The list of plans, by mouse, touch and keyboard; files; faulty files.

use crate::desk::{
    GRAVEL, ROAD, copies, file, file_field, names, open_file, pick, start, stored, template,
    wait_for_message, wait_for_names, wait_until_saved,
};
use leverwright_tests::browser::Browser;

#[test]
fn a_plan_is_started_by_mouse_touch_and_keyboard() {
    let shop = Browser::open("shop");
    shop.visit("");
    assert!(shop.css(".start").is_shown());
    shop.mouse().tap(&template(&shop, ROAD));
    shop.role("heading", "Rider").wait_until_shown();
    assert_eq!(shop.route(), "#/rider");
    wait_until_saved(&shop);

    shop.visit("#/plans");
    shop.tab_to("button", GRAVEL);
    shop.press("Enter");
    shop.role("heading", "Rider").wait_until_shown();
    wait_until_saved(&shop);

    shop.visit("#/plans");
    shop.finger().tap(&template(&shop, ROAD));
    shop.role("heading", "Rider").wait_until_shown();
    wait_until_saved(&shop);
    shop.visit("#/plans");
    wait_for_names(&shop, &[ROAD, GRAVEL, "Road drop bar, 2x12 2"]);
}

#[test]
fn every_template_starts_a_plan_of_its_own() {
    let shop = Browser::open("shop");
    shop.visit("");
    let words = shop.css(".templates .template").texts();
    assert_eq!(words.len(), 12, "{words:?}");
    for template in &words {
        shop.visit("#/plans");
        shop.role("button", template).click();
        shop.role("heading", "Rider").wait_until_shown();
    }
    wait_until_saved(&shop);
    shop.visit("#/plans");
    wait_for_names(&shop, &words.iter().map(String::as_str).collect::<Vec<_>>());
}

#[test]
fn a_plan_is_renamed_by_keyboard_alone() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    shop.visit("#/plans");
    shop.tab_to("button", &format!("More {ROAD}"));
    shop.press("Enter");
    assert_eq!(shop.focused(), ("menuitem".into(), "Rename".into()));
    shop.press_all(&["ArrowDown", "ArrowUp", "Enter"]);
    assert_eq!(shop.focused().0, "textbox");
    shop.type_text("Ágnes, 後輪 – tour");
    shop.press("Enter");
    wait_for_names(&shop, &["Ágnes, 後輪 – tour"]);
    wait_until_saved(&shop);
    shop.reload();
    wait_for_names(&shop, &["Ágnes, 後輪 – tour"]);
    assert_eq!(
        shop.css(".masthead .plan-name").text(),
        "Ágnes, 後輪 – tour"
    );
}

#[test]
fn escape_leaves_the_menu_and_the_name() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    shop.visit("#/plans");
    shop.tab_to("button", &format!("More {ROAD}"));
    shop.press_all(&["Enter", "Escape"]);
    assert_eq!(shop.focused(), ("button".into(), format!("More {ROAD}")));
    shop.press_all(&["Enter", "Enter"]);
    shop.type_text("never");
    shop.press("Escape");
    wait_for_names(&shop, &[ROAD]);
}

#[test]
fn a_duplicate_is_a_plan_of_its_own() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    shop.visit("#/plans");
    pick(&shop, ROAD, "Duplicate");
    wait_for_names(&shop, &[ROAD, "Road drop bar, 2x12 (copy)"]);
    pick(&shop, "Road drop bar, 2x12 (copy)", "Rename");
    shop.role("textbox", "Name of the plan")
        .fill("Another idea");
    shop.role("button", "Save the name").click();
    wait_for_names(&shop, &[ROAD, "Another idea"]);
    wait_until_saved(&shop);
    shop.reload();
    wait_for_names(&shop, &[ROAD, "Another idea"]);
}

#[test]
fn a_deleted_plan_comes_back_with_all_its_copies() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    shop.visit("#/plans");
    pick(&shop, ROAD, "Rename");
    shop.role("textbox", "Name of the plan").fill("Kept");
    shop.press("Enter");
    wait_for_names(&shop, &["Kept"]);
    wait_until_saved(&shop);
    let before = copies(&shop);
    assert_eq!(before.len(), 2);

    pick(&shop, "Kept", "Delete");
    wait_for_names(&shop, &[]);
    assert_eq!(copies(&shop), [""; 0]);
    wait_for_message(&shop, "“Kept” is deleted");
    shop.role("button", "Bring it back").click();
    wait_for_names(&shop, &["Kept"]);
    assert_eq!(copies(&shop), before);
    assert_eq!(shop.css(".masthead .plan-name").text(), "Kept");
    assert!(shop.role("button", "Undo").is_shown());
    shop.role("button", "Undo").click();
    wait_for_names(&shop, &[ROAD]);
}

#[test]
fn a_deleted_plan_stays_away_once_its_message_is_dismissed() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    shop.visit("#/plans");
    pick(&shop, ROAD, "Delete");
    shop.role("button", "Dismiss").click();
    shop.css(".notices").wait_until_gone();
    shop.reload();
    shop.css(".start").wait_until_shown();
    assert_eq!(names(&shop), [""; 0]);
    assert!(stored(&shop).is_empty(), "{:?}", stored(&shop));
}

#[test]
fn an_exported_plan_opens_in_another_profile() {
    let shop = Browser::open("shop");
    start(&shop, GRAVEL);
    shop.visit("#/plans");
    pick(&shop, GRAVEL, "Rename");
    shop.role("textbox", "Name of the plan")
        .fill("Tür <b>&amp;</b> 🚲/..");
    shop.press("Enter");
    wait_for_names(&shop, &["Tür <b>&amp;</b> 🚲/.."]);
    pick(&shop, "Tür <b>&amp;</b> 🚲/..", "Export as a file");
    let exported = shop.wait_for_download("Tür-b-amp-b.leverwright.json");

    let home = Browser::open_phone("home");
    home.visit("#/plans");
    open_file(&home, &exported);
    wait_for_names(&home, &["Tür <b>&amp;</b> 🚲/.."]);
    wait_until_saved(&home);
    pick(&home, "Tür <b>&amp;</b> 🚲/..", "Export as a file");
    let again = home.wait_for_download("Tür-b-amp-b.leverwright.json");
    let read = |path| std::fs::read_to_string(path).expect("an exported file");
    assert_eq!(read(exported), read(again));
}

#[test]
fn a_dropped_file_is_opened() {
    let shop = Browser::open("shop");
    start(&shop, GRAVEL);
    shop.visit("#/plans");
    pick(&shop, GRAVEL, "Export as a file");
    let exported = shop.wait_for_download("Gravel-drop-bar-1x12.leverwright.json");
    let text = std::fs::read_to_string(exported).expect("an exported file");
    shop.eval_with::<()>(
        "const data = new DataTransfer();
         data.items.add(new File([arguments[0]], 'dropped.json', { type: 'application/json' }));
         const place = document.querySelector('.plans');
         for (const type of ['dragover', 'drop'])
           place.dispatchEvent(new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true }))",
        vec![text.into()],
    );
    // The plan that it was exported from is here: nothing is opened over it unasked.
    shop.role("button", "Open as a new plan").click();
    shop.role("heading", "Layout").wait_until_shown();
    shop.css(".status-line")
        .wait_for_text("beside another of the same name");
    shop.visit("#/plans");
    wait_for_names(&shop, &[GRAVEL, GRAVEL]);
}

#[test]
fn a_faulty_file_is_told_in_a_sentence_and_the_open_plan_stays() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    shop.visit("#/plans");
    pick(&shop, ROAD, "Export as a file");
    let exported = shop.wait_for_download("Road-drop-bar-2x12.leverwright.json");
    let whole = std::fs::read_to_string(exported).expect("an exported file");
    let before = copies(&shop);

    let side = whole.replacen("\"left\"", "\"<img src=x onerror=alert(1)>\"", 1);
    assert_ne!(side, whole);
    let faulty: [(&str, Vec<u8>); 8] = [
        ("empty.json", Vec::new()),
        (
            "truncated.json",
            whole.as_bytes()[..whole.len() / 2].to_vec(),
        ),
        ("huge.json", vec![b' '; 3_000_000]),
        (
            "deep.json",
            [vec![b'['; 200_000], vec![b']'; 200_000]].concat(),
        ),
        ("noise.json", (0..=255).cycle().take(5000).collect()),
        ("other.json", b"{\"something\": \"else\"}".to_vec()),
        (
            "later.json",
            whole
                .replacen("\"format\": 1", "\"format\": 99", 1)
                .into_bytes(),
        ),
        ("markup.json", side.into_bytes()),
    ];
    for (name, content) in faulty {
        let path = file(&shop, name, content);
        file_field(&shop).choose_file(&path);
        wait_for_message(&shop, &format!("“{name}” was not opened."));
        let said = shop.css(".notices li:first-child p").text();
        let reason = said.trim_start_matches(&format!("“{name}” was not opened."));
        assert!(reason.len() > 20 && reason.len() < 400, "{said}");
        assert_eq!(shop.css(".notices img, .plans img").count(), 0);
    }
    wait_for_names(&shop, &[ROAD]);
    assert_eq!(copies(&shop), before);
    assert_eq!(shop.css(".masthead .plan-name").text(), ROAD);
}

#[test]
fn markup_in_a_file_s_own_name_is_only_text() {
    let shop = Browser::open("shop");
    shop.visit("#/plans");
    let path = file(&shop, "<img src=x onerror=alert(1)>.json", "{}");
    file_field(&shop).choose_file(&path);
    wait_for_message(&shop, "“<img src=x onerror=alert(1)>.json” was not opened.");
    assert_eq!(shop.css(".notices img").count(), 0);
}
