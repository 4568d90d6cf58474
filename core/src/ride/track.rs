//! A recorded track becomes a road.
//!
//! GPX files are read piece by piece, so that a page can show how far it is and
//! stop. Of each point its place and height are read and nothing else, not even
//! its time; the road that comes of them keeps distances, heights and coarse
//! bends, and the places are dropped.

mod clean;
mod gpx;
mod shape;

pub use gpx::TrackReader;

use thiserror::Error;

use crate::ride::road::Road;
use crate::text::Text;

/// The largest file that is read, in bytes.
pub const MOST_BYTES: usize = 100_000_000;

/// The most points of a track that are read.
pub const MOST_POINTS: usize = 500_000;

/// Why a file gives no road: a sentence with the cure.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
pub enum TrackError {
    /// It is not a GPX file.
    #[error("This is not a GPX file. Export the ride as GPX from where it was recorded.")]
    NotGpx,
    /// It has no track and no route.
    #[error("The file has no track and no route. Export the ride itself, not places along it.")]
    NoTrack,
    /// It is too short.
    #[error("The track is shorter than 100 m. Choose a longer ride.")]
    TooShort,
    /// It is too long.
    #[error("The track is longer than 2,000 km. Cut it into days and choose one.")]
    TooLong,
    /// It is too large.
    #[error(
        "The file is larger than 100 MB or has more than 500,000 points. Export it with fewer points."
    )]
    TooLarge,
    /// It breaks off before it has a track.
    #[error("The file is broken before its track begins. Export it again.")]
    Broken,
}

/// A road from a track, and what people should know about it.
#[derive(Debug, Clone, PartialEq)]
pub struct Imported {
    /// The road.
    pub road: Road,
    /// Points that the file has.
    pub points: usize,
    /// Metres along the points as they came.
    pub raw_length: f64,
    /// Metres climbed if every upward step counted.
    pub raw_ascent: f64,
    /// What was mended or is missing, as sentences.
    pub notes: Vec<String>,
}

/// A point of a track.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Point {
    /// In degrees, north positive.
    latitude: f64,
    /// In degrees, east positive.
    longitude: f64,
    /// In metres; `None` where the file has none.
    height: Option<f64>,
}

/// Makes a road of points.
fn road(name: &str, points: &[Point], broken: bool) -> Result<Imported, TrackError> {
    let cleaned = clean::clean(points);
    let mut notes = cleaned.notes;
    if broken {
        let read = points.len();
        notes.insert(
            0,
            format!("The file breaks off after {read} points; the road ends there."),
        );
    }
    let length = cleaned.along.last().copied().unwrap_or(0.0);
    if length < crate::ride::road::SHORTEST {
        return Err(TrackError::TooShort);
    }
    if length > crate::ride::road::LONGEST {
        return Err(TrackError::TooLong);
    }
    let shape = shape::shape(&cleaned.points, &cleaned.along, &cleaned.heights);
    let name = match name.trim() {
        "" => Text::new("Imported road"),
        name => Text::new(name),
    };
    let road = Road::new(name, length, &shape.heights, shape.bends, Vec::new())
        .ok_or(TrackError::TooShort)?;
    Ok(Imported {
        road,
        points: points.len(),
        raw_length: cleaned.raw_length,
        raw_ascent: cleaned.raw_ascent,
        notes,
    })
}

#[cfg(test)]
mod tests;
