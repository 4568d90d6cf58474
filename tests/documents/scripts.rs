//! Any script goes through a file intact.

use leverwright_core::catalogue::{TemplateId, template};
use leverwright_core::document;
use leverwright_core::edit::{BikeEdit, Edit, PlanEdit, RiderEdit};
use leverwright_core::text::Text;

/// Words of our own in many scripts: joined letters, marks above and below,
/// right to left, beyond the basic plane, joined emoji, markup.
const NAMES: &[&str] = &[
    "Ærøskøbing–Čačak “ñandú”",
    "Дорога в гору",
    "Ανηφόρα",
    "رحلة الوادي",
    "טיול בעמק",
    "घाटी की सवारी",
    "சைக்கிள் பயணம்",
    "ขี่จักรยาน",
    "谷の道を走る",
    "골짜기 자전거",
    "騎車上山",
    "𐍈𐌰𐌹𐌺 𝒷𝒾𝓀𝑒",
    "🚲🏔️👩🏽‍🔧👨‍👩‍👧",
    "e\u{301} and \u{e9}",
    "left \u{200F}right marks\u{200E}",
    "zero\u{200D}width\u{200C}joiners",
    "<script>alert(\"1\")</script> & 'quotes' \\ / \u{7}",
];

#[test]
fn names_are_kept_letter_by_letter() {
    for name in NAMES {
        let name = Text::new(name);
        let plan = [
            Edit::Plan(PlanEdit::Name(name.clone())),
            Edit::Bike(BikeEdit::Name(name.clone())),
            Edit::Rider(RiderEdit::Nickname(name.clone())),
            Edit::Plan(PlanEdit::RenameLayout(name.clone())),
        ]
        .iter()
        .try_fold(template(TemplateId::Gravel).plan("x"), |plan, edit| {
            plan.apply(edit)
        })
        .expect("the edits are possible");
        let opened = document::read(document::write(&plan)).expect("it opens");
        assert_eq!(opened.plan, plan);
        assert_eq!(opened.plan.rider.nickname, name);
        assert_eq!(opened.notes, []);
    }
}

#[test]
fn escaped_letters_are_the_same_letters() {
    let plan = template(TemplateId::Gravel).plan("🚲é");
    let escaped = document::write(&plan).replace("🚲é", r"\uD83D\uDEB2\u00e9");
    assert_eq!(document::read(escaped).map(|o| o.plan), Ok(plan));
}

#[test]
fn what_does_not_print_or_reorders_is_taken_out_and_told() {
    let plan = template(TemplateId::Gravel).plan("NAME");
    let mended = |name: &str| {
        let text = document::write(&plan).replace("NAME", name);
        let opened = document::read(text).expect("it opens");
        let note = opened.notes.first().expect("a note");
        assert_eq!(note.place, "name");
        (opened.plan.name.to_string(), note.words.clone())
    };
    let (name, words) = mended(r"a\u0000b\n\u202Egnp.exe  ");
    assert_eq!(name, "a b gnp.exe");
    assert!(words.contains("do not print"), "{words}");
    let (name, words) = mended(&"x".repeat(Text::LIMIT + 1));
    assert_eq!(name.chars().count(), Text::LIMIT);
    assert!(words.contains("was cut"), "{words}");
}
