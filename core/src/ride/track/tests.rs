use std::fmt::Write;

use super::*;
use crate::ride::road::Bend;

/// A GPX file of points given as latitude, longitude and height.
fn gpx(points: impl IntoIterator<Item = (f64, f64, Option<f64>)>) -> String {
    let mut file = String::from("<?xml version=\"1.0\"?>\n<gpx version=\"1.1\"><trk><trkseg>");
    for (n, (latitude, longitude, height)) in points.into_iter().enumerate() {
        let _ = write!(file, "<trkpt lat=\"{latitude}\" lon=\"{longitude}\">");
        if let Some(height) = height {
            let _ = write!(file, "<ele>{height}</ele>");
        }
        let _ = write!(
            file,
            "<time>2031-05-09T10:{:02}:{:02}Z</time></trkpt>",
            n / 60 % 60,
            n % 60
        );
    }
    file + "</trkseg></trk></gpx>"
}

fn read(file: &str) -> Result<Imported, TrackError> {
    TrackReader::new(file.as_bytes().to_vec())?.finish("Test")
}

/// Points straight north, so many, each 0.0001 degrees (11.12 m) on.
fn north(points: usize) -> impl Iterator<Item = (f64, f64, Option<f64>)> {
    (0..points).map(|n| (50.0 + n as f64 * 1e-4, 8.0, Some(100.0)))
}

#[test]
fn a_straight_level_track_is_a_straight_level_road() {
    let imported = read(&gpx(north(1001))).expect("it is a track");
    let road = &imported.road;
    // A tenth of a degree of the meridian of a sphere of 6371.0088 km.
    assert!((road.length() - 11_119.5).abs() < 1.0, "{}", road.length());
    assert_eq!(road.ascent(), 0.0);
    assert!((0..road.samples()).all(|n| road.bend(n) == Bend::Straight));
    assert_eq!(imported.notes, Vec::<String>::new());
}

#[test]
fn a_circle_has_the_bend_of_its_radius() {
    for (radius, class) in [
        (20.0, Bend::Tight),
        (35.0, Bend::Medium),
        (60.0, Bend::Open),
    ] {
        let degree = 111_195.0;
        let around = |n: usize| {
            let turn = n as f64 * 3.0 / radius;
            let (north, east) = (radius * turn.sin(), radius * turn.cos());
            (north / degree, east / degree, Some(1.0))
        };
        let imported = read(&gpx((0..400).map(around))).expect("it is a track");
        let road = &imported.road;
        let middle = (3..road.samples() - 3).map(|n| road.bend(n));
        assert!(
            middle.clone().all(|bend| bend == class),
            "{radius}: {:?}",
            middle.collect::<Vec<_>>()
        );
    }
}

#[test]
fn repeated_points_jumps_and_gaps_are_mended() {
    let mut points: Vec<_> = north(300).collect();
    for n in (0..300).rev().step_by(7) {
        points.insert(n, points[n]);
    }
    let clean = read(&gpx(north(300))).expect("it is a track").road;
    assert_eq!(
        read(&gpx(points.clone())).expect("it is a track").road,
        clean
    );
    points.insert(100, (51.0, 9.0, Some(5000.0)));
    let jumped = read(&gpx(points)).expect("it is a track");
    assert_eq!(jumped.road.length(), clean.length());
    assert!(jumped.notes.iter().any(|note| note.contains("far off")));

    let with_gap = north(200).chain(north(500).skip(400));
    let imported = read(&gpx(with_gap)).expect("it is a track");
    assert!((imported.road.length() - 499.0 * 11.1195).abs() < 1.0);
    assert!(
        imported
            .notes
            .iter()
            .any(|note| note.contains("1 gaps, the longest of 2.2 km"))
    );
}

#[test]
fn heights_may_lie_below_zero_or_be_missing() {
    let below = (0..300).map(|n| {
        (
            50.0 + n as f64 * 1e-4,
            8.0,
            Some(-20.0 + f64::from(n) / 100.0),
        )
    });
    let imported = read(&gpx(below)).expect("it is a track");
    assert!((imported.road.height(0.0) + 20.0).abs() < 0.5);

    let some = north(300)
        .enumerate()
        .map(|(n, p)| (p.0, p.1, p.2.filter(|_| n % 3 == 0)));
    let imported = read(&gpx(some)).expect("it is a track");
    assert_eq!(imported.road.height(500.0), 100.0);
    assert!(imported.notes.iter().any(|note| note.contains("filled in")));

    let none = north(300).map(|p| (p.0, p.1, None));
    let imported = read(&gpx(none)).expect("it is a track");
    assert_eq!(imported.road.ascent(), 0.0);
    assert!(
        imported
            .notes
            .iter()
            .any(|note| note.contains("taken as level"))
    );
}

#[test]
fn what_gives_no_road_says_why() {
    let error = |file: &str| read(file).expect_err("there is no road");
    for file in [
        "",
        "hello",
        "<html><body/></html>",
        "{\"a\": 1}",
        "\u{FEFF}",
    ] {
        assert_eq!(error(file), TrackError::NotGpx, "{file:?}");
    }
    assert_eq!(
        error("<gpx><wpt lat=\"1\" lon=\"2\"/></gpx>"),
        TrackError::NoTrack
    );
    assert_eq!(error("<gpx><trk><trkseg>"), TrackError::NoTrack);
    assert_eq!(error("<gpx><trk></wrong>"), TrackError::Broken);
    assert_eq!(error(&gpx(north(3))), TrackError::TooShort);
    assert_eq!(
        error(&gpx([(0.0, 0.0, None), (0.0, 30.0, None)])),
        TrackError::TooLong
    );
    for error in [TrackError::NotGpx, TrackError::NoTrack, TrackError::Broken] {
        assert!(error.to_string().ends_with('.'));
    }
}

#[test]
fn a_file_that_breaks_off_gives_the_road_so_far() {
    let whole = gpx(north(500));
    let half = &whole[..whole.len() / 2];
    let imported = read(half).expect("half a track is a track");
    assert!(
        imported.notes[0].contains("breaks off"),
        "{:?}",
        imported.notes
    );
    assert!((imported.road.length() - 2_750.0).abs() < 100.0);
}

#[test]
fn points_that_are_nowhere_are_left_out() {
    let mut file = gpx(north(200));
    for (n, bad) in ["lat=\"x\"", "lat=\"95\"", "lat=\"NaN\"", ""]
        .iter()
        .enumerate()
    {
        let good = format!("lat=\"{}\"", 50.0 + (n + 20) as f64 * 1e-4);
        file = file.replacen(&good, bad, 1);
    }
    let imported = read(&file).expect("it is a track");
    assert!(
        imported
            .notes
            .iter()
            .any(|note| note.contains("4 points without a place"))
    );
}

#[test]
fn a_route_is_ridden_where_there_is_no_track() {
    let route = gpx(north(200))
        .replace("trkpt", "rtept")
        .replace("trkseg", "rte");
    assert!(read(&route).is_ok());
}

#[test]
fn a_file_is_read_in_slices() {
    let file = gpx(north(5000)).into_bytes();
    let mut reader = TrackReader::new(file).expect("it is small");
    let (mut slices, mut last) = (0, 0.0);
    while !reader.advance(1000).expect("it is a track") {
        assert!(reader.progress() >= last);
        last = reader.progress();
        slices += 1;
    }
    assert!(slices > 10);
    assert_eq!(reader.progress(), 1.0);
    assert_eq!(reader.finish("Test").expect("it is a track").points, 5000);
}

/// Neither coordinates nor times are in what is kept.
#[test]
fn places_and_times_are_dropped() {
    let secret = (0..2000).map(|n| {
        let turn = n as f64 / 300.0;
        (
            47.123_456 + n as f64 * 1e-4,
            11.654_321 + 0.001 * turn.sin(),
            Some(500.0),
        )
    });
    let road = read(&gpx(secret)).expect("it is a track").road;
    let kept = format!("{road:?}{}{}", road.packed_heights(), road.packed_bends());
    for trace in [
        "47.1", "47.2", "11.65", "123456", "654321", "2031", "05-09", "10:",
    ] {
        assert!(!kept.contains(trace), "{trace}");
    }
}
