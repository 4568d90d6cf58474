//! Tests of the setup sheet.

use super::*;
use crate::catalogue::{DemoId, TemplateId, demo, template};
use crate::cockpit::{
    BarSide, ButtonId, ButtonPart, ControlId, ControlKind, Freedom, HoldRun, Link, UnusedPort, Zone,
};
use crate::edit::{BikeEdit, BrakeEdit, Edit, LayoutEdit, PlanEdit, RiderEdit};
use crate::finding::{Acceptable, Acceptance, Place, Role, Severity};
use crate::function::Function;
use crate::layout::{Chord, Hold};
use crate::rider::{
    Ability, Answer, Difficulty, Evidence, Hand, HandPlace, Later, Side, Source, Worn, YesNo,
};
use crate::shift_plan::ShiftPlanKind;
use crate::text::{Date, Text};
use crate::units::Mm;
use crate::vocabulary::Vocabulary;

#[track_caller]
fn edited(plan: &Plan, edits: &[Edit]) -> Plan {
    edits.iter().fold(plan.clone(), |plan, edit| {
        plan.apply(edit).expect("the edit is possible")
    })
}

fn control(plan: &Plan, kind: ControlKind, side: Side) -> ControlId {
    plan.bike
        .controls
        .iter()
        .find(|c| c.kind == kind && c.side == BarSide::from(side))
        .expect("the control is there")
        .id
}

fn button(plan: &Plan, kind: ControlKind, side: Side, part: ButtonPart) -> ButtonId {
    ButtonId {
        control: control(plan, kind, side),
        part,
    }
}

/// One hand works, the other rests: a ladder on the left, both brakes on the
/// left lever, the right side blank.
fn one_handed() -> Plan {
    let plan = template(TemplateId::RoadPods).plan("Morning loop");
    let lever = ControlKind::BrakeShiftLever;
    let (left, right) = (
        control(&plan, lever, Side::Left),
        control(&plan, lever, Side::Right),
    );
    let hood = button(&plan, lever, Side::Left, ButtonPart::HoodButton);
    let outer = button(&plan, lever, Side::Left, ButtonPart::OuterPaddle);
    edited(
        &plan,
        &[
            Edit::Plan(PlanEdit::Job(Text::new("31-07"))),
            Edit::Plan(PlanEdit::Date(Date::new(2031, 5, 9))),
            Edit::Rider(RiderEdit::HandDoesNothing(
                Side::Right,
                HandPlace::Rests,
                None,
            )),
            Edit::Rider(RiderEdit::HandDoesAll(Side::Left, None)),
            Edit::Plan(PlanEdit::ShiftPlan(ShiftPlanKind::Ladder)),
            Edit::Layout(LayoutEdit::AllShiftingOn(Side::Left)),
            Edit::Layout(LayoutEdit::BlankUnderRestingHands),
            Edit::Layout(LayoutEdit::Tap(hood, Some(Function::FrontToggle))),
            Edit::Layout(LayoutEdit::Hold(
                outer,
                Some(Hold::Repeats(HoldRun::Cogs(3))),
            )),
            Edit::Brakes(BrakeEdit::AllOnLever(left)),
            Edit::Brakes(BrakeEdit::ThrowTested(left, Answer::of(YesNo::Yes))),
            Edit::Bike(BikeEdit::BladeGap(left, Some(Mm(24.0)))),
            Edit::Bike(BikeEdit::BladeFitted(right, false)),
        ],
    )
}

fn finding(severity: Severity, acceptable: Acceptable) -> Finding {
    Finding {
        rule: "needed-function-missing",
        severity,
        acceptable,
        places: vec![Place::Function(Function::RearEasier)],
        message: "A point.".into(),
        fixes: Vec::new(),
    }
}

/// The plan with an acceptance as a document may bring it.
fn accept(plan: &Plan, finding: &Finding, role: Role, reason: &str) -> Plan {
    let mut plan = plan.clone();
    plan.accepted.push(Acceptance {
        finding: finding.key(),
        reason: Text::new(reason),
        by: Text::new("Bench 2"),
        role,
        date: Date::new(2031, 5, 9),
        lapsed: false,
    });
    plan
}

fn verdict(plan: &Plan, findings: &[Finding]) -> Verdict {
    Sheet::from(&Situation::of(plan), findings, SheetOptions::default()).verdict
}

#[test]
fn the_verdict_follows_the_open_findings() {
    let plan = template(TemplateId::RoadPlain).plan("Test");
    let must = finding(Severity::MustFix, Acceptable::ByShop);
    let check = finding(Severity::Check, Acceptable::ByClinician);
    let know = finding(Severity::GoodToKnow, Acceptable::ByShop);
    let word = |findings: &[Finding]| verdict(&plan, findings).readiness;
    assert_eq!(word(&[]), Readiness::Ready);
    assert_eq!(word(std::slice::from_ref(&know)), Readiness::Ready);
    assert_eq!(word(&[check.clone(), know]), Readiness::CheckFirst);
    assert_eq!(word(&[must, check]), Readiness::NotReady);
}

#[test]
fn only_who_may_accept_and_says_why_makes_it_ready() {
    let plan = template(TemplateId::RoadPlain).plan("Test");
    let word = |finding: &Finding, role: Role, reason: &str| {
        let plan = accept(&plan, finding, role, reason);
        verdict(&plan, std::slice::from_ref(finding)).readiness
    };
    let shop = finding(Severity::MustFix, Acceptable::ByShop);
    assert_eq!(word(&shop, Role::Shop, "Seen."), Readiness::Ready);
    assert_eq!(word(&shop, Role::Shop, " "), Readiness::NotReady);
    assert_eq!(word(&shop, Role::Clinician, "Seen."), Readiness::NotReady);
    assert_eq!(word(&shop, Role::Rider, "I want it."), Readiness::NotReady);
    let mut nameless = accept(&plan, &shop, Role::Shop, "Seen.");
    nameless.accepted[0].by = Text::default();
    let nobody = verdict(&nameless, std::slice::from_ref(&shop));
    assert_eq!(nobody.readiness, Readiness::NotReady, "nobody said so");
    let hand_use = finding(Severity::Check, Acceptable::ByClinician);
    assert_eq!(word(&hand_use, Role::Clinician, "Seen."), Readiness::Ready);
    assert_eq!(word(&hand_use, Role::Rider, "Mine."), Readiness::CheckFirst);
    let never = finding(Severity::MustFix, Acceptable::Never);
    assert_eq!(word(&never, Role::Shop, "Seen."), Readiness::NotReady);
    let never = finding(Severity::Check, Acceptable::Never);
    assert_eq!(word(&never, Role::Shop, "Seen."), Readiness::NotReady);
}

#[test]
fn what_can_never_be_accepted_comes_first_among_the_reasons() {
    let plan = template(TemplateId::RoadPlain).plan("Test");
    let found = [
        finding(Severity::MustFix, Acceptable::ByShop),
        finding(Severity::MustFix, Acceptable::Never),
        finding(Severity::Check, Acceptable::ByShop),
    ];
    let verdict = verdict(&plan, &found);
    let never: Vec<bool> = verdict.reasons.iter().map(|point| point.never).collect();
    assert_eq!(never, [true, false]);
    assert_eq!(
        verdict.line,
        "2 points to fix before the bike is ridden. 1 of them can never be accepted. Then 1 more to look at: see “Open points”."
    );
}

#[test]
fn what_decides_the_verdict_is_not_said_again_among_the_open_points() {
    let plan = template(TemplateId::RoadPlain).plan("Test");
    let check = finding(Severity::Check, Acceptable::ByShop);
    let must = finding(Severity::MustFix, Acceptable::ByShop);
    let sheet = |found: &[Finding]| {
        let sheet = Sheet::from(&Situation::of(&plan), found, SheetOptions::default());
        (sheet.verdict.reasons.len(), sheet.open.len())
    };
    assert_eq!(sheet(&[must, check.clone()]), (1, 1));
    assert_eq!(sheet(&[check]), (1, 0));
}

#[test]
fn one_rule_about_several_buttons_is_one_point_under_all_their_balloons() {
    let plan = template(TemplateId::RoadPlain).plan("Test");
    let buttons = plan.bike.buttons();
    let about = |at: usize| Finding {
        rule: "live-button-under-resting-hand",
        places: vec![Place::Button(buttons[at].0)],
        ..finding(Severity::MustFix, Acceptable::ByShop)
    };
    let verdict = verdict(&plan, &[about(3), about(1)]);
    let [point] = &verdict.reasons[..] else {
        panic!("{:?}", verdict.reasons)
    };
    assert_eq!(point.numbers, [2, 4]);
    assert_eq!(
        point.message,
        "A live button lies under a hand that may press it unawares."
    );
    assert!(
        verdict.line.starts_with("2 points to fix"),
        "{}",
        verdict.line
    );
    // What names no button says by itself what it is about.
    let apart = finding(Severity::MustFix, Acceptable::ByShop);
    let two = [apart.clone(), apart];
    assert_eq!(self::verdict(&plan, &two).reasons.len(), 2);
}

#[test]
fn an_accepted_finding_is_printed_with_who_why_and_when() {
    let plan = template(TemplateId::RoadPlain).plan("Test");
    let found = finding(Severity::MustFix, Acceptable::ByShop);
    let plan = accept(&plan, &found, Role::Shop, "Seen on the stand.");
    let sheet = Sheet::from(&Situation::of(&plan), &[found], SheetOptions::default());
    assert_eq!(sheet.verdict.accepted, 1);
    assert!(sheet.open.is_empty());
    assert!(
        sheet
            .page_text(Page::Proof)
            .contains("Must fix: A point. Reason: Seen on the stand. (Bench 2, shop, 2031-05-09)")
    );
}

#[test]
fn the_demo_plans_show_each_verdict() {
    let word = |id| {
        let sheet = Sheet::of(&demo(id).plan, SheetOptions::default());
        (sheet.verdict.readiness, sheet.verdict.reasons)
    };
    assert_eq!(word(DemoId::Wren), (Readiness::Ready, Vec::new()));
    assert_eq!(word(DemoId::Plover).0, Readiness::CheckFirst);
    assert_eq!(word(DemoId::Dipper).0, Readiness::NotReady);
}

#[test]
fn every_button_of_every_template_stands_once_under_its_balloon() {
    for id in TemplateId::ALL {
        let plan = template(*id).plan("Test");
        let sheet = Sheet::of(&plan, SheetOptions::default());
        let mut expected = 0;
        for control in &plan.bike.controls {
            for button in &control.buttons {
                let id = control.button_id(button.part);
                let rows: Vec<_> = sheet.buttons.iter().filter(|row| row.id == id).collect();
                assert_eq!(rows.len(), 1, "{id}");
                assert_eq!(Some(rows[0].number), plan.bike.balloon(id));
                expected += 1;
            }
        }
        assert_eq!(sheet.buttons.len(), expected, "{id}");
        let numbers: Vec<usize> = sheet.buttons.iter().map(|row| row.number).collect();
        assert_eq!(numbers, (1..=expected).collect::<Vec<_>>(), "{id}");
    }
}

#[test]
fn every_button_is_pressed_three_times_on_the_stand() {
    for id in TemplateId::ALL {
        let plan = template(*id).plan("Test");
        let sheet = Sheet::of(&plan, SheetOptions::default());
        assert_eq!(sheet.stand_check[0].title, "Brakes first");
        let presses = sheet
            .stand_check
            .iter()
            .find(|list| list.title.starts_with("Three presses"))
            .expect("the list is there");
        for row in &sheet.buttons {
            let tick = &presses.ticks[row.number - 1];
            assert_eq!((&tick.numbers[..], tick.boxes), (&[row.number][..], 3));
            let blank = row.now.function().is_none();
            assert_eq!(
                tick.expect == "nothing happens",
                blank,
                "{id} {}",
                row.place
            );
        }
    }
}

#[test]
fn was_and_now_tell_what_changed() {
    let plan = template(TemplateId::RoadPlain).plan("Test");
    let outer = button(
        &plan,
        ControlKind::BrakeShiftLever,
        Side::Right,
        ButtonPart::OuterPaddle,
    );
    let row = |plan: &Plan| {
        let rows = Sheet::of(plan, SheetOptions::default()).buttons;
        rows.into_iter().find(|row| row.id == outer).expect("a row")
    };
    let before = row(&plan);
    assert_eq!(before.changed(), Some(false));
    let blanked = row(&edited(
        &plan,
        &[Edit::Layout(LayoutEdit::ClearButton(outer))],
    ));
    assert_eq!(
        (blanked.was.to_string(), blanked.now.to_string()),
        ("rear easier".into(), "blank".into())
    );
    assert_eq!(blanked.changed(), Some(true));
    let unplugged = row(&edited(
        &plan,
        &[Edit::Bike(BikeEdit::Connect(outer.control, false))],
    ));
    assert_eq!(unplugged.now, Now::Unplugged);
    assert_eq!(unplugged.changed(), Some(true));
    let mut unknown = plan.clone();
    unknown.as_found.clear();
    assert_eq!(
        (row(&unknown).was, row(&unknown).changed()),
        (Was::NotNoted, None)
    );
    let mut new = plan;
    new.as_found.remove(&outer);
    assert_eq!(row(&new).was, Was::NewButton);
}

#[test]
fn fixed_and_copying_buttons_say_so_and_are_not_typed_in() {
    let plan = template(TemplateId::RoadPods).plan("Test");
    let near = button(&plan, ControlKind::Pod, Side::Left, ButtonPart::Near);
    let outer = button(
        &plan,
        ControlKind::BrakeShiftLever,
        Side::Right,
        ButtonPart::OuterPaddle,
    );
    let plan = edited(
        &plan,
        &[Edit::Bike(BikeEdit::Freedom(near, Freedom::Copies(outer)))],
    );
    let sheet = Sheet::of(&plan, SheetOptions::default());
    let number = |id: ButtonId| plan.bike.balloon(id).expect("a balloon");
    let copy = &sheet.buttons[number(near) - 1];
    assert_eq!(
        copy.now.to_string(),
        format!("rear easier (copies {})", number(outer))
    );
    let sprint = button(
        &plan,
        ControlKind::SprintButton,
        Side::Right,
        ButtonPart::Single,
    );
    let fixed = &sheet.buttons[number(sprint) - 1];
    assert_eq!(fixed.now.to_string(), "rear harder (fixed)");
    for id in [near, sprint] {
        let typed = |setting: &Setting| setting.numbers == [number(id)];
        assert!(!sheet.settings.settings.iter().any(typed));
        let alone = format!("{} ", number(id));
        assert!(
            sheet
                .settings
                .left_alone
                .iter()
                .any(|l| l.starts_with(&alone))
        );
    }
}

#[test]
fn hands_and_contacts_follow_the_rider() {
    let plan = one_handed();
    let sheet = Sheet::of(&plan, SheetOptions::default());
    let words = |kind, side, part| {
        let number = plan
            .bike
            .balloon(button(&plan, kind, side, part))
            .expect("a balloon");
        sheet.buttons[number - 1].pressed.to_string()
    };
    let lever = ControlKind::BrakeShiftLever;
    assert_eq!(
        words(lever, Side::Left, ButtonPart::OuterPaddle),
        "left index finger"
    );
    assert_eq!(
        words(lever, Side::Left, ButtonPart::HoodButton),
        "left thumb (hoods); left thumb, hand moves (drops)"
    );
    assert_eq!(words(lever, Side::Right, ButtonPart::OuterPaddle), "");
}

#[test]
fn settings_come_in_the_order_of_typing() {
    let plan = template(TemplateId::RoadOnePaddle).plan("Test");
    let settings = Sheet::of(&plan, SheetOptions::default()).settings;
    let typed: Vec<(&[usize], &str)> = settings
        .settings
        .iter()
        .map(|s| (&s.numbers[..], s.value.as_deref().unwrap_or("")))
        .collect();
    assert_eq!(
        typed,
        [
            (&[][..], "separate"),
            (&[1][..], "rear easier"),
            (&[2][..], "rear harder"),
            (&[1, 2][..], "front toggle"),
            (&[][..], "off"),
        ]
    );
}

#[test]
fn every_remappable_button_is_typed_in_once_blank_ones_too() {
    for id in TemplateId::ALL {
        let plan = template(*id).plan("Test");
        let settings = Sheet::of(&plan, SheetOptions::default()).settings;
        for (id, _, button) in plan.bike.buttons() {
            let number = plan.bike.balloon(id).expect("a balloon");
            let alone = |s: &&Setting| s.what != "both together" && s.numbers.contains(&number);
            let typed = settings.settings.iter().filter(alone).count();
            assert_eq!(typed, usize::from(button.is_remappable()), "{id}");
        }
    }
}

#[test]
fn a_blade_that_pulls_nothing_is_to_come_off() {
    let plan = template(TemplateId::RoadPlain).plan("Test");
    let lever = ControlKind::BrakeShiftLever;
    let left = control(&plan, lever, Side::Left);
    let plan = edited(&plan, &[Edit::Brakes(BrakeEdit::AllOnLever(left))]);
    let sheet = Sheet::of(&plan, SheetOptions::default());
    assert_eq!(sheet.brakes.levers[1].blade, BladeState::PullsNothing);
}

#[test]
fn what_the_gears_must_still_decide_is_left_to_write_in() {
    let plan = edited(
        &template(TemplateId::RoadPlain).plan("Test"),
        &[
            Edit::Plan(PlanEdit::ShiftPlanAndButtons(ShiftPlanKind::Ladder)),
            Edit::Bike(BikeEdit::Cogs(11)),
        ],
    );
    let settings = Sheet::of(&plan, SheetOptions::default()).settings;
    let open: Vec<&str> = settings
        .settings
        .iter()
        .filter(|s| s.value.is_none())
        .map(|s| s.what.as_str())
        .collect();
    assert_eq!(open, ["front up at rung", "front down at rung"]);
}

#[test]
fn a_reset_is_warned_of_unless_the_manual_says_that_settings_stay() {
    let after = |answer| {
        let mut plan = template(TemplateId::RoadPlain).plan("Test");
        plan.bike.system.keeps_settings = answer;
        Sheet::of(&plan, SheetOptions::default())
            .settings
            .after_reset
    };
    assert!(after(Answer::NOT_ASKED).contains("may bring the old functions back"));
    assert!(after(Answer::of(YesNo::No)).contains("brings the old functions back"));
    assert!(after(Answer::of(YesNo::Yes)).contains("settings stay"));
}

#[test]
fn every_lever_and_every_wheel_of_every_template_is_plumbed() {
    for id in TemplateId::ALL {
        let plan = template(*id).plan("Test");
        let sheet = Sheet::of(&plan, SheetOptions::default());
        let blades = plan.bike.controls.iter().filter(|c| c.blade.is_some());
        assert_eq!(sheet.brakes.levers.len(), blades.count(), "{id}");
        for wheel in plan.bike.frame.wheels() {
            let chains: Vec<String> = sheet
                .brakes
                .levers
                .iter()
                .map(BrakeLine::chain)
                .filter(|chain| chain.contains(wheel.words()))
                .collect();
            assert_eq!(chains.len(), 1, "{id}: {wheel}: {chains:?}");
        }
        assert!(
            !sheet
                .brakes
                .notes
                .iter()
                .any(|note| note.starts_with("No lever")),
            "{id}"
        );
    }
}

#[test]
fn brake_chains_read_from_lever_to_wheel() {
    let chains = |id: TemplateId| -> Vec<String> {
        let plan = template(id).plan("Test");
        let sheet = Sheet::of(&plan, SheetOptions::default());
        sheet.brakes.levers.iter().map(BrakeLine::chain).collect()
    };
    assert_eq!(
        chains(TemplateId::SingleSidedLeft),
        [
            "left brake-shift lever → hose → hose splitter → front wheel (disc brake) and rear wheel (disc brake)"
        ]
    );
    assert_eq!(
        chains(TemplateId::Tricycle),
        [
            "left brake lever → cable → front wheel (disc brake)",
            "right brake lever → cable → cable doubler → left rear wheel (drum brake) and right rear wheel (drum brake)",
        ]
    );
}

#[test]
fn throw_blade_latch_and_axle_are_shown_as_they_stand() {
    let plan = template(TemplateId::Tricycle).plan("Test");
    let sheet = Sheet::of(&plan, SheetOptions::default());
    let [left, right] = &sheet.brakes.levers[..] else {
        panic!("two levers");
    };
    assert_eq!(
        (left.throw, left.latch),
        (ThrowTest::NotNeeded, LatchState::Open)
    );
    assert_eq!(
        (right.throw, right.latch),
        (ThrowTest::Open, LatchState::None)
    );
    assert_eq!(
        sheet.brakes.notes,
        ["Left rear wheel and right rear wheel brake alike: to be tried."]
    );
    let lever = right.lever;
    let plan = edited(
        &plan,
        &[
            Edit::Brakes(BrakeEdit::ThrowTested(lever, Answer::of(YesNo::No))),
            Edit::Bike(BikeEdit::BladeReach(lever, Some(Mm(70.0)))),
            Edit::Bike(BikeEdit::BladeGap(lever, Some(Mm(18.0)))),
        ],
    );
    let right = &Sheet::of(&plan, SheetOptions::default()).brakes.levers[1];
    assert_eq!(right.throw, ThrowTest::TooShort);
    assert_eq!(right.blade.to_string(), "reach 70 mm, full pull 18 mm");
    let plan = edited(&plan, &[Edit::Bike(BikeEdit::BladeFitted(lever, false))]);
    let sheet = Sheet::of(&plan, SheetOptions::default());
    assert_eq!(sheet.brakes.levers[1].blade, BladeState::Removed);
    assert!(
        sheet
            .brakes
            .notes
            .contains(&"No lever brakes the left rear wheel.".into())
    );
}

#[test]
fn parts_follow_the_plan() {
    let parts = |plan: &Plan| -> Vec<String> {
        let sheet = Sheet::of(plan, SheetOptions::default());
        let line = |p: &PartLine| format!("{} {}: {}", p.quantity, p.part, p.purpose);
        sheet.parts.iter().map(line).collect()
    };
    let has = |parts: &[String], words: &str| parts.iter().any(|part| part.contains(words));

    let plain = template(TemplateId::RoadPlain).plan("Test");
    let before = parts(&plain);
    for absent in ["splitter", "label", "blade", "port blank", "coin cell"] {
        assert!(!has(&before, absent), "{absent}: {before:?}");
    }
    // The bike came in wired; a control that is added takes a wire.
    assert!(!has(&before, "control wire"), "{before:?}");
    let pod = BikeEdit::Add(ControlKind::Pod, Side::Left, Zone::Tops);
    let with_pod = edited(&plain, &[Edit::Bike(pod)]);
    assert!(has(&parts(&with_pod), "1 control wire: controls added"));
    let mut unknown = plain.clone();
    unknown.as_found = Default::default();
    assert!(has(
        &parts(&unknown),
        "2 control wire: as far as the bike has none yet"
    ));
    assert!(has(&before, "chain catcher"));

    let after = parts(&one_handed());
    for line in [
        "1 hose splitter: left brake-shift lever to front wheel and rear wheel",
        "1 label on the lever: left brake-shift lever: brakes the front wheel and rear wheel",
        "1 cover where a blade was removed: right brake-shift lever",
        "1 port blank: where it was plugged in: right sprint button",
    ] {
        assert!(after.contains(&line.to_string()), "{line}: {after:#?}");
    }

    let tricycle = template(TemplateId::Tricycle).plan("Test");
    let left = tricycle.bike.brakes.runs[0].lever;
    let joined = edited(&tricycle, &[Edit::Brakes(BrakeEdit::AllOnLever(left))]);
    assert!(has(&parts(&joined), "1 dual-pull brake lever"));
    assert!(has(&parts(&joined), "1 cable doubler"));
    let sheet = Sheet::of(&joined, SheetOptions::default());
    assert!(
        sheet.brakes.levers[0]
            .chain()
            .contains("dual-pull lever, two cables, then a cable doubler to the left rear wheel"),
        "{}",
        sheet.brakes.levers[0].chain()
    );
    let tricycle = parts(&tricycle);
    assert!(has(&tricycle, "1 cable doubler"));
    assert!(!has(&tricycle, "label"), "each lever brakes one axle");
    assert!(!has(&tricycle, "chain catcher"), "no front derailleur");
}

/// One button for both front functions stands for both, by its number.
#[test]
fn a_toggle_is_needed_where_it_is_all_there_is_for_the_front() {
    let plan = template(TemplateId::RoadPlain).plan("Test");
    let plan = edited(
        &plan,
        &[Edit::Layout(LayoutEdit::AllShiftingOn(Side::Left))],
    );
    let hood = button(
        &plan,
        ControlKind::BrakeShiftLever,
        Side::Left,
        ButtonPart::HoodButton,
    );
    let number = plan.bike.balloon(hood).expect("it has a balloon");
    let sheet = Sheet::of(&plan, SheetOptions::default());
    let toggle = sheet
        .coverage
        .lines
        .iter()
        .find(|l| l.what == "Front toggle");
    assert!(toggle.expect("its line is there").needed);
    let text = sheet.page_text(Page::Proof);
    assert!(!text.contains("does without"), "{text}");
    // It cannot be asked for a direction, so it is tried once, as what it is.
    let tick = |function: &str| format!("[ ][ ][ ] ({number}) {function}");
    assert!(text.contains(&tick("Front toggle")), "{text}");
    for function in ["Front larger", "Front smaller"] {
        assert!(!text.contains(&tick(function)), "{function}: {text}");
    }
}

#[test]
fn a_lever_against_the_habit_is_labelled() {
    let mut plan = template(TemplateId::FlatSingle).plan("Test");
    let labels = |plan: &Plan| {
        let sheet = Sheet::of(plan, SheetOptions::default());
        sheet
            .parts
            .iter()
            .filter(|p| p.part.contains("label"))
            .count()
    };
    plan.rider.front_brake_habit = Answer::of(Side::Left);
    assert_eq!(labels(&plan), 0);
    plan.rider.front_brake_habit = Answer::of(Side::Right);
    assert_eq!(labels(&plan), 2);
}

#[test]
fn wires_say_what_to_measure_plug_pair_and_blank() {
    let plan = template(TemplateId::RoadPods).plan("Test");
    let pod = control(&plan, ControlKind::Pod, Side::Left);
    let sprint = control(&plan, ControlKind::SprintButton, Side::Right);
    let lever = control(&plan, ControlKind::BrakeShiftLever, Side::Left);
    let plan = edited(
        &plan,
        &[
            Edit::Bike(BikeEdit::Link(pod, Link::Wireless)),
            Edit::Bike(BikeEdit::Connect(sprint, false)),
            Edit::Bike(BikeEdit::UnusedPort(lever, UnusedPort::Open)),
        ],
    );
    let sheet = Sheet::of(&plan, SheetOptions::default());
    let wire = |name: &str| {
        let line = sheet.wires.iter().find(|line| line.control == name);
        line.map(|line| (line.act(), line.measure, line.unused_port))
    };
    assert_eq!(wire("left tops pod"), Some(("pair", false, "")));
    assert_eq!(
        wire("right sprint button"),
        Some(("leave unplugged", false, ""))
    );
    assert_eq!(
        wire("left brake-shift lever"),
        Some(("plug in", true, "blank the unused port"))
    );
    assert!(sheet.parts.iter().any(|p| p.part == "coin cell"));
    assert_eq!(sheet.wires.len(), plan.bike.controls.len());
}

#[test]
fn work_goes_from_saving_to_the_stand_check_with_brakes_before_wires() {
    let work = Sheet::of(&one_handed(), SheetOptions::default()).work;
    let at = |start: &str| {
        work.ticks
            .iter()
            .position(|tick| tick.act.starts_with(start))
            .unwrap_or_else(|| panic!("“{start}” is there"))
    };
    let order = [
        "Save the old",
        "Adjust",
        "Brake:",
        "Mount",
        "Torque",
        "Wire",
        "Pair",
        "Program",
        "Save the new",
        "Do the stand check",
    ]
    .map(at);
    assert!(order.is_sorted(), "{order:?}");
}

#[test]
fn holds_and_chords_are_checked_on_the_stand() {
    let plan = template(TemplateId::RoadPlain).plan("Test");
    let [outer, inner] = [ButtonPart::OuterPaddle, ButtonPart::InnerPaddle]
        .map(|part| button(&plan, ControlKind::BrakeShiftLever, Side::Right, part));
    let plan = edited(
        &plan,
        &[
            Edit::Layout(LayoutEdit::Hold(outer, Some(Hold::Repeats(HoldRun::ToEnd)))),
            Edit::Layout(LayoutEdit::AddChord(Chord {
                first: outer,
                second: inner,
                function: Function::Lights,
            })),
        ],
    );
    let text = Sheet::of(&plan, SheetOptions::default()).page_text(Page::Work);
    let (a, b) = (plan.bike.balloon(outer), plan.bike.balloon(inner));
    let (a, b) = (a.expect("a balloon"), b.expect("a balloon"));
    assert!(text.contains(&format!(
        "[ ] ({a}) right outer paddle: repeats, to the end of the cassette, and stops when let go"
    )));
    assert!(text.contains(&format!(
        "[ ][ ][ ] ({a}, {b}) right outer paddle and right inner paddle: lights change each time"
    )));
}

#[test]
fn coverage_names_balloons_and_says_where_a_bad_day_differs() {
    let mut plan = template(TemplateId::FlatDouble).plan("Test");
    plan.rider.hands.left = Hand::does_all(None);
    plan.rider.hands.right = Hand::does_all(None);
    plan.rider.hands.right.later = Answer::of(Later::DoNotCountOnIt);
    let sheet = Sheet::of(&plan, SheetOptions::default());
    let near = button(&plan, ControlKind::Pod, Side::Right, ButtonPart::Near);
    let line = |what: &str| {
        let line = sheet.coverage.lines.iter().find(|line| line.what == what);
        line.expect("the line is there").cells[0].clone()
    };
    let easier = line("Rear easier");
    assert_eq!(
        easier.usual.to_string(),
        format!(
            "{} right thumb",
            plan.bike.balloon(near).expect("a balloon")
        )
    );
    assert!(easier.bad.is_some_and(|bad| bad != easier.usual));
    assert_eq!(line("Front larger").bad, None);
    assert_eq!(
        line("Brake: front wheel").usual.to_string(),
        "left brake lever, left index finger"
    );
}

#[test]
fn options_pass_and_the_hand_page_is_left_out_unless_asked_for() {
    let plan = one_handed();
    let usual = Sheet::of(&plan, SheetOptions::default());
    assert_eq!(usual.pages().len(), 3);
    assert!(usual.hands.is_none());
    let options = SheetOptions {
        paper: Paper::Letter,
        large_print: true,
        hand_page: true,
        clinical: true,
        gear_card: false,
        code: false,
    };
    let asked = Sheet::of(&plan, options);
    assert_eq!(asked.options, options);
    assert_eq!(asked.pages().last(), Some(&Page::Hands));
    assert!(
        asked
            .to_text()
            .contains("attention, sight, thinking and memory, seizures, medicines")
    );
}

#[test]
fn the_usual_paper_follows_the_region() {
    for (tag, paper) in [
        ("en-US", Paper::Letter),
        ("fr-ca", Paper::Letter),
        ("zh-Hans-CN", Paper::A4),
        ("en-GB", Paper::A4),
        ("de", Paper::A4),
        ("", Paper::A4),
    ] {
        assert_eq!(Paper::usual(tag), paper, "{tag}");
    }
}

#[test]
fn the_hand_page_says_where_each_answer_came_from() {
    let mut plan = one_handed();
    let evidence = Evidence {
        source: Source::SeenByClinician,
        date: Date::new(2031, 4, 30),
        worn: Some(Worn::Splint),
        in_one_tap: false,
    };
    plan.rider.hands.left.abilities.set(
        Ability::StaysOn,
        Answer::with(Difficulty::Mild, Some(evidence)),
    );
    let options = SheetOptions {
        hand_page: true,
        ..SheetOptions::default()
    };
    let text = Sheet::of(&plan, options).page_text(Page::Hands);
    assert!(text.contains(
        "Stays on over bumps and takes weight: a little effort (seen by a clinician, 2031-04-30, splint)"
    ));
    assert!(text.contains("Mounts from the: not asked, or not sure: try with the fitter"));

    let fitter = Evidence {
        source: Source::SeenByFitter,
        worn: None,
        ..evidence
    };
    let earlier = Answer::with(Difficulty::Moderate, Some(fitter));
    let hand = &mut plan.rider.hands.left.abilities;
    hand.set(Ability::StaysOn, earlier);
    hand.say(
        Ability::StaysOn,
        Answer::with(Difficulty::Mild, Some(evidence)),
    );
    let text = Sheet::of(&plan, options).page_text(Page::Hands);
    assert!(text.contains(
        "a little effort (seen by a clinician, 2031-04-30, splint); before: effort (seen by the fitter, 2031-04-30)"
    ), "{text}");
}

/// Answers stand in the words in which they were given; numbers and codes only
/// where they were asked for, with their note.
#[test]
fn the_hand_page_has_the_interviews_words_and_on_request_its_numbers() {
    let mut plan = one_handed();
    let left = &mut plan.rider.hands.left;
    left.abilities
        .set(Ability::BrakesHard, Answer::of(Difficulty::None));
    left.moves_by_itself = Answer::of(YesNo::Yes);
    let page = |clinical| {
        let options = SheetOptions {
            hand_page: true,
            clinical,
            ..SheetOptions::default()
        };
        Sheet::of(&plan, options).page_text(Page::Hands)
    };
    let (plain, coded) = (page(false), page(true));
    assert!(plain.contains("Brakes hard: easily"), "{plain}");
    assert!(
        plain.contains("Tightens or moves by itself: yes"),
        "{plain}"
    );
    assert!(!plain.contains("ICF") && !plain.contains(" · "), "{plain}");
    let brakes = "Brakes hard (closest ICF code d4450 pulling): 0 · easily";
    assert!(coded.contains(brakes), "{coded}");
    assert!(coded.contains("not clinical ratings"), "{coded}");
    for page in [plain, coded] {
        assert!(page.contains("Clinician who saw the hands"), "{page}");
        assert!(page.contains("not a signature"), "{page}");
    }
}

/// What was removed is not taken for what was never asked.
#[test]
fn the_hand_page_says_when_hand_details_were_removed() {
    let removed = PlanEdit::RemoveHandDetails(Date::new(2031, 4, 30));
    let plan = one_handed().apply(&Edit::Plan(removed));
    let mut plan = plan.expect("hand details can be removed");
    plan.rider.mounts_from = Answer::of(Side::Left);
    let options = SheetOptions {
        hand_page: true,
        ..SheetOptions::default()
    };
    let text = Sheet::of(&plan, options).page_text(Page::Hands);
    let known = "not known: hand details were removed on 2031-04-30";
    assert!(text.contains(&format!("Brakes hard: {known}")), "{text}");
    assert!(!text.contains("not asked"), "{text}");
    assert!(text.contains("Mounts from the: left"), "{text}");
}

/// Two riders who differ only in what the bench need not know get the same
/// first three pages.
#[test]
fn hand_details_stay_on_the_hand_page() {
    let plan = one_handed();
    let mut other = plan.clone();
    let evidence = Some(Evidence {
        source: Source::SeenByClinician,
        date: Date::new(2031, 4, 30),
        worn: Some(Worn::Splint),
        in_one_tap: false,
    });
    let left = &mut other.rider.hands.left;
    for ability in [Ability::Comfort, Ability::StaysOn, Ability::TellsApart] {
        left.abilities
            .set(ability, Answer::with(Difficulty::Moderate, evidence));
    }
    other.rider.own_words = Text::new("Aches in the morning.");
    let pages = |plan: &Plan| {
        let options = SheetOptions {
            hand_page: true,
            ..SheetOptions::default()
        };
        let sheet = Sheet::from(&Situation::of(plan), &[], options);
        let open = [Page::OnTheStand, Page::Work, Page::Proof].map(|page| sheet.page_text(page));
        (open, sheet.page_text(Page::Hands))
    };
    let ((open, hands), (other_open, other_hands)) = (pages(&plan), pages(&other));
    assert_eq!(open, other_open);
    assert_ne!(hands, other_hands);
    let open = open.concat();
    for ability in Ability::ALL {
        assert!(!open.contains(ability.words()), "{ability}");
    }
    for step in Difficulty::ALL {
        assert!(!open.contains(step.words()), "{step}");
    }
}

#[test]
fn no_template_brings_words_that_the_sheet_must_not_say() {
    const NEVER: &[&str] = &[
        "safe",
        "cleared",
        "weak",
        "affected",
        "normal",
        "impaired",
        "fail",
        "suffer",
        "compliant",
        "disab",
        "patient",
        "diagnos",
    ];
    for id in TemplateId::ALL {
        let options = SheetOptions {
            hand_page: true,
            ..SheetOptions::default()
        };
        let text = Sheet::of(&template(*id).plan("Test"), options)
            .to_text()
            .to_lowercase();
        for word in NEVER {
            assert!(!text.contains(word), "{id}: {word}");
        }
    }
}

#[test]
fn every_sheet_carries_every_caution_and_lines_to_sign() {
    let text = Sheet::of(&one_handed(), SheetOptions::default()).page_text(Page::Proof);
    for caution in CAUTIONS {
        assert!(text.contains(caution), "{caution}");
    }
    assert!(text.contains("A typed name is not a signature."));
    assert_eq!(text.matches("Signature: ________").count(), 3);
}

/// The whole sheet of one plan, word for word. Findings are given, so that a
/// new rule does not change it. `UPDATE_EXPECT=1 cargo test` writes it anew.
#[test]
fn the_sheet_reads_as_kept() {
    let plan = one_handed();
    let outer = button(
        &plan,
        ControlKind::BrakeShiftLever,
        Side::Left,
        ButtonPart::OuterPaddle,
    );
    let both = Finding {
        places: vec![Place::Button(outer)],
        message: "Both brakes hang on one lever.".into(),
        ..finding(Severity::Check, Acceptable::ByShop)
    };
    let plan = accept(&plan, &both, Role::Shop, "Asked locally; throw tested.");
    let open = finding(Severity::GoodToKnow, Acceptable::ByShop);
    let sheet = Sheet::from(
        &Situation::of(&plan),
        &[both, open],
        SheetOptions::default(),
    );
    expect_test::expect_file!["tests/one_handed.txt"].assert_eq(&sheet.to_text());
}

#[test]
fn settings_say_where_the_ladder_changes_the_front() {
    let plan = edited(
        &template(TemplateId::RoadPlain).plan("Test"),
        &[Edit::Plan(PlanEdit::ShiftPlanAndButtons(
            ShiftPlanKind::Ladder,
        ))],
    );
    let settings = Sheet::of(&plan, SheetOptions::default()).settings.settings;
    let of = |what: &str| {
        let found = settings.iter().find(|s| s.what == what);
        found.and_then(|s| s.value.as_deref())
    };
    assert_eq!(
        of("front up at rung"),
        Some("8 of 15 from easiest: 34×15 to 50×19")
    );
    assert_eq!(
        of("front down at rung"),
        Some("10 of 15 from hardest: 50×27 to 34×21")
    );
    let paired = edited(
        &plan,
        &[Edit::Plan(PlanEdit::ShiftPlan(ShiftPlanKind::Paired))],
    );
    let text = Sheet::of(&paired, SheetOptions::default()).to_text();
    assert!(text.contains("rear shifts with front larger: 2 cogs"));
}

#[test]
fn the_gear_card_is_a_page_of_its_own_once_teeth_are_entered() {
    let plan = template(TemplateId::RoadPlain).plan("Test");
    let options = SheetOptions {
        gear_card: true,
        ..SheetOptions::default()
    };
    let sheet = Sheet::of(&plan, options);
    assert!(sheet.pages().contains(&Page::Gears));
    let text = sheet.page_text(Page::Gears);
    for words in [
        "50/34 with 11-34, 12 cogs. Ratios from 1.00 (34×34) to 4.55 (50×11)",
        "Tyre: 28-622",
        "Largest cog, takes: ________",
        "foot of a climb, ",
        "50×11 | 4.55 | ",
    ] {
        assert!(text.contains(words), "{words} in {text}");
    }
    assert!(
        !Sheet::of(&plan, SheetOptions::default())
            .pages()
            .contains(&Page::Gears)
    );
    let unknown = edited(&plan, &[Edit::Bike(BikeEdit::Cogs(11))]);
    assert!(!Sheet::of(&unknown, options).pages().contains(&Page::Gears));
}

#[test]
fn a_bad_day_that_was_not_asked_is_not_told_as_a_usual_one() {
    let plan = one_handed();
    let about = |plan: &Plan| {
        Sheet::of(plan, SheetOptions::default())
            .coverage
            .about_bad_day()
    };
    assert_eq!(
        about(&plan),
        "Bad day not asked: where nothing is said of a bad day, it is not known."
    );
    let mut asked = plan.clone();
    asked.rider.hands.left.later = Answer::of(Later::Same);
    assert_eq!(
        about(&asked),
        "Where nothing is said of a bad day, it is the same as a usual one."
    );
}
