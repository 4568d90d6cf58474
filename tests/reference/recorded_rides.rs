//! Two recorded rides, fetched by `cargo xtask setup`: example data of PyPI's
//! `sweat` 0.25.0 (MIT).

use leverwright_core::ride::track::{Imported, TrackReader};
use leverwright_core::text::Text;

/// The ride in a file that the set-up fetches.
///
/// # Panics
/// When it was not fetched: with what to do.
#[track_caller]
pub fn recorded(name: &str) -> Imported {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../.tools/rides");
    let file = std::fs::read(format!("{folder}/{name}")).unwrap_or_else(|error| {
        panic!("no {name} ({error}). `cargo xtask setup` fetches it once and needs a network then.")
    });
    let reader = TrackReader::new(file).expect("it is small enough");
    reader.finish("").expect("it is a ride")
}

#[track_caller]
fn within(computed: f64, published: f64, percent: f64) {
    let off = 100.0 * (computed / published - 1.0);
    assert!(
        off.abs() <= percent,
        "{computed} is {off:.2} % off {published}"
    );
}

/// A hilly ride: 8,357 points, 57.57 km, 229.0 to 568.0 m, raw ascent 1341 m;
/// the recorder's total 57,567 m and 1254 m (seen).
#[test]
fn a_hilly_ride_has_the_recorders_totals() {
    let ride = recorded("activity_4078723797.gpx");
    assert_eq!((ride.points, ride.raw_ascent.round()), (8357, 1341.0));
    within(ride.raw_length, 57_567.0, 0.5);
    within(ride.road.length(), 57_567.0, 0.5);
    within(ride.road.ascent(), 1254.0, 10.0);
    let heights = (0..=576).map(|n| ride.road.height(f64::from(n) * 100.0));
    let (low, high) = heights.fold((f64::MAX, f64::MIN), |(l, h), x| (l.min(x), h.max(x)));
    assert!(
        (229.0..240.0).contains(&low) && (555.0..568.0).contains(&high),
        "{low} {high}"
    );
}

/// A flat ride: 5,159 points, 36.27 km along the points, 0.2 to 16.8 m, raw
/// ascent 229.6 m; the recorder's total 36.32 km and 79 m (seen).
#[test]
fn a_flat_ride_has_the_recorders_totals() {
    let ride = recorded("activity_4801048867.gpx");
    assert_eq!((ride.points, ride.raw_ascent.round()), (5159, 230.0));
    within(ride.raw_length, 36_270.0, 0.05);
    within(ride.road.length(), 36_323.0, 0.5);
    within(ride.road.ascent(), 79.0, 10.0);
}

/// 96 points below sea level (seen).
#[test]
fn a_ride_below_the_sea_stays_there() {
    let ride = recorded("activity_5039744860.gpx");
    assert_eq!(ride.points, 96);
    assert!(ride.road.height(0.0) < 0.0 && ride.road.ascent() < 5.0);
}

/// What a road keeps: nothing of the file's places, dates and names.
#[test]
fn nothing_of_place_and_time_is_kept() {
    let ride = recorded("activity_4801048867.gpx");
    assert_eq!(ride.road.name, Text::new("Imported road"));
    let kept = format!(
        "{ride:?}{}{}",
        ride.road.packed_heights(),
        ride.road.packed_bends()
    );
    for trace in ["52.09", "52.1", "6.64", "2020", "04-18", "T11:", "Berkel"] {
        assert!(!kept.contains(trace), "{trace}");
    }
}
