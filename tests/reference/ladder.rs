//! The best ladder against brute force, and against a general graph search
//! where brute force takes too long.

use leverwright_core::gears::{
    CogMove, Direction, Gear, HandCrossovers, Ladder, LadderGoal, LadderSettings,
};
use leverwright_tests::ladder::Bike;
use proptest::prelude::*;

/// Cassettes of every length up to eight: close, even, wide and uneven ones.
fn cassettes(n: usize) -> Vec<Vec<u64>> {
    let sets: [&[u64]; 5] = [
        &[11, 12, 13, 14, 15, 16, 17, 18],
        &[11, 13, 15, 17, 19, 22, 25, 28],
        &[10, 12, 15, 19, 24, 30, 38, 48],
        &[11, 12, 14, 19, 21, 30, 32, 44],
        &[9, 20, 21, 22, 23, 24, 25, 60],
    ];
    sets.iter()
        .map(|set| set[..n].iter().rev().copied().collect())
        .collect()
}

#[test]
fn every_shape_up_to_two_by_eight_against_brute_force() {
    let ring_sets: [&[u64]; 9] = [
        &[40],
        &[34, 50],
        &[39, 53],
        &[30, 46],
        &[24, 50],
        &[36, 38],
        &[22, 36],
        &[20, 60],
        &[48, 50],
    ];
    let (mut ladders, mut none) = (0, 0);
    for rings in ring_sets {
        for n in 1..=8 {
            for cogs in cassettes(n) {
                for goal in [LadderGoal::Even, LadderGoal::Comfort] {
                    for closed in 0..4 {
                        // Nothing, a crossed gear, one in the middle, both.
                        let all = [(rings.len() - 1, 0), (0, n / 2)];
                        let forbidden = (0..2).filter(|at| closed >> at & 1 == 1);
                        let bike = Bike {
                            rings: rings.to_vec(),
                            cogs: cogs.clone(),
                            goal,
                            forbidden: forbidden.map(|at| all[at]).collect(),
                        };
                        let best = bike.best_by_brute_force();
                        let words = format!("{rings:?} {cogs:?} {goal} {:?}", bike.forbidden);
                        assert_eq!(bike.found(), best, "{words}");
                        assert_eq!(bike.best_by_graph(), best, "{words}");
                        *if best.is_some() {
                            &mut ladders
                        } else {
                            &mut none
                        } += 1;
                    }
                }
            }
        }
    }
    assert!(ladders > 500 && none > 50, "{ladders} and {none}");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    #[test]
    fn larger_drivetrains_against_a_graph_search(
        rings in prop::collection::btree_set(20..62_u64, 2..=3),
        cogs in prop::collection::btree_set(9..52_u64, 6..=14),
        comfort in prop::bool::ANY,
        forbidden in prop::collection::btree_set((0..3_usize, 0..14_usize), 0..4),
    ) {
        let bike = Bike {
            rings: rings.into_iter().collect(),
            cogs: cogs.into_iter().rev().collect(),
            goal: if comfort { LadderGoal::Comfort } else { LadderGoal::Even },
            forbidden: forbidden.into_iter().collect(),
        };
        prop_assert_eq!(bike.found(), bike.best_by_graph());
    }
}

/// One way of many: crossovers set by hand are never better than the best.
#[test]
fn no_crossovers_set_by_hand_are_better() {
    let bike = Bike {
        rings: vec![34, 50],
        cogs: vec![34, 30, 27, 24, 21, 19, 17, 15, 14, 13, 12, 11],
        goal: LadderGoal::Even,
        forbidden: Vec::new(),
    };
    let (best, gears) = (bike.found().expect("a ladder"), bike.gears());
    let mut works = 0;
    for n in 0..12_u32.pow(4) {
        let digit = |at: u32| (n / 12_u32.pow(at) % 12) as u8;
        let set = HandCrossovers {
            up: CogMove {
                leaves: digit(0),
                lands: digit(1),
            },
            down: CogMove {
                leaves: digit(2),
                lands: digit(3),
            },
        };
        let settings = LadderSettings {
            by_hand: vec![set],
            ..LadderSettings::default()
        };
        if let Ok(ladder) = Ladder::of(&gears, &settings) {
            works += 1;
            let plain = |gear: &Gear| (usize::from(gear.ring), usize::from(gear.cog));
            let up: Vec<_> = ladder.path(Direction::Up).iter().map(plain).collect();
            let down: Vec<_> = ladder
                .path(Direction::Down)
                .iter()
                .rev()
                .map(plain)
                .collect();
            assert!(bike.worth([&up, &down]) >= best, "{set:?}");
        }
    }
    assert!(works > 100, "{works}");
}
