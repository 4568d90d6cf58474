//! Reads GPX (GPX 1.1 schema, `trkpt` and `rtept` with `lat`, `lon` and `ele`)
//! with a pull parser. A parser of whole GPX documents would also read and keep
//! times and refuse files that stray from the schema in what we never look at.

use std::io::Cursor;

use quick_xml::Reader;
use quick_xml::events::{BytesStart, Event};

use super::{Imported, MOST_BYTES, MOST_POINTS, Point, TrackError, road};

/// Reads a file piece by piece.
pub struct TrackReader {
    reader: Reader<Cursor<Vec<u8>>>,
    buffer: Vec<u8>,
    bytes: u64,
    seen_gpx: bool,
    /// Whether what is open is a point of a track or route.
    in_point: Option<Kind>,
    /// Whether what is open is a height: its text so far.
    height: Option<String>,
    point: Option<Point>,
    track: Vec<Point>,
    route: Vec<Point>,
    unplaced: usize,
    ended: bool,
    broken: bool,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Track,
    Route,
}

impl TrackReader {
    /// A reader of the bytes of a file.
    ///
    /// # Errors
    /// When the file is too large.
    pub fn new(file: Vec<u8>) -> Result<TrackReader, TrackError> {
        if file.len() > MOST_BYTES {
            return Err(TrackError::TooLarge);
        }
        let bytes = file.len() as u64;
        Ok(TrackReader {
            reader: Reader::from_reader(Cursor::new(file)),
            buffer: Vec::new(),
            bytes,
            seen_gpx: false,
            in_point: None,
            height: None,
            point: None,
            track: Vec::new(),
            route: Vec::new(),
            unplaced: 0,
            ended: false,
            broken: false,
        })
    }

    /// How much of the file was read, 0 to 1.
    pub fn progress(&self) -> f64 {
        if self.ended {
            return 1.0;
        }
        self.reader.buffer_position() as f64 / self.bytes.max(1) as f64
    }

    /// Reads on for at most so many parts of the file; whether the end was
    /// reached. Ten thousand take about a millisecond.
    ///
    /// # Errors
    /// When the file is no GPX file, or has too many points.
    pub fn advance(&mut self, parts: usize) -> Result<bool, TrackError> {
        for _ in 0..parts {
            if self.ended {
                break;
            }
            self.part()?;
        }
        Ok(self.ended)
    }

    /// Reads the rest and makes the road. The name is for people: what they
    /// call the road.
    ///
    /// # Errors
    /// When the file gives no road.
    pub fn finish(mut self, name: &str) -> Result<Imported, TrackError> {
        while !self.advance(usize::MAX)? {}
        // Some planners export only a route; a recording is always a track.
        let points = if self.track.is_empty() {
            &self.route
        } else {
            &self.track
        };
        match (self.seen_gpx, points.len()) {
            (false, _) => return Err(TrackError::NotGpx),
            (true, 0 | 1) if self.broken => return Err(TrackError::Broken),
            (true, 0) => return Err(TrackError::NoTrack),
            _ => {}
        }
        let mut imported = road(name, points, self.broken)?;
        if self.unplaced > 0 {
            let points = self.unplaced;
            let note = format!("{points} points without a place on earth were left out.");
            imported.notes.push(note);
        }
        Ok(imported)
    }

    fn part(&mut self) -> Result<(), TrackError> {
        self.buffer.clear();
        // Taken apart before anything is kept: the event borrows the buffer.
        let mut buffer = std::mem::take(&mut self.buffer);
        let read = self.reader.read_event_into(&mut buffer);
        match read {
            Ok(Event::Start(tag)) => self.open(&tag, false)?,
            Ok(Event::Empty(tag)) => self.open(&tag, true)?,
            Ok(Event::End(tag)) => self.close(tag.local_name().as_ref())?,
            Ok(Event::Text(text)) => {
                if let Some(height) = &mut self.height {
                    height.push_str(&text);
                }
            }
            Ok(Event::Eof) => {
                self.ended = true;
                self.broken |= self.in_point.is_some();
            }
            Ok(_) => {}
            Err(_) => (self.ended, self.broken) = (true, true),
        }
        self.buffer = buffer;
        Ok(())
    }

    fn open(&mut self, tag: &BytesStart<'_>, empty: bool) -> Result<(), TrackError> {
        let kind = match tag.local_name().as_ref() {
            "trkpt" => Kind::Track,
            "rtept" => Kind::Route,
            "gpx" => {
                self.seen_gpx = true;
                return Ok(());
            }
            "ele" if self.in_point.is_some() && !empty => {
                self.height = Some(String::new());
                return Ok(());
            }
            // The first thing of a GPX file is `gpx`: nothing else is read on.
            _ if !self.seen_gpx => return Err(TrackError::NotGpx),
            _ => return Ok(()),
        };
        let (latitude, longitude) = (degrees(tag, "lat", 90.0), degrees(tag, "lon", 180.0));
        self.in_point = Some(kind);
        match latitude.zip(longitude) {
            Some((latitude, longitude)) => {
                self.point = Some(Point {
                    latitude,
                    longitude,
                    height: None,
                });
            }
            None => self.unplaced += 1,
        }
        if empty { self.keep(kind) } else { Ok(()) }
    }

    fn close(&mut self, name: &str) -> Result<(), TrackError> {
        match (name, self.in_point) {
            ("ele", Some(_)) => {
                let text = self.height.take();
                let height = text.and_then(|text| text.trim().parse::<f64>().ok());
                // Beyond the earth's heights a number is a fault of the file.
                let height = height.filter(|height| (-500.0..=9000.0).contains(height));
                if let Some(point) = &mut self.point {
                    point.height = height;
                }
                Ok(())
            }
            ("trkpt" | "rtept", Some(kind)) => self.keep(kind),
            _ => Ok(()),
        }
    }

    fn keep(&mut self, kind: Kind) -> Result<(), TrackError> {
        self.in_point = None;
        self.height = None;
        if let Some(point) = self.point.take() {
            let points = match kind {
                Kind::Track => &mut self.track,
                Kind::Route => &mut self.route,
            };
            if points.len() >= MOST_POINTS {
                return Err(TrackError::TooLarge);
            }
            points.push(point);
        }
        Ok(())
    }
}

fn degrees(tag: &BytesStart<'_>, name: &str, most: f64) -> Option<f64> {
    let mut attributes = tag.attributes();
    let unchecked = attributes.with_checks(false).flatten();
    let mut named = unchecked.filter(|attribute| attribute.key.as_ref() == name);
    let attribute = named.next()?;
    let value: f64 = attribute.value.trim().parse().ok()?;
    (value.abs() <= most).then_some(value)
}
