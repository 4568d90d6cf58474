//! Ladders as people would look at them.

use proptest::prelude::*;

use super::*;
use crate::gears::LadderGoal;
use crate::gears::testing::{ROAD_12, gears};

fn settings(goal: LadderGoal) -> LadderSettings {
    LadderSettings {
        goal,
        ..LadderSettings::default()
    }
}

fn best(gears: &Gears, goal: LadderGoal) -> Ladder {
    Ladder::of(gears, &settings(goal)).expect("there is a ladder")
}

/// Crossovers in words: "34×17 > 50×21".
fn crossovers(gears: &Gears, ladder: &Ladder) -> Vec<String> {
    let words = |c: &Crossover| format!("{} > {}", gears.words(c.from), gears.words(c.to));
    ladder.crossovers().iter().map(words).collect()
}

#[test]
fn a_crossover_moves_with_its_landing_or_the_landing_alone() {
    let gears = gears("34 50", ROAD_12);
    let up = best(&gears, LadderGoal::Even)
        .crossover(0, Direction::Up)
        .expect("it crosses over");
    let (leaves, lands) = (up.from.cog, up.to.cog);
    let moved = |end, harder| up.stepped(&gears, end, harder);
    assert_eq!(
        moved(CrossoverEnd::Leaves, true),
        Some(CogMove {
            leaves: leaves + 1,
            lands: lands + 1
        })
    );
    assert_eq!(
        moved(CrossoverEnd::Lands, false),
        Some(CogMove {
            leaves,
            lands: lands - 1
        })
    );
    // At the ends the landing keeps on the cassette, and a step leads nowhere.
    assert_eq!(up.leaving(&gears, 0).lands, 0);
    assert_eq!(up.leaving(&gears, 200).leaves, 11);
    let at_end = Crossover {
        from: Gear::new(0, 11),
        ..up
    };
    assert_eq!(at_end.stepped(&gears, CrossoverEnd::Leaves, true), None);
}

#[test]
fn a_road_ladder_lands_on_two_cogs() {
    let gears = gears("34 50", ROAD_12);
    let ladder = best(&gears, LadderGoal::Even);
    assert_eq!(
        crossovers(&gears, &ladder),
        ["34×15 > 50×19", "50×27 > 34×21"]
    );
}

#[test]
fn a_comfortable_ladder_keeps_its_crossovers_apart() {
    let gears = gears("30 46", "11 13 15 17 19 21 24 27 31 35 40");
    let apart = |goal| {
        let ladder = best(&gears, goal);
        let rungs = |crossover: &Crossover| ladder.rungs_to_opposite(*crossover);
        ladder.crossovers().iter().map(rungs).collect::<Vec<_>>()
    };
    assert_eq!(apart(LadderGoal::Even), [Some(1), Some(1)]);
    assert_eq!(apart(LadderGoal::Comfort), [Some(5), Some(5)]);
}

#[test]
fn a_comfortable_ladder_leaves_the_large_ring_early() {
    let gears = gears("34 50", ROAD_12);
    let ladder = best(&gears, LadderGoal::Comfort);
    for crossover in ladder.crossovers() {
        assert_eq!(crossover.cogs(), 2);
        if crossover.way == Direction::Down {
            assert!(crossover.from.cog >= 2);
        }
    }
}

/// Presses that change the front, alternating from a gear.
fn front_changes(gears: &Gears, ladder: &Ladder, from: Gear, first: Direction) -> usize {
    let (mut at, mut way, mut changes) = (from, first, 0);
    for _ in 0..60 {
        if let Some(next) = ladder.next(gears, at, way) {
            changes += usize::from(next.ring != at.ring);
            at = next;
        }
        way = way.other();
    }
    changes
}

/// What must hold of every ladder, from whatever gear it is walked.
fn keeps_its_word(gears: &Gears, settings: &LadderSettings, ladder: &Ladder) -> Result<(), String> {
    let ends = Ends::of(gears, settings).map_err(|e| e.to_string())?;
    for way in Direction::ALL {
        let path = ladder.path(*way);
        let (first, last, beyond) = match way {
            Direction::Up => (ends.easiest, ends.hardest, Ordering::Greater),
            Direction::Down => (ends.hardest, ends.easiest, Ordering::Less),
        };
        if (path.first(), path.last()) != (Some(&first), Some(&last)) {
            return Err(format!("{way} does not lead from end to end: {path:?}"));
        }
        if path.iter().any(|rung| settings.forbids(*rung)) {
            return Err(format!("{way} uses a forbidden gear: {path:?}"));
        }
        for pair in path.windows(2) {
            if gears.compare(pair[1], pair[0]) != beyond {
                return Err(format!("{way} is not monotonic: {path:?}"));
            }
            let changes = pair[0].ring != pair[1].ring;
            if !changes && pair[0].cog.abs_diff(pair[1].cog) != 1 {
                return Err(format!("{way} skips a cog: {path:?}"));
            }
        }
    }
    for gear in gears.all() {
        for way in Direction::ALL {
            if front_changes(gears, ladder, gear, *way) > 1 {
                return Err(format!("alternating {way} from {gear}: {ladder:?}"));
            }
            let mut at = gear;
            for _ in 0..60 {
                match ladder.next(gears, at, *way) {
                    Some(next) if *way == Direction::Up && gears.compare(next, at).is_le() => {
                        return Err(format!("up from {at} is not harder: {ladder:?}"));
                    }
                    Some(next) if *way == Direction::Down && gears.compare(next, at).is_ge() => {
                        return Err(format!("down from {at} is not easier: {ladder:?}"));
                    }
                    Some(next) => at = next,
                    None => break,
                }
            }
            let end = match way {
                Direction::Up => ends.hardest,
                Direction::Down => ends.easiest,
            };
            let gone_past = match way {
                Direction::Up => gears.compare(at, end).is_ge(),
                Direction::Down => gears.compare(at, end).is_le(),
            };
            if at != end && !gone_past && settings.forbidden.is_empty() {
                return Err(format!("{way} from {gear} ends at {at}: {ladder:?}"));
            }
        }
    }
    Ok(())
}

/// Any drivetrain: sizes in order, as bikes and madmen have them.
fn any_gears() -> impl Strategy<Value = Gears> {
    let set = |from: u8, to: u8, most: usize| {
        prop::collection::btree_set(from..=to, 1..=most)
            .prop_map(|set| set.into_iter().map(crate::gears::Teeth).collect::<Vec<_>>())
    };
    (set(20, 60, 3), set(9, 52, 14)).prop_map(|(rings, mut cogs)| {
        cogs.reverse();
        Gears {
            rings,
            cogs,
            wheel: None,
            crank: None,
        }
    })
}

fn any_settings() -> impl Strategy<Value = LadderSettings> {
    let gear = (0..3u8, 0..14u8).prop_map(|(ring, cog)| Gear { ring, cog });
    let forbidden = prop::collection::btree_set(gear, 0..6);
    (prop::bool::ANY, forbidden).prop_map(|(comfort, forbidden)| LadderSettings {
        goal: if comfort {
            LadderGoal::Comfort
        } else {
            LadderGoal::Even
        },
        forbidden: forbidden.into_iter().collect(),
        by_hand: Vec::new(),
    })
}

/// The same gears the other way round: what was hardest is easiest.
fn reversed(gears: &Gears) -> Gears {
    // Numbers whose multiples are tooth counts; only the ratios matter here.
    let turned = |teeth: &[crate::gears::Teeth], of: u32| {
        teeth
            .iter()
            .rev()
            .map(|t| crate::gears::Teeth((of / u32::from(t.0)) as u8))
            .collect()
    };
    Gears {
        rings: turned(&gears.rings, 1680),
        cogs: turned(&gears.cogs, 420),
        ..gears.clone()
    }
}

proptest! {
    #[test]
    fn every_ladder_keeps_its_word(gears in any_gears(), settings in any_settings()) {
        if let Ok(ladder) = Ladder::of(&gears, &settings) {
            prop_assert_eq!(keeps_its_word(&gears, &settings, &ladder), Ok(()));
        }
    }

    #[test]
    fn a_ladder_set_by_hand_keeps_its_word_or_is_refused(
        gears in any_gears(),
        settings in any_settings(),
        cogs in prop::collection::vec((0..14u8, 0..14u8, 0..14u8, 0..14u8), 0..3),
    ) {
        let by_hand = cogs.into_iter().map(|(a, b, c, d)| HandCrossovers {
            up: CogMove { leaves: a, lands: b },
            down: CogMove { leaves: c, lands: d },
        });
        let settings = LadderSettings { by_hand: by_hand.collect(), ..settings };
        if let Ok(ladder) = Ladder::of(&gears, &settings) {
            prop_assert_eq!(keeps_its_word(&gears, &settings, &ladder), Ok(()));
        }
    }

    #[test]
    fn what_was_worked_out_stands_when_set_by_hand(gears in any_gears(), goal in any_settings()) {
        let settings = LadderSettings { forbidden: Vec::new(), ..goal };
        if let Ok(ladder) = Ladder::of(&gears, &settings) {
            let by_hand = ladder.as_set_by_hand(&gears);
            let again = Ladder::of(&gears, &LadderSettings { by_hand, ..settings });
            prop_assert_eq!(again, Ok(ladder));
        }
    }

    /// Turned round, the way up is the way down: the best ladder costs the same.
    #[test]
    fn a_reversed_drivetrain_gives_a_reversed_ladder(
        rings in prop::sample::subsequence(vec![24u8, 28, 30, 35, 40, 42, 48, 56, 60, 70], 1..=3),
        cogs in prop::sample::subsequence(vec![10u8, 12, 14, 15, 20, 21, 28, 30, 35, 42], 2..=10),
    ) {
        let teeth = |list: Vec<u8>| list.into_iter().map(crate::gears::Teeth).collect::<Vec<_>>();
        let mut cogs = teeth(cogs);
        cogs.reverse();
        let gears = Gears { rings: teeth(rings), cogs, wheel: None, crank: None };
        let turned = reversed(&gears);
        let (here, there) = (
            Ladder::of(&gears, &settings(LadderGoal::Even)),
            Ladder::of(&turned, &settings(LadderGoal::Even)),
        );
        prop_assert_eq!(here.is_ok(), there.is_ok());
        if let (Ok(here), Ok(there)) = (here, there) {
            let flip = |gear: &Gear| Gear::new(
                gears.rings.len() as u8 - 1 - gear.ring,
                gears.cogs.len() as u8 - 1 - gear.cog,
            );
            let flipped = Ladder {
                up: there.down.iter().map(flip).collect(),
                down: there.up.iter().map(flip).collect(),
                forbidden: Vec::new(),
            };
            // Where two are equally good, either may come out.
            prop_assert_eq!(what_it_costs(&gears, &here), what_it_costs(&gears, &flipped));
            prop_assert_eq!(keeps_its_word(&gears, &settings(LadderGoal::Even), &flipped), Ok(()));
        }
    }
}

fn what_it_costs(gears: &Gears, ladder: &Ladder) -> (u64, u64, u64, u64, u64) {
    let (mut far, mut wide, mut moved, mut most, mut squares) = (0, 0, 0, 0, 0);
    for way in Direction::ALL {
        for pair in ladder.path(*way).windows(2) {
            let (easier, harder) = match way {
                Direction::Up => (pair[0], pair[1]),
                Direction::Down => (pair[1], pair[0]),
            };
            let step = best::weight(gears, easier, harder);
            most = most.max(step);
            squares += step * step;
            wide += u64::from(best::is_wide(gears, easier, harder));
            if easier.ring != harder.ring {
                let cogs = u64::from(easier.cog.abs_diff(harder.cog));
                far += u64::from(cogs > 3);
                moved += cogs;
            }
        }
    }
    (far, wide, moved, most, squares)
}

#[test]
fn forbidden_gears_may_leave_no_ladder() {
    let gears = gears("34 50", "11 13 15 17 19 21");
    let mut settings = settings(LadderGoal::Even);
    // The middle of both rings is closed.
    for cog in 1..5 {
        settings.forbidden.push(Gear::new(0, cog));
    }
    for cog in 1..5 {
        settings.forbidden.push(Gear::new(1, cog));
    }
    assert_eq!(
        Ladder::of(&gears, &settings).map_err(|e| e.to_string()),
        Err("No ladder leads through the gears that are allowed, from ring 1 cog 1 to ring 2 cog 6. Allow some of the forbidden gears again.".into())
    );
    settings.forbidden = gears.all().collect();
    assert_eq!(Ladder::of(&gears, &settings), Err(LadderError::NoGear));
}

#[test]
fn a_crossover_set_by_hand_that_cannot_work_is_refused_with_the_reason() {
    let gears = gears("34 50", ROAD_12);
    let ladder = best(&gears, LadderGoal::Even);
    let mut by_hand = ladder.as_set_by_hand(&gears);
    by_hand[0].up = CogMove {
        leaves: 4,
        lands: 2,
    };
    let set = LadderSettings {
        by_hand,
        ..settings(LadderGoal::Even)
    };
    assert_eq!(
        Ladder::of(&gears, &set).map_err(|e| e.to_string()),
        Err("The up crossover between ring 1 and ring 2 does not work: it lands where the crossover down leaves, so that presses up and down would change the front each time. Move it, or take the one worked out.".into())
    );
}
