//! What is written opens again as the same plan.

use crate::plans::{any_plan, full, look_at};
use leverwright_core::Vocabulary;
use leverwright_core::catalogue::{DemoId, TemplateId, demo, template};
use leverwright_core::document;
use leverwright_core::plan::Plan;
use proptest::prelude::*;

#[track_caller]
fn check(plan: &Plan) {
    let text = document::write(plan);
    match document::read(&text) {
        Ok(opened) => {
            assert_eq!(&opened.plan, plan);
            assert_eq!(opened.notes, [], "{text}");
        }
        Err(error) => panic!("{error}\n{text}"),
    }
}

#[test]
fn every_template_and_demo() {
    for id in TemplateId::ALL {
        check(&template(*id).plan("Test"));
    }
    for id in DemoId::ALL {
        check(&demo(*id).plan);
    }
}

#[test]
fn a_plan_in_which_everything_is_said() {
    check(&full());
}

#[test]
fn a_mark_before_the_text_does_not_matter() {
    let text = format!("\u{FEFF}{}", document::write(&full()));
    assert_eq!(document::read(text).map(|opened| opened.plan), Ok(full()));
}

proptest! {
    #[test]
    fn any_plan_that_people_could_have_made(plan in any_plan()) {
        check(&plan);
        look_at(&plan);
    }
}
