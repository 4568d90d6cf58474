//! Any order of merges gives the same plan.

use proptest::prelude::*;

use super::{Choice, Merge, Stand, join};
use crate::catalogue::{TemplateId, template};
use crate::document;
use crate::edit::{Edit, LayoutEdit, PlanEdit, RecordEdit, RiderEdit};
use crate::finding::{Acceptance, Role};
use crate::function::Function;
use crate::history::History;
use crate::plan::Plan;
use crate::record::{Desk, Matter, PartKey, Pin};
use crate::review::Audience;
use crate::rider::{Ability, Answer, Difficulty, HandPlace, Side};
use crate::rules;
use crate::testing::{button, plan_and_edits};
use crate::text::Text;

/// A plan after those edits that are possible, each a revision.
fn worked_on(plan: &Plan, edits: &[Edit]) -> Plan {
    let mut history = History::new(plan.clone());
    for edit in edits {
        let _ = history.commit(edit);
    }
    history.plan().clone()
}

/// Three copies of one plan, each worked on apart, some from one another.
fn copies() -> impl Strategy<Value = [Plan; 3]> {
    (plan_and_edits(), prop::collection::vec(0..4u8, 24)).prop_map(|((plan, edits), who)| {
        let mut copies = [plan.clone(), plan.clone(), plan];
        for (edit, who) in edits.iter().zip(who) {
            match who {
                3 => copies[1] = copies[0].clone(),
                at => {
                    let at = usize::from(at);
                    copies[at] = worked_on(&copies[at], std::slice::from_ref(edit));
                }
            }
        }
        copies
    })
}

fn joined(a: &Plan, b: &Plan) -> Plan {
    join(a, b).expect("two copies of one plan go together")
}

proptest! {
    // Each case takes many revisions and merges.
    #![proptest_config(ProptestConfig::with_cases(80))]

    #[test]
    fn any_order_of_merges_gives_the_same_plan([a, b, c] in copies()) {
        let (ab, bc, ac) = (joined(&a, &b), joined(&b, &c), joined(&a, &c));
        prop_assert_eq!(&ab, &joined(&b, &a));
        let all = joined(&ab, &c);
        prop_assert_eq!(&all, &joined(&a, &bc));
        prop_assert_eq!(&all, &joined(&b, &ac));
        for known in [&a, &ab, &bc, &all] {
            prop_assert_eq!(&all, &joined(&all, known));
        }
        prop_assert_eq!(&ab, &joined(&ab, &ab));
    }

    #[test]
    fn a_merged_plan_opens_as_it_was_saved([a, b, _] in copies()) {
        let both = joined(&a, &b);
        let opened = document::read(document::write(&both));
        prop_assert_eq!(opened.map(|opened| opened.plan), Ok(both));
    }

    #[test]
    fn what_people_wrote_is_never_lost([a, b, _] in copies()) {
        let both = joined(&a, &b);
        let removals = both.record.removals;
        for copy in [&a, &b] {
            for entry in &copy.record.entries {
                let goes = copy.record.removals < removals && entry.matter.is_about_hands();
                prop_assert_eq!(both.record.entry(entry.id).is_some(), !goes);
            }
        }
    }

    #[test]
    fn removed_hand_details_stay_removed([a, b, _] in copies()) {
        let mut removed = History::new(a.clone());
        for _ in 0..=b.record.removals {
            removed.remove_hand_details(None);
        }
        let both = joined(removed.plan(), &b);
        prop_assert_eq!(&both.without_hand_details(both.rider.hand_details_removed), &both);
        prop_assert_eq!(both, joined(&b, removed.plan()));
    }

    #[test]
    fn looking_at_a_merge_agrees_with_making_it([a, b, _] in copies()) {
        let merge = Merge::of(&a, &b);
        prop_assert_eq!(merge.make(&[], &Desk::default()), join(&a, &b));
        for part in merge.changed() {
            prop_assert!(!part.differences.is_empty(), "{:?}", part);
            match part.stand {
                Stand::TheirsNewer => prop_assert_eq!(part.usual, Choice::Theirs),
                Stand::MineNewer => prop_assert_eq!(part.usual, Choice::Mine),
                _ => {}
            }
        }
    }

    #[test]
    fn a_choice_wins_in_every_copy_that_it_reaches([a, b, c] in copies()) {
        let merge = Merge::of(&a, &b);
        let title = |plan: &Plan| (plan.name.clone(), plan.job.clone(), plan.date);
        for (choice, wanted) in [(Choice::Mine, &a), (Choice::Theirs, &b)] {
            let chosen = merge.make(&[(PartKey::Title, choice)], &Desk::default());
            let chosen = chosen.expect("the copies go together");
            prop_assert_eq!(title(&chosen), title(wanted));
            for copy in [&a, &b] {
                if title(&a) != title(&b) {
                    prop_assert_eq!(title(&joined(copy, &chosen)), title(wanted));
                }
            }
            // And it can be merged on like any other.
            prop_assert_eq!(joined(&chosen, &c), joined(&c, &chosen));
        }
    }
}

fn road() -> Plan {
    template(TemplateId::RoadPlain).plan("Test")
}

fn tap(plan: &Plan, place: &str, function: Function) -> Edit {
    Edit::Layout(LayoutEdit::Tap(button(plan, place), Some(function)))
}

fn stand_of(merge: &Merge, part: &PartKey) -> Stand {
    let found = merge.parts.iter().find(|p| p.part == *part);
    found.map_or(Stand::Same, |part| part.stand)
}

#[test]
fn who_changed_what_is_told_apart() {
    let base = road();
    let layout = PartKey::Layout(base.current);
    let rests = Edit::Rider(RiderEdit::HandDoesNothing(
        Side::Right,
        HandPlace::Rests,
        None,
    ));
    let mine = worked_on(&base, &[rests]);
    let theirs = worked_on(&base, &[tap(&base, "left hood button", Function::Lights)]);
    let merge = Merge::of(&mine, &theirs);
    assert_eq!(stand_of(&merge, &layout), Stand::TheirsNewer);
    assert_eq!(
        stand_of(&merge, &PartKey::Hand(Side::Right)),
        Stand::MineNewer
    );
    assert_eq!(stand_of(&merge, &PartKey::Bike), Stand::Same);
    let words: Vec<_> = merge
        .changed()
        .flat_map(|p| &p.differences)
        .map(|d| &d.words)
        .collect();
    assert!(
        words.contains(&&"Left hood button: “lights”, was blank".to_owned()),
        "{words:?}"
    );

    let too = worked_on(
        &mine,
        &[tap(&base, "left hood button", Function::NextScreen)],
    );
    let merge = Merge::of(&too, &theirs);
    assert_eq!(stand_of(&merge, &layout), Stand::BothChanged);
}

#[test]
fn both_layouts_may_stay() {
    let base = road();
    let layout = PartKey::Layout(base.current);
    let hood = button(&base, "left hood button");
    let mine = worked_on(&base, &[tap(&base, "left hood button", Function::Lights)]);
    let theirs = worked_on(
        &base,
        &[tap(&base, "left hood button", Function::NextScreen)],
    );
    let both = Merge::of(&mine, &theirs)
        .make(&[(layout.clone(), Choice::Both)], &Desk::default())
        .expect("there is room for both");
    let on_hood: Vec<_> = both
        .layouts
        .iter()
        .map(|l| l.taps.get(&hood).copied())
        .collect();
    // Theirs may be the usual one; keeping both then changes mine back.
    assert_eq!(
        on_hood,
        [Some(Function::Lights), Some(Function::NextScreen)]
    );
    assert_ne!(both.layouts[0].id, both.layouts[1].id);
}

#[test]
fn layouts_removed_in_turn_leave_a_blank_one() {
    let base = worked_on(
        &road(),
        &[Edit::Plan(PlanEdit::DuplicateLayout("Two".into()))],
    );
    let [first, second] = [base.layouts[0].id, base.layouts[1].id];
    let remove = |id| Edit::Plan(PlanEdit::RemoveLayout(id));
    let (a, b) = (
        worked_on(&base, &[remove(first)]),
        worked_on(&base, &[remove(second)]),
    );
    let both = joined(&a, &b);
    assert_eq!(both.layouts.len(), 1);
    assert!(both.layout().taps.is_empty());
    assert_eq!(joined(&both, &base), both);
    // Somebody works on: the layout is there again.
    let on = worked_on(&both, &[tap(&both, "left hood button", Function::Lights)]);
    assert_eq!(joined(&a, &on).layout(), on.layout());
}

#[test]
fn more_layouts_than_a_plan_holds_are_held_back_and_come_again() {
    let more = |plan: &Plan, from: usize| {
        let name = |n: usize| Text::new(&format!("{from} {n}"));
        let edits: Vec<_> = (0..crate::limits::MOST_LAYOUTS - 1)
            .map(|n| Edit::Plan(PlanEdit::DuplicateLayout(name(n))))
            .collect();
        worked_on(plan, &edits)
    };
    // Numbers of layouts made apart collide, so one copy first makes room.
    let base = road();
    let a = more(&base, 1);
    let remove = |id| Edit::Plan(PlanEdit::RemoveLayout(id));
    let emptied: Vec<_> = a.layouts.iter().skip(1).map(|l| remove(l.id)).collect();
    let b = more(&worked_on(&a, &emptied), 2);
    let a = worked_on(
        &a,
        &a.layouts
            .iter()
            .map(|l| Edit::Several {
                label: "name".into(),
                edits: vec![
                    Edit::Plan(PlanEdit::SelectLayout(l.id)),
                    Edit::Plan(PlanEdit::RenameLayout("again".into())),
                ],
            })
            .cycle()
            .take(60)
            .collect::<Vec<_>>(),
    );
    let both = joined(&a, &b);
    assert_eq!(both.layouts.len(), crate::limits::MOST_LAYOUTS);
    let held = both
        .record
        .stamps
        .iter()
        .filter(|s| s.held.as_ref().is_some_and(|h| !h.is_null()));
    let held = held
        .filter(|s| matches!(s.part, PartKey::Layout(_)))
        .count();
    assert!(held > 0, "nothing had to be held back");
    let fewer = worked_on(&both, &[remove(both.layouts[0].id)]);
    assert_eq!(fewer.layouts.len(), crate::limits::MOST_LAYOUTS);
}

#[test]
fn a_copy_without_details_leaves_mine_alone() {
    let rests = Edit::Rider(RiderEdit::HandDoesNothing(
        Side::Right,
        HandPlace::Rests,
        None,
    ));
    let brakes = RiderEdit::Ability(
        Side::Left,
        Ability::BrakesHard,
        Answer::of(Difficulty::Moderate),
    );
    let mine = worked_on(&road(), &[rests, Edit::Rider(brakes)]);
    let sent = mine.without_hand_details(None);
    let back = worked_on(&sent, &[tap(&mine, "left hood button", Function::Lights)]);
    let merge = Merge::of(&mine, &back);
    let stands: Vec<_> = merge.changed().map(|p| (p.part.clone(), p.stand)).collect();
    assert_eq!(
        stands,
        [
            (PartKey::Hand(Side::Left), Stand::MineNewer),
            (PartKey::Hand(Side::Right), Stand::MineNewer),
            (PartKey::Layout(mine.current), Stand::TheirsNewer),
        ]
    );
    assert_eq!(joined(&mine, &back).rider, mine.rider);
}

#[test]
fn comments_written_apart_are_all_there() {
    let comment = |role, text: &str| {
        Edit::Record(RecordEdit {
            by: "N.".into(),
            role,
            date: None,
            layout: None,
            matter: Matter::Comment {
                on: Pin::Whole,
                audience: Audience::Everyone,
                text: text.into(),
            },
        })
    };
    let base = road();
    let a = worked_on(
        &base,
        &[comment(Role::Shop, "one"), comment(Role::Shop, "two")],
    );
    let b = worked_on(&base, &[comment(Role::Rider, "three")]);
    let merge = Merge::of(&a, &b);
    assert_eq!(merge.new_entries.comments, 1);
    assert_eq!(merge.new_entries.words().as_deref(), Some("1 comment"));
    assert!(!merge.is_idle() && merge.changed().next().is_none());
    assert_eq!(joined(&a, &b).record.entries.len(), 3);
    // What is new is counted by its kind.
    let written = b.record.entries[0].id;
    let more = [
        Matter::Addendum {
            to: written,
            text: "four".into(),
        },
        Matter::Withdrawn {
            what: written,
            reason: "".into(),
        },
    ];
    let more = more.map(|matter| {
        Edit::Record(RecordEdit {
            by: "N.".into(),
            role: Role::Rider,
            date: None,
            layout: None,
            matter,
        })
    });
    let words = Merge::of(&a, &worked_on(&b, &more)).new_entries.words();
    assert_eq!(
        words.as_deref(),
        Some("1 addendum, 1 withdrawal and 1 comment")
    );
    assert!(Merge::of(&joined(&a, &b), &b).is_idle());
}

#[test]
fn an_accepted_finding_is_called_by_its_title() {
    let base = road();
    let finding = rules::findings(&base)
        .into_iter()
        .find(|finding| finding.acceptable.by(Role::Shop))
        .expect("a bare bike has something to accept");
    let accept = Edit::Plan(PlanEdit::Accept(Acceptance {
        finding: finding.key(),
        reason: "seen".into(),
        by: "N.".into(),
        role: Role::Shop,
        date: None,
        lapsed: false,
    }));
    let theirs = worked_on(&base, &[accept]);
    let merge = Merge::of(&base, &theirs);
    let changed: Vec<_> = merge.changed().collect();
    assert_eq!(changed.len(), 1);
    let title = rules::rule(finding.rule).expect("it has a rule").title;
    let (name, part) = (&changed[0].name, changed[0].part.to_string());
    assert!(
        name.starts_with(&format!("accepted finding: {title}")),
        "{name}"
    );
    assert_eq!(part, format!("accepted finding “{title}”"));
    assert!(!name.contains(finding.rule), "{name}");
}
