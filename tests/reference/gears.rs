//! Gear arithmetic against published values.

use leverwright_core::gears::{
    Gear, Gears, Paired, PairedSettings, Percent, Rolling, Rpm, SAME_GEAR, Sprockets, Teeth, Tyre,
};
use leverwright_core::units::Mm;
use std::f64::consts::PI;

/// Gears with one or more rings, on a wheel given by its diameter in inches.
fn gears(rings: &[u8], cogs: &[u8], inches: f64) -> Gears {
    let teeth = |list: &[u8]| list.iter().map(|n| Teeth(*n)).collect::<Vec<_>>();
    let rings = Sprockets::rings(&teeth(rings)).expect("rings");
    let cogs = Sprockets::cogs(&teeth(cogs)).expect("cogs");
    Gears {
        rings: rings.teeth().expect("counted").to_vec(),
        cogs: cogs.teeth().expect("counted").to_vec(),
        wheel: Some(Rolling::Measured(Mm(inches * 25.4 * PI))),
        crank: Some(Mm(170.0)),
    }
}

fn inches(ring: u8, cog: u8, wheel: f64) -> f64 {
    let gears = gears(&[ring], &[cog], wheel);
    gears.gear_inches(Gear::default()).expect("a wheel").0
}

#[track_caller]
fn near(found: f64, published: f64, within: f64) {
    assert!(
        (found - published).abs() <= within,
        "{found} for {published}"
    );
}

#[test]
fn gear_inches() {
    // General how-to text on gear charts (seen): 53/17 on 27 in is 84.2 in.
    near(inches(53, 17, 27.0), 84.2, 0.05);
    // County cycling club notes (seen): 39/26 on 27 in is 40.5 in.
    near(inches(39, 26, 27.0), 40.5, 0.05);
    // Cassell, Cycle Repairing and Adjusting, 1916, p. 119 (seen): 50/18 on a
    // 26 in wheel is 72 2/9.
    near(inches(50, 18, 26.0), 72.0 + 2.0 / 9.0, 1e-9);
}

/// Inches rolled in one turn of the crank in a gear of so many inches.
fn rolled(gear_inches: f64) -> f64 {
    // One tooth of the ring for each of the cog makes the wheel the gear.
    let gears = gears(&[20], &[20], gear_inches);
    gears.development(Gear::default()).expect("a wheel").0 / 0.0254
}

#[test]
fn development() {
    // County cycling club notes (seen): 40.5 in rolls 127.23 in, with pi 3.1415.
    near(rolled(40.5), 127.23, 0.01);
    // Cassell, 1916, p. 118 (seen): gears of 60 and 80 roll 188 1/2 and 251 in.
    near(rolled(60.0), 188.5, 0.5);
    near(rolled(80.0), 251.0, 0.5);
    // 16 CFR 1512.5 note 3, 2011 edition (seen): 6.67 m is 21.9 ft.
    near(6.67 / 0.3048, 21.9, 0.05);
}

/// ISO 4210-1, in TBIS 4210-1:2018 cl. 2.23 (seen): the highest gear is the one
/// with the greatest distance travelled for one rotation of the cranks.
#[test]
fn the_hardest_gear_goes_farthest() {
    let gears = gears(&[26, 36, 46], &[11, 13, 15, 18, 21, 24, 28, 34], 27.0);
    let far = |gear| gears.development(gear).expect("a wheel").0;
    assert!(gears.all().all(|gear| far(gear) <= far(gears.hardest())));
    assert!(gears.all().all(|gear| far(gear) >= far(gears.easiest())));
}

#[test]
fn speed_and_cadence() {
    let gears = gears(&[39], &[26], 27.0);
    let gear = Gear::default();
    // County cycling club notes (seen): 40.5 in at 60 rpm is 7.22 mph, which is
    // truncated; 7.229 exactly.
    let kmh = gears.speed(gear, Rpm(60.0)).expect("a wheel");
    let mph = kmh.0 / 1.609_344;
    near(mph, 7.229, 0.001);
    assert_eq!((mph * 100.0).trunc() / 100.0, 7.22);
    near(gears.cadence(gear, kmh).expect("a wheel").0, 60.0, 1e-9);
}

#[test]
fn circumference() {
    // A widely printed table, in mm. Secondary source (seen); the last six from
    // memory. The nominal rule stays within 0.3 % of it for 622 mm seats, within
    // 1.5 % elsewhere.
    for (marking, printed, within) in [
        ("20-622", 2086.0, 0.004),
        ("23-622", 2096.0, 0.003),
        ("25-622", 2105.0, 0.003),
        ("28-622", 2136.0, 0.003),
        ("32-622", 2155.0, 0.003),
        ("35-622", 2168.0, 0.003),
        ("38-622", 2180.0, 0.007),
        ("40-622", 2200.0, 0.003),
        ("47-622", 2268.0, 0.015),
        ("40-584", 2079.0, 0.015),
        ("50-559", 2050.0, 0.015),
        ("47-507", 1890.0, 0.015),
    ] {
        let tyre = Tyre::parse(marking).expect("there is such a tyre");
        near(tyre.circumference().0, printed, printed * within);
    }
    // ISO 5775 (common practice): 700C is 622, 650B 584, 26 in 559, 24 in 507,
    // 20 in 406.
    for seat in [622, 584, 559, 507, 406] {
        assert!(Tyre::new(47, seat).is_ok(), "{seat}");
    }
}

#[test]
fn capacity() {
    // General text (seen): 53/39 with 12-23 gives 14 + 11 = 25.
    let double = gears(&[39, 53], &[12, 13, 15, 17, 19, 21, 23], 27.0);
    assert_eq!(double.wrap(), Teeth(25));
    // The same: the middle ring of three does not matter.
    let triple = gears(&[39, 47, 53], &[12, 13, 15, 17, 19, 21, 23], 27.0);
    assert_eq!(triple.wrap(), double.wrap());
    assert_eq!(triple.front_difference(), Teeth(14));
}

/// ISO 10823 and handbooks of machine design (memory): two equal wheels of Z
/// teeth need 2C + Z pitches; a difference adds ((Z2 - Z1) / 2π)² / C.
#[test]
fn chain_length() {
    let equal = gears(&[40], &[40], 27.0);
    // 32 pitches apart: 64 + 40.
    assert_eq!(equal.chain_pitches(Mm(32.0 * 12.7)), Some(104));
    // 64 + 39 is odd, so one more.
    let odd = gears(&[39], &[39], 27.0);
    assert_eq!(odd.chain_pitches(Mm(32.0 * 12.7)), Some(104));
    // 64 + 42 + (16 / 2π)² / 32 = 106.2, so 108.
    let unequal = gears(&[50], &[34], 27.0);
    assert_eq!(unequal.chain_pitches(Mm(32.0 * 12.7)), Some(108));
    assert_eq!(unequal.chain_pitches(Mm(0.0)), None);
}

/// *Common practice*: gain is the wheel's radius over the crank's length, times
/// the ratio.
#[test]
fn gain() {
    let gears = gears(&[40], &[20], 27.0);
    let gain = gears.gain(Gear::default()).expect("wheel and crank");
    near(gain.0, 2.0 * (27.0 * 25.4 / 2.0) / 170.0, 1e-9);
}

/// *Common practice*: with 50/34 and 11-34 at three cogs a front change nearly
/// cancels in the middle of the cassette; two cogs are the usual choice.
#[test]
fn paired_counts() {
    let cogs = [11, 12, 13, 14, 15, 17, 19, 21, 24, 27, 30, 34];
    let gears = gears(&[34, 50], &cogs, 27.0);
    let usual = Paired::of(&gears, PairedSettings::default());
    assert_eq!((usual.larger, usual.smaller), (2, 2));
    let middle = Gear::new(0, 6);
    near(gears.step(middle, Gear::new(1, 3)).0, 0.0, 8.0);
}

/// Duplicates against plain division.
#[test]
fn duplicates() {
    let gears = gears(&[30, 40], &[12, 15, 16, 18, 20, 24], 27.0);
    let mut found = gears.duplicates(Percent(0.01));
    found.retain(|(a, b)| gears.words(*a) == "30×15" || gears.words(*b) == "40×20");
    // 30/15 = 40/20.
    assert_eq!(found.len(), 1);
    assert!(gears.duplicates(SAME_GEAR).len() >= gears.duplicates(Percent(0.01)).len());
}
