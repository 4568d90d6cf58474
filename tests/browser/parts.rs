//! The parts of the program: the list of plans comes first, the rest when it is needed.

use crate::desk::{ROAD, copy_of_build, names, serve, start, template};
use leverwright_tests::browser::Browser;
use std::fs;
use std::path::{Path, PathBuf};

/// The files of the parts that come after the first.
fn later_parts(build: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(build).expect("the build");
    let files = entries.map(|entry| entry.expect("a file of the build").path());
    let is_later = |file: &PathBuf| {
        let name = file.file_name().unwrap_or_default().to_string_lossy();
        name.ends_with(".wasm") && !name.starts_with("leverwright-")
    };
    files.filter(is_later).collect()
}

const GONE: &str = "the server responded with a status of 404";

#[test]
fn a_first_visit_waits_for_the_first_part_only() {
    let folder = copy_of_build();
    let parts = later_parts(folder.path());
    assert!(parts.len() >= 2, "the build is in one piece: {parts:?}");
    let elsewhere = tempfile::tempdir().expect("room beside");
    let put_by = |part: &PathBuf| elsewhere.path().join(part.file_name().expect("a name"));
    for part in &parts {
        fs::rename(part, put_by(part)).expect("the part can be moved");
    }
    let server = serve(&folder);
    let home = Browser::open_at("home", &format!("{}/", server.origin()));
    home.expect_problem(GONE);
    home.expect_problem("HTTP status code is not ok");
    home.visit("#/plans");
    home.role("heading", "Plans").wait_until_shown();
    home.assert_accessible();
    // What cannot be had is told, and nothing is lost.
    template(&home, ROAD).click();
    home.css(".notices").wait_for_text("could not be fetched");
    assert_eq!(home.route(), "#/plans");
    home.assert_accessible();
    for part in &parts {
        fs::rename(put_by(part), part).expect("the part can be moved back");
    }
    home.role("button", "Try again").click();
    home.role("heading", "Rider").wait_until_shown();
    home.css(".masthead .plan-name").wait_for_text(ROAD);
    assert_eq!(home.css(".notices li").count(), 0);
}

#[test]
fn a_screen_whose_part_is_missing_says_so_and_comes_later() {
    let folder = copy_of_build();
    let server = serve(&folder);
    let home = Browser::open_at("home", &format!("{}/", server.origin()));
    home.visit("");
    start(&home, ROAD);
    let further = later_parts(folder.path());
    let further = further
        .iter()
        .find(|part| part.to_string_lossy().contains("further-"));
    let further = further.expect("the part with the further screens");
    let aside = folder.path().join("aside");
    // The browser must not have kept it meanwhile.
    home.eval_later::<bool>(
        "const done = arguments[arguments.length - 1];
         navigator.serviceWorker.getRegistrations()
           .then((all) => Promise.all(all.map((one) => one.unregister())))
           .then(() => caches.keys())
           .then((names) => Promise.all(names.map((name) => caches.delete(name))))
           .then(() => done(true));",
    );
    fs::rename(further, &aside).expect("the part can be moved");
    home.expect_problem(GONE);
    home.expect_problem("HTTP status code is not ok");
    home.visit("#/gears");
    home.css(".notices").wait_for_text("could not be fetched");
    home.role("heading", "Rider").wait_until_shown();
    fs::rename(&aside, further).expect("the part can be moved back");
    home.role("button", "Try again").click();
    home.role("heading", "Gears").wait_until_shown();
}

#[test]
fn a_plan_kept_here_opens_with_what_works_at_it() {
    let home = Browser::open("home");
    start(&home, ROAD);
    home.visit("#/plans");
    home.reload();
    home.css(".plan-card").wait_until_shown();
    home.css(".masthead .plan-name").wait_for_text(ROAD);
    assert_eq!(names(&home), [ROAD]);
    // A first visit has no demo plans until the desk is there; this one has them at once.
    assert_eq!(home.css(".demo-plans .template").count(), 3);
}
