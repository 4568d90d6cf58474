//! Without a network: the page kept in the browser, and the page in one file.

use crate::desk::{ROAD, copy_of_build, names, serve, start, template, wait_until_saved};
use leverwright_tests::browser::{Browser, Paper};
use std::fs;
use std::path::Path;
use tempfile::TempDir;
use xtask::tools;

/// Opens the page and waits until the browser keeps all of it.
fn visit_and_keep(browser: &Browser) {
    browser.visit("");
    browser.eval_later::<bool>(
        "const done = arguments[arguments.length - 1];
         navigator.serviceWorker.ready.then(() => done(true));",
    );
    browser.wait_for("the page is kept", || {
        browser.eval("return navigator.serviceWorker.controller !== null")
    });
}

/// As a newer build would: other files, another number.
fn make_newer(folder: &Path) {
    let page = folder.join("index.html");
    let html = fs::read_to_string(&page).expect("index.html");
    let newer = html.replace("content=\"Plans which", "content=\"Newer: plans which");
    assert_ne!(html, newer);
    fs::write(page, newer).expect("index.html can be written");
    let worker = folder.join("service-worker.js");
    let script = fs::read_to_string(&worker).expect("the worker");
    let newer = script.replace("const BUILD = '", "const BUILD = 'f");
    assert_ne!(script, newer);
    fs::write(worker, newer).expect("the worker can be written");
}

fn is_newer(browser: &Browser) -> bool {
    browser
        .eval("return document.querySelector('meta[name=description]').content.startsWith('Newer')")
}

/// Asks the server for a newer version, as the browser does by itself now and then.
fn look_for_newer(browser: &Browser) {
    browser.eval_later::<bool>(
        "const done = arguments[arguments.length - 1];
         navigator.serviceWorker.getRegistration()
           .then((found) => found.update()).then(() => done(true));",
    );
}

/// Where the single file lies after somebody copied it under a name of their own.
fn one_file_in(folder: &TempDir) -> String {
    let file = folder.path().join("plans and tools.html");
    fs::copy(tools::dist().join("leverwright.html"), &file).expect("the build has the single file");
    format!("file://{}", file.display()).replace(' ', "%20")
}

const NEWER: &str = "Start the newer version";

#[test]
fn the_page_opens_and_works_when_the_server_is_gone() {
    let folder = copy_of_build();
    let server = serve(&folder);
    let home = Browser::open_at("home", &format!("{}/", server.origin()));
    visit_and_keep(&home);
    drop(server);
    home.reload();
    start(&home, ROAD);
    home.visit("#/layout");
    home.role("button", "All shifting left").click();
    wait_until_saved(&home);
    home.reload();
    home.css(".cockpit").wait_until_shown();
    home.visit("#/sheet");
    let text = home.print(Paper::A4).text();
    assert!(text.contains(ROAD), "{text}");
}

#[test]
fn a_newer_version_is_announced_and_starts_when_told_to() {
    let folder = copy_of_build();
    let server = serve(&folder);
    let home = Browser::open_at("home", &format!("{}/", server.origin()));
    visit_and_keep(&home);
    start(&home, ROAD);
    make_newer(folder.path());
    home.reload();
    // Still the older one, whole.
    assert!(!is_newer(&home));
    home.css(".notices").wait_for_text("A newer version");
    home.visit("#/rider");
    home.role("button", "Left hand rides, presses and brakes easily")
        .click();
    home.role("button", NEWER).click();
    home.wait_for("the newer version runs", || is_newer(&home));
    // What was changed a moment before is there.
    home.css(".kept").wait_for_text("Saved in this browser");
    home.visit("#/plans");
    assert_eq!(names(&home), [ROAD]);
    let caches: Vec<String> =
        home.eval_later("const done = arguments[arguments.length - 1]; caches.keys().then(done);");
    assert_eq!(caches.len(), 1, "the older build is forgotten: {caches:?}");
}

#[test]
fn a_newer_version_waits_for_a_plan_that_is_in_the_page_only() {
    let folder = copy_of_build();
    let server = serve(&folder);
    let clinic = Browser::open_at("clinic", &format!("{}/", server.origin()));
    visit_and_keep(&clinic);
    clinic.role("checkbox", "Others use this computer").click();
    template(&clinic, ROAD).click();
    clinic.role("heading", "Rider").wait_until_shown();
    make_newer(folder.path());
    look_for_newer(&clinic);
    clinic.role("button", NEWER).click();
    clinic
        .css(".notices")
        .wait_for_text("The newer version has to wait");
    clinic.visit("#/plans");
    assert_eq!(names(&clinic), [ROAD]);
    clinic.role("button", &format!("More {ROAD}")).click();
    clinic.role("menuitem", "Export as a file").click();
    clinic.role("button", NEWER).click();
    clinic.css(".start").wait_until_shown();
}

#[test]
fn one_file_opens_from_disk_keeps_plans_and_prints() {
    let folder = TempDir::new().expect("a folder");
    let address = one_file_in(&folder);
    let clinic = Browser::open_at("clinic", &address);
    clinic.visit("");
    clinic
        .css(".shared-computer")
        .wait_for_text("This page was opened from a file");
    start(&clinic, ROAD);
    clinic.visit("#/layout");
    clinic.role("button", "All shifting left").click();
    wait_until_saved(&clinic);
    clinic.reload();
    clinic.css(".cockpit").wait_until_shown();
    clinic.visit("#/settings");
    clinic
        .css("main")
        .wait_for_text("This is Leverwright in one file");
    clinic.assert_accessible();
    clinic.visit("#/sheet");
    let text = clinic.print(Paper::A4).text();
    assert!(text.contains(ROAD), "{text}");
    assert!(
        clinic.requests().iter().all(|request| *request == address
            || request.starts_with(&format!("{address}#"))
            || request.starts_with("data:")
            || request.starts_with("blob:")),
        "{:#?}",
        clinic.requests()
    );
}

#[test]
fn the_plan_is_offered_as_a_file_where_it_may_not_last() {
    let folder = TempDir::new().expect("a folder");
    let clinic = Browser::open_at("clinic", &one_file_in(&folder));
    start(&clinic, ROAD);
    clinic.visit("#/layout");
    for _ in 0..7 {
        clinic.role("button", "All shifting left").click();
        clinic.role("button", "All shifting right").click();
    }
    clinic
        .css(".notices")
        .wait_for_text("Export the plan now and then");
    clinic.role("button", "Export the plan").click();
    clinic
        .css(".notices")
        .inner_role("button", "Export the plan")
        .wait_until_gone();
    clinic.wait_for("the file is there", || {
        fs::read_dir(clinic.downloads()).is_ok_and(|files| files.count() == 1)
    });
}
