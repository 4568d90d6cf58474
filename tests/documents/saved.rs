//! Files saved by earlier versions always open. A file in `saved/` is never
//! changed: when the format changes, newer samples are added beside it.

use leverwright_core::cockpit::HoldRun;
use leverwright_core::document::{self, Opened};
use leverwright_core::finding::Role;
use leverwright_core::function::Function;
use leverwright_core::gears::{Drivetrain, Millis, Rolling, ShiftSettings};
use leverwright_core::layout::LayoutId;
use leverwright_core::revision;
use leverwright_core::rider::{Answer, HandPlace};
use leverwright_core::units::Mm;
use std::fs;
use std::path::{Path, PathBuf};

fn samples() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("documents/saved");
    let mut files: Vec<PathBuf> = fs::read_dir(folder)
        .expect("the folder is there")
        .map(|entry| entry.expect("an entry").path())
        .collect();
    files.sort();
    files
}

fn open(file: &Path) -> (String, Opened) {
    let text = fs::read_to_string(file).expect("the sample can be read");
    match document::read(&text) {
        Ok(opened) => (text, opened),
        Err(error) => panic!("{}: {error}", file.display()),
    }
}

#[test]
fn every_sample_opens_and_is_written_as_a_plan_that_opens_alike() {
    assert!(samples().len() >= 4);
    for file in samples() {
        let (_, opened) = open(&file);
        let again = document::read(document::write(&opened.plan)).expect("it opens again");
        assert_eq!(again.plan, opened.plan, "{}", file.display());
    }
}

#[test]
fn samples_of_the_current_format_are_written_byte_for_byte() {
    let current = format!("v{}_", document::FORMAT);
    for file in samples() {
        let name = file.file_name().unwrap_or_default().to_string_lossy();
        if name.starts_with(&current) && !name.contains("by_hand") {
            let (text, opened) = open(&file);
            assert_eq!(document::write(&opened.plan), text, "{}", file.display());
        }
    }
}

#[test]
fn samples_say_what_they_said_when_they_were_saved() {
    let of = |name: &str| {
        let file = samples().into_iter().find(|f| f.ends_with(name));
        open(&file.expect("the sample is there")).1
    };
    let full = of("v1_full.json").plan;
    assert_eq!(full.rider.own_words.as_str(), "“Not over cobbles.”");
    assert_eq!(full.rider.fine_ride_presses, Answer::of(340));
    assert_eq!(full.rider.hands.right.place.value, Some(HandPlace::Rests));
    assert_eq!(full.bike.bar.width, Mm(423.7));
    assert_eq!(full.bike.controls.len(), 7);
    assert!(full.bike.brakes.runs[0].throw_tested.is_yes());
    assert_eq!(full.bike.system.holds, Some(HoldRun::Cogs(3)));
    assert_eq!((full.layouts.len(), full.current), (2, LayoutId(2)));
    assert_eq!(full.layout().chords[0].function, Function::FrontToggle);
    assert_eq!(full.accepted[0].role, Role::Clinician);
    // Saved before teeth were asked for: how many there are is all it says.
    assert_eq!(full.bike.drivetrain, Drivetrain::of_number(2, 12));
    assert_eq!(full.shift_settings, ShiftSettings::default());
    let geared = of("v1_gears.json").plan;
    let gears = geared.bike.drivetrain.gears().expect("teeth are counted");
    assert_eq!(gears.words(gears.easiest()), "34×34");
    assert_eq!(gears.wheel, Some(Rolling::Measured(Mm(2099.5))));
    assert_eq!(geared.shift_settings.ladder.by_hand[0].up.leaves, 6);
    assert_eq!(geared.shift_settings.pace.front, Millis(900));
    let recorded = of("v1_recorded.json").plan;
    let record = &recorded.record;
    assert_eq!((record.entries.len(), record.revisions.len()), (14, 4));
    let past = revision::plan_at(&recorded, 1).expect("the record reaches back");
    assert!(past.is_whole && past.plan.name == full.name);
    let by_hand = of("v1_by_hand.json");
    assert_eq!(by_hand.plan.name.as_str(), "Typed by hand");
    assert_eq!(by_hand.plan.unknown.len(), 2);
}
