//! What the browser keeps: nothing is lost by a reload, a fault, a full store or another tab.

use crate::desk::{
    GRAVEL, ROAD, copies, names, pick, put, right_hand_rests, start, stored, template,
    wait_for_message, wait_for_names, wait_until_saved,
};
use leverwright_tests::browser::Browser;

/// Gives the open plan another name, from the list.
#[track_caller]
fn rename(shop: &Browser, from: &str, to: &str) {
    shop.visit("#/plans");
    pick(shop, from, "Rename");
    shop.role("textbox", "Name of the plan").fill(to);
    shop.press("Enter");
    wait_for_names(shop, &[to]);
    wait_until_saved(shop);
}

#[test]
fn a_reload_and_a_restart_keep_everything() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    rename(&shop, ROAD, "Over night");
    shop.reload();
    assert_eq!(shop.css(".masthead .plan-name").text(), "Over night");
    let shop = shop.reopen();
    shop.visit("#/rider");
    assert_eq!(shop.css(".masthead .plan-name").text(), "Over night");
    shop.visit("#/plans");
    wait_for_names(&shop, &["Over night"]);
}

#[test]
fn a_change_just_before_leaving_is_saved() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    shop.visit("#/plans");
    pick(&shop, ROAD, "Rename");
    shop.role("textbox", "Name of the plan")
        .fill("At the last moment");
    // Leaves within the rest that autosave takes.
    shop.eval::<()>("document.querySelector('.rename').requestSubmit(); location.reload()");
    shop.visit("#/plans");
    wait_for_names(&shop, &["At the last moment"]);
}

/// The key of the newest copy.
#[track_caller]
fn newest(shop: &Browser) -> String {
    let counter = |raw: &String| {
        let slot: serde_json::Value = serde_json::from_str(raw).expect("a copy");
        slot["counter"].as_u64()
    };
    stored(shop)
        .into_iter()
        .filter(|(key, _)| key.starts_with("leverwright/plan/"))
        .max_by_key(|(_, raw)| counter(raw))
        .expect("a copy")
        .0
}

#[test]
fn a_torn_copy_gives_way_to_the_one_before_and_can_be_downloaded() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    rename(&shop, ROAD, "First");
    rename(&shop, "First", "Second");
    shop.eval::<()>("window.stop()");
    let key = newest(&shop);
    let torn = {
        let whole = &stored(&shop)[&key];
        whole
            .chars()
            .take(whole.chars().count() / 2)
            .collect::<String>()
    };
    put(&shop, &key, &torn);
    shop.reload();
    wait_for_message(&shop, "One saved copy of “First” cannot be read");
    assert_eq!(shop.css(".masthead .plan-name").text(), "First");

    // New work goes beside what cannot be read.
    rename(&shop, "First", "Third");
    assert_eq!(stored(&shop)[&key], torn);
    shop.css(".plan-card")
        .inner_role("button", "Download the unreadable copy")
        .click();
    let letter = key.chars().last().expect("a letter");
    let id = key.split('/').nth(2).expect("a plan");
    let file = shop.wait_for_download(&format!("unreadable-{id}-{letter}.txt"));
    assert_eq!(std::fs::read_to_string(file).expect("a file"), torn);

    shop.css(".plan-card")
        .inner_role("button", "Discard it")
        .click();
    shop.css(".damage").wait_until_gone();
    assert!(!stored(&shop).contains_key(&key));
    shop.reload();
    assert_eq!(shop.css(".masthead .plan-name").text(), "Third");
    assert!(!shop.css(".notices").is_shown());
}

#[test]
fn a_plan_of_which_nothing_can_be_read_is_not_hidden() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    for key in copies(&shop) {
        put(&shop, &key, "\u{0}not a plan");
    }
    shop.visit("#/plans");
    shop.reload();
    shop.css(".plan-card")
        .wait_for_text("A plan of which no copy can be read");
    assert!(
        shop.role("button", ROAD).is_shown(),
        "a plan can be started"
    );
    shop.css(".plan-card")
        .inner_role("button", "Discard it")
        .click();
    shop.css(".plan-card").wait_until_gone();
}

/// Fills the browser's store to the last letter.
#[track_caller]
fn fill_store(shop: &Browser) {
    shop.eval::<()>(
        "let size = 1 << 22;
         let text = '';
         while (size > 0) {
           try { localStorage.setItem('filler', text + 'x'.repeat(size)); text += 'x'.repeat(size); }
           catch { size >>= 1; }
         }",
    );
}

#[test]
fn a_full_store_loses_nothing_and_says_so() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    rename(&shop, ROAD, "Saved");
    // Undo kept beside plans makes room for them first.
    let mut before = stored(&shop);
    before.retain(|key, _| key.starts_with("leverwright/plan/"));
    fill_store(&shop);
    pick(&shop, "Saved", "Rename");
    shop.role("textbox", "Name of the plan")
        .fill(&"A longer name ".repeat(20));
    shop.press("Enter");
    wait_for_message(&shop, "There is no room left in this browser");
    shop.css(".kept").wait_for_text("Not saved");
    for (key, value) in before {
        assert_eq!(stored(&shop).get(&key), Some(&value), "{key}");
    }
    shop.role("button", "Export the plan").click();
    let name = format!(
        "{}.leverwright.json",
        "A-longer-name-".repeat(4)[..50].trim_matches('-')
    );
    let file = shop.wait_for_download(&name);
    assert!(
        std::fs::read_to_string(file)
            .expect("a file")
            .contains("A longer name A longer")
    );

    shop.eval::<()>("localStorage.removeItem('filler')");
    shop.role("button", "Undo").click();
    wait_for_message(&shop, "There is room again");
    wait_until_saved(&shop);
}

#[test]
fn two_tabs_on_one_plan_never_overwrite_silently() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    shop.visit("#/plans");
    shop.open_tab();
    shop.visit("#/plans");
    shop.css(".kept").wait_for_text("open in another tab");
    shop.go_to_tab(0);
    shop.css(".kept").wait_for_text("open in another tab");

    pick(&shop, ROAD, "Rename");
    shop.role("textbox", "Name of the plan")
        .fill("From the first tab");
    shop.press("Enter");
    wait_for_names(&shop, &["From the first tab"]);
    wait_until_saved(&shop);

    shop.go_to_tab(1);
    wait_for_message(&shop, "is open in another tab, and was changed there");
    assert_eq!(shop.css(".masthead .plan-name").text(), ROAD);
    shop.role("button", "Take theirs").click();
    shop.css(".masthead .plan-name")
        .wait_for_text("From the first tab");
    wait_until_saved(&shop);
    // What was here can still be had.
    shop.role("button", "Undo").click();
    shop.css(".masthead .plan-name").wait_for_text(ROAD);
    wait_until_saved(&shop);

    shop.go_to_tab(0);
    wait_for_message(&shop, "was changed there");
    shop.role("button", "Keep mine as a copy").click();
    shop.css(".masthead .plan-name")
        .wait_for_text("From the first tab (copy)");
    wait_until_saved(&shop);
    wait_for_names(&shop, &[ROAD, "From the first tab (copy)"]);
}

#[test]
fn unsaved_work_beside_another_tab_s_becomes_a_copy_when_the_page_goes() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    shop.visit("#/plans");
    shop.open_tab();
    shop.visit("#/plans");
    pick(&shop, ROAD, "Rename");
    shop.role("textbox", "Name of the plan").fill("Theirs");
    shop.press("Enter");
    wait_until_saved(&shop);
    shop.go_to_tab(0);
    wait_for_message(&shop, "was changed there");
    pick(&shop, ROAD, "Rename");
    shop.role("textbox", "Name of the plan").fill("Mine");
    shop.press("Enter");
    shop.css(".kept").wait_for_text("Not saved");
    shop.reload();
    wait_for_names(&shop, &["Theirs", "Mine (copy)"]);
}

#[test]
fn a_plan_deleted_in_another_tab_does_not_come_back_by_itself() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    shop.visit("#/plans");
    shop.open_tab();
    shop.visit("#/plans");
    pick(&shop, ROAD, "Delete");
    wait_for_names(&shop, &[]);
    shop.go_to_tab(0);
    wait_for_message(&shop, "was deleted in another tab");
    assert_eq!(copies(&shop), [""; 0]);
    shop.role("button", "Close it").click();
    shop.css(".start").wait_until_shown();
    assert_eq!(copies(&shop), [""; 0]);
}

#[test]
fn a_shared_computer_keeps_nothing() {
    let clinic = Browser::open("clinic");
    clinic.visit("#/plans");
    clinic.role("checkbox", "Others use this computer").click();
    template(&clinic, GRAVEL).click();
    clinic.role("heading", "Rider").wait_until_shown();
    clinic.css(".kept").wait_for_text("In this page only");
    clinic.visit("#/plans");
    wait_for_names(&clinic, &[GRAVEL]);
    clinic.css(".plan-about").wait_for_text("in this page only");
    // A file is left where others can open it: that is said, and the focus stays at the menu.
    pick(&clinic, GRAVEL, "Export as a file");
    wait_for_message(&clinic, "It lies in the downloads of this computer");
    clinic.wait_for("the focus is where the act was chosen", || {
        clinic.focused() == ("button".into(), format!("More {GRAVEL}"))
    });
    std::thread::sleep(std::time::Duration::from_secs(1));
    assert!(stored(&clinic).is_empty(), "{:?}", stored(&clinic));
    let session: Vec<String> = clinic.eval("return Object.keys(sessionStorage)");
    assert_eq!(
        session,
        ["leverwright/shared-computer"],
        "a yes and no plan"
    );

    // On second thoughts it is kept, and then not.
    pick(&clinic, GRAVEL, "Keep in this browser");
    wait_until_saved(&clinic);
    assert!(!copies(&clinic).is_empty());
    pick(&clinic, GRAVEL, "Keep in this page only");
    clinic.css(".kept").wait_for_text("In this page only");
    assert!(stored(&clinic).is_empty(), "{:?}", stored(&clinic));
    clinic.reload();
    clinic.css(".start").wait_until_shown();
    assert_eq!(names(&clinic), [""; 0]);
    // That others use this computer is remembered for as long as the tab is open, and comes
    // before a file is opened.
    let others = clinic.role("checkbox", "Others use this computer");
    assert!(others.is_selected());
    assert!(stored(&clinic).is_empty(), "{:?}", stored(&clinic));
    others.focus();
    clinic.press("Tab");
    assert_eq!(clinic.focused(), ("button".into(), "Open a file".into()));
}

#[test]
fn hand_details_are_removed_from_every_stored_byte_and_from_undo() {
    let shop = Browser::open("shop");
    start(&shop, ROAD);
    right_hand_rests(&shop);
    let hoods = shop.css("label:has(input[name='position-hoods'])").nth(0);
    hoods.scroll_into_view();
    hoods.click();
    wait_until_saved(&shop);
    let says =
        |shop: &Browser, words: &str| stored(shop).values().any(|value| value.contains(words));
    // The codes of answers, as files write them.
    assert!(says(&shop, "brakes-hard"), "{:?}", stored(&shop));
    let undo = || {
        let undo = |key: &String| key.starts_with("leverwright/undo/");
        stored(&shop).into_iter().find(|(key, _)| undo(key))
    };
    assert!(undo().is_some_and(|(_, kept)| kept.contains("right hand rests")));
    shop.visit("#/plans");
    // A torn copy may hold them, too.
    let torn = stored(&shop)[&newest(&shop)][..2000].to_owned();
    let id = newest(&shop).split('/').nth(2).expect("a plan").to_owned();
    put(
        &shop,
        &format!("leverwright/plan/{id}/q"),
        &format!("{torn}brakes-hard"),
    );

    pick(&shop, ROAD, "Remove hand details");
    let dialog = shop.role("dialog", &format!("Remove hand details from “{ROAD}”?"));
    dialog.wait_until_shown();
    shop.role("button", "Cancel").click();
    assert!(says(&shop, "brakes-hard"));
    pick(&shop, ROAD, "Remove hand details");
    shop.role("button", "Remove them").click();
    wait_for_message(&shop, "Hand details are removed");
    for words in [
        "brakes-hard",
        "stays-on",
        "steady",
        "complete",
        "rests",
        "told",
    ] {
        assert!(!says(&shop, words), "{words}: {:?}", stored(&shop));
    }
    assert_eq!(copies(&shop).len(), 1);

    // Undo leads back to nothing that was said about hands.
    for _ in 0..5 {
        shop.press("Control+z");
    }
    wait_until_saved(&shop);
    assert!(!says(&shop, "brakes-hard"));
}
