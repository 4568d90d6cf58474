//! What is handed on opens again, and nothing else does.

use proptest::prelude::*;

use super::content::light;
use super::{
    Along, OPENS, ShareError, content, fragment_of, link, open, packed, practice_left, qr_of, stays,
};
use crate::catalogue::{DemoId, TemplateId, demo, template};
use crate::document::{self, MOST_BYTES};
use crate::edit::{Edit, LayoutEdit, RecordEdit, RiderEdit};
use crate::finding::Role;
use crate::history::History;
use crate::merge::{Merge, Stand};
use crate::plan::Plan;
use crate::record::{Desk, Matter, PartKey, Pin, Practised};
use crate::review::{Audience, Basis, Decision, Review};
use crate::revision;
use crate::testing::plan;
use crate::vocabulary::Vocabulary;

const ADDRESS: &str = "https://example.org/leverwright/";

fn travelled(plan: &Plan) -> Plan {
    let link = link(ADDRESS, plan).expect("it fits into a link");
    let packed = fragment_of(&link).expect("it is a link to a plan");
    open(packed).expect("it opens").plan
}

fn any_along() -> impl Strategy<Value = Along> {
    prop::sample::select(Along::ALL)
}

proptest! {
    #[test]
    fn a_link_opens_as_what_was_sent(plan in plan(), along in any_along()) {
        let sent = content(&plan, along);
        if let Ok(link) = link(ADDRESS, &sent) {
            let opened = open(fragment_of(&link).expect("it is a link to a plan"));
            prop_assert_eq!(opened.map(|opened| opened.plan), Ok(light(&sent)));
        }
    }

    #[test]
    fn without_rider_details_nothing_about_the_rider_goes_along(plan in plan()) {
        for along in [Along::WithoutRider, Along::Layout] {
            let sent = content(&plan, along);
            prop_assert!(!sent.has_hand_details());
            prop_assert!(sent.rider.nickname.is_empty() && sent.accepted.is_empty());
            prop_assert!(sent.record.entries.iter().all(|e| e.by.is_empty()));
            // It is still the same revision.
            prop_assert_eq!(revision::code(&sent), revision::code(&plan));
        }
    }

    #[test]
    fn a_copy_that_comes_back_unchanged_changes_nothing(plan in plan(), along in any_along()) {
        let back = light(&content(&plan, along));
        let joined = crate::merge::join(&plan, &back);
        prop_assert_eq!(joined, crate::merge::join(&plan, &plan));
    }

    #[test]
    fn no_text_panics_as_a_link(text in any::<String>(), base64 in "[A-Za-z0-9_-]{0,300}") {
        let _ = open(&text);
        let _ = open(&base64);
    }

    #[test]
    fn a_link_cut_off_or_changed_is_refused(cut in 0.0..1.0f64, at in 0.0..1.0f64) {
        let link = link(ADDRESS, &content(&demo(DemoId::Wren).plan, Along::WithRider));
        let link = link.expect("it fits into a link");
        let packed = fragment_of(&link).expect("it is a link to a plan");
        let place = |share: f64| (share * packed.len() as f64) as usize;
        let cut = &packed[..place(cut)];
        prop_assert!(open(cut).is_err());
        let mut changed = packed.as_bytes().to_vec();
        let byte = &mut changed[place(at)];
        *byte = if *byte == b'A' { b'B' } else { b'A' };
        let changed = String::from_utf8(changed).expect("letters");
        // The last character may carry bits that no byte needs.
        if place(at) + 1 < packed.len() {
            prop_assert!(open(&changed).is_err());
        }
    }
}

fn refusal(packed: &str) -> String {
    open(packed).expect_err("it is refused").to_string()
}

#[test]
fn refusals_are_words() {
    let whole = packed::pack(document::compact(&demo(DemoId::Wren).plan).as_bytes());
    assert_eq!(
        refusal(""),
        "The link is empty after its address. Ask for the whole link."
    );
    assert_eq!(
        refusal(&whole[..whole.len() / 2]),
        "The link is cut off: its end is missing. Ask for the whole link, or for a file."
    );
    assert_eq!(
        refusal(&whole.replacen('A', "%41", 1).replacen('%', " ", 1)),
        format!(
            "The link holds “ ”, which no link to a plan does (character {} after “#/open/”). Copy it again, from its first character to its last.",
            whole.find('A').expect("an A") + 1
        )
    );
    assert_eq!(
        refusal(&"A".repeat(70_000)),
        "The link is too long: 70000 characters, and a plan has at most 65536. It is not opened."
    );
    assert!(refusal("AAAA").starts_with("The link was damaged on its way"));
    let other = packed::pack(b"{\"some\": \"json\"}");
    assert!(refusal(&other).starts_with("What the link holds cannot be opened. The file is JSON"));
    let newer = packed::pack(b"{\"leverwright\": \"plan\", \"format\": 99}");
    assert!(
        refusal(&newer).contains("update the app"),
        "{}",
        refusal(&newer)
    );
}

#[test]
fn a_bomb_is_refused_before_it_swells() {
    let bomb = packed::pack(&vec![b' '; 20 * MOST_BYTES]);
    assert!(bomb.len() < super::LONGEST_OPENED, "{}", bomb.len());
    assert!(matches!(
        open(&bomb),
        Err(ShareError::Swells { most: MOST_BYTES })
    ));
}

#[test]
fn what_does_not_fit_into_a_link_is_refused_with_a_way_out() {
    let mut history = History::new(template(TemplateId::RoadPods).plan("Test"));
    for n in 0..250 {
        let text = format!(
            "word {n} {:x}",
            crate::record::Code::of(&n.to_string()).to_string().len() * n * 7919
        );
        let comment = Matter::Comment {
            on: Pin::Whole,
            audience: Audience::Everyone,
            text: format!("{text} {}", crate::record::Code::of(&text))
                .as_str()
                .into(),
        };
        history
            .commit(&by(Role::Shop, comment))
            .expect("a comment is possible");
    }
    let refused = link(ADDRESS, &content(history.plan(), Along::WithRider));
    let words = refused.expect_err("it is too long").to_string();
    assert!(
        words.ends_with("Send the plan as a file, or leave the rider details out."),
        "{words}"
    );
    assert!(link(ADDRESS, &content(history.plan(), Along::WithoutRider)).is_ok());
}

fn by(role: Role, matter: Matter) -> Edit {
    Edit::Record(RecordEdit {
        by: "N.".into(),
        role,
        date: None,
        layout: None,
        matter,
    })
}

#[test]
fn only_links_to_plans_are_taken_for_such() {
    let packed = "eJyr";
    let link = format!("{ADDRESS}#{OPENS}{packed}");
    assert_eq!(fragment_of(&link), Some(packed));
    for other in [ADDRESS, "https://example.org/#/layout", "#open"] {
        assert_eq!(fragment_of(other), None, "{other}");
    }
}

#[test]
fn what_is_between_rider_and_clinician_stays_there() {
    let private = Matter::Comment {
        on: Pin::Whole,
        audience: Audience::RiderAndClinician,
        text: "between us".into(),
    };
    let mut history = History::new(template(TemplateId::RoadPods).plan("Test"));
    history
        .commit(&by(Role::Rider, private))
        .expect("a comment is possible");
    let session = Matter::Practice(Practised {
        layout: history.plan().current,
        calls: 10,
        right_first: 9,
        wrong: 1,
        late: None,
        presses: Vec::new(),
        mixed_up: Vec::new(),
    });
    history
        .commit(&by(Role::Rider, session))
        .expect("a session is kept");
    let entries = |plan: &Plan, along| content(plan, along).record.entries.len();
    let plan = history.plan().clone();
    assert_eq!(Along::choices(&demo(DemoId::Wren).plan).len(), 2);
    assert_eq!(
        Along::choices(&plan).last(),
        Some(&Along::RiderAndClinician)
    );
    assert_eq!(entries(&plan, Along::WithRider), 0);
    assert_eq!(entries(&plan, Along::RiderAndClinician), 1);
    // Where all else goes along, practice that stays is told, with the way to send it.
    let of_session = plan.record.entries[1].id;
    for role in [None, Some(Role::Rider)] {
        let left = practice_left(&plan, Along::WithRider, role).expect("it stays");
        assert_eq!(left.may_include, [of_session]);
        assert!(left.words.starts_with("Your practice stays"));
    }
    let left = practice_left(&plan, Along::WithRider, Some(Role::Shop)).expect("it stays");
    assert_eq!(left.may_include, []);
    assert_eq!(practice_left(&plan, Along::WithoutRider, None), None);
    let sent = Matter::Sent(of_session);
    history
        .commit(&by(Role::Rider, sent))
        .expect("it can be sent");
    assert_eq!(entries(history.plan(), Along::WithRider), 2);
    assert_eq!(practice_left(history.plan(), Along::WithRider, None), None);
    assert_eq!(entries(history.plan(), Along::WithoutRider), 0);
}

/// Neither what was said of the hands before, nor a digest of it.
#[test]
fn the_past_of_a_plan_tells_nothing_about_the_rider_either() {
    let mut history = History::new(template(TemplateId::RoadPlain).plan("Test"));
    history.sit_down(Desk {
        by: "A. Fitter".into(),
        role: Some(Role::Shop),
        date: None,
    });
    for edit in [
        Edit::Rider(RiderEdit::OwnWords("the thumb tires".into())),
        Edit::Layout(LayoutEdit::Clear),
        Edit::Rider(RiderEdit::Nickname("Ringdove".into())),
    ] {
        history.commit(&edit).expect("the edit is possible");
    }
    let sent = travelled(&content(history.plan(), Along::WithoutRider));
    assert!(!sent.has_hand_details());
    let text = document::write(&sent);
    for word in [
        "thumb",
        "Ringdove",
        "Fitter",
        "\"rider\"",
        "about the rider",
    ] {
        let revisions = text.split("\"revisions\"").nth(1).expect("it has a past");
        assert!(!revisions.contains(word), "{word} is in {text}");
    }
    // Back home nothing of it is lost.
    let joined = crate::merge::join(history.plan(), &sent).expect("copies go together");
    assert_eq!(joined.record, history.plan().record);
}

/// The whole way: shop to rider and back, with and without rider details.
#[test]
fn a_change_made_elsewhere_comes_back_as_newer() {
    for along in [Along::WithRider, Along::WithoutRider, Along::Layout] {
        let mut shop = History::new(demo(DemoId::Wren).plan);
        shop.sit_down(Desk {
            by: "Bench 2".into(),
            role: Some(Role::Shop),
            date: None,
        });
        shop.commit(&Edit::Layout(LayoutEdit::Mirror))
            .expect("a layout is mirrored");
        let mut rider = History::new(travelled(&content(shop.plan(), along)));
        rider
            .commit(&Edit::Layout(LayoutEdit::Clear))
            .expect("a layout is cleared");
        let words = RiderEdit::Nickname("Wren".into());
        shop.commit(&Edit::Rider(words)).expect("a name is written");
        // A code tells nothing of the past; the rider sends a link.
        let back = match along {
            Along::Layout => Along::WithoutRider,
            along => along,
        };
        let back = travelled(&content(rider.plan(), back));
        let merge = Merge::of(shop.plan(), &back);
        let layout = PartKey::Layout(shop.plan().current);
        let theirs: Vec<_> = merge
            .changed()
            .filter(|p| p.stand == Stand::TheirsNewer)
            .collect();
        assert_eq!(theirs.len(), 1, "{along}");
        assert_eq!(theirs[0].part, layout);
        assert!(
            merge.changed().all(|p| p.stand != Stand::BothChanged),
            "{along}"
        );
        let merged = merge.make(&[], &Desk::default()).expect("they go together");
        assert!(merged.layout().taps.is_empty());
        assert_eq!(merged.rider, shop.plan().rider);
        assert!(super::are_copies(shop.plan(), &back), "{along}");
    }
}

#[test]
fn the_demo_layouts_fit_into_a_code() {
    for id in DemoId::ALL {
        let code = qr_of(ADDRESS, &demo(*id).plan).expect("it fits");
        assert!(code.side <= super::QrMatrix::LARGEST && (code.side - 17).is_multiple_of(4));
        // Finder patterns stand in three corners (ISO/IEC 18004, 6.3.3).
        let ring = |x: usize, y: usize| {
            code.is_dark(x, y) && !code.is_dark(x + 1, y + 1) && code.is_dark(x + 3, y + 3)
        };
        assert!(ring(0, 0) && ring(code.side - 7, 0) && ring(0, code.side - 7));
    }
    assert_eq!(qr_of(&"x".repeat(2000), &demo(DemoId::Wren).plan), None);
}

#[test]
fn what_stays_here_is_counted() {
    let plan = demo(DemoId::Wren).plan;
    let lever = plan.bike.buttons()[0].0;
    let by = |matter| {
        Edit::Record(RecordEdit {
            by: "K.".into(),
            role: Role::Clinician,
            date: None,
            layout: None,
            matter,
        })
    };
    let review = Review {
        changes: vec![(lever, "leave it blank".into())],
        ..Review::of(Decision::AfterChanges, Basis::InPerson)
    };
    let comment = |audience| {
        by(Matter::Comment {
            on: Pin::Whole,
            audience,
            text: "look".into(),
        })
    };
    let edits = [
        by(Matter::Review(Box::new(review))),
        comment(Audience::Everyone),
        comment(Audience::RiderAndClinician),
    ];
    let mut written = plan.clone();
    written.record.entries.clear();
    assert_eq!(stays(&written, Along::WithoutRider), None);
    for edit in &edits {
        written = written.apply(edit).expect("it may be written");
    }
    let said = |along| stays(&written, along);
    assert_eq!(
        said(Along::WithoutRider).as_deref(),
        Some("1 decision, 2 comments and 1 requested change stay here.")
    );
    assert_eq!(
        said(Along::WithRider).as_deref(),
        Some("1 comment stays here.")
    );
    assert_eq!(said(Along::RiderAndClinician), None);
}
