//! Prints to PDF, and reads the paper back.

use super::Browser;
use base64::Engine;
use base64::prelude::BASE64_STANDARD;
use serde_json::{Value, json};
use std::io::Write;
use std::path::Path;
use std::process::Command;
use tempfile::NamedTempFile;

/// The paper in the printer. A page size in the style sheet goes before it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Paper {
    /// ISO 216: 210 mm by 297 mm.
    A4,
    /// ANSI/ASME Y14.1 size A: 8.5 in by 11 in.
    Letter,
}

impl Paper {
    /// Width and height in inches.
    fn inches(self) -> (f64, f64) {
        match self {
            Self::A4 => (210.0 / 25.4, 297.0 / 25.4),
            Self::Letter => (8.5, 11.0),
        }
    }

    /// Width and height in points of 1/72 in.
    pub fn points(self) -> (f64, f64) {
        let (width, height) = self.inches();
        (width * 72.0, height * 72.0)
    }
}

/// A printed document.
pub struct Pdf {
    file: NamedTempFile,
}

impl Browser {
    /// Prints the page as the browser's own print window would, with its usual margins.
    #[track_caller]
    pub fn print(&self, paper: Paper) -> Pdf {
        let (width, height) = paper.inches();
        let printed = self.cdp(
            "Page.printToPDF",
            json!({
                "paperWidth": width,
                "paperHeight": height,
                "preferCSSPageSize": true,
                "printBackground": true,
                "generateTaggedPDF": true,
            }),
        );
        let mut file = NamedTempFile::with_suffix(".pdf").expect("a file for the print");
        file.write_all(&decoded(&printed["data"]))
            .expect("the print fits on the disk");
        Pdf { file }
    }
}

/// A word on a page, with its box in points.
struct Word {
    text: String,
    across: (f64, f64),
    down: (f64, f64),
}

impl Word {
    /// Reads `<word xMin="1" yMin="2" xMax="3" yMax="4">words</word>`.
    fn read(line: &str) -> Option<Word> {
        let (head, text) = line.trim().strip_prefix("<word ")?.split_once('>')?;
        let side = |name: &str| {
            let (_, rest) = head.split_once(&format!("{name}=\""))?;
            rest.split('"').next()?.parse::<f64>().ok()
        };
        Some(Word {
            text: text.trim_end_matches("</word>").to_owned(),
            across: (side("xMin")?, side("xMax")?),
            down: (side("yMin")?, side("yMax")?),
        })
    }

    /// Whether it cannot be read for the other. Boxes are as high as lines, so they may touch.
    fn lies_over(&self, other: &Word) -> bool {
        let shared = |(a0, a1): (f64, f64), (b0, b1): (f64, f64)| a1.min(b1) - a0.max(b0);
        let height = (self.down.1 - self.down.0).min(other.down.1 - other.down.0);
        shared(self.across, other.across) > 1.0 && shared(self.down, other.down) > 0.4 * height
    }
}

pub(super) fn decoded(data: &Value) -> Vec<u8> {
    let text = data.as_str().expect("the browser sends files as text");
    BASE64_STANDARD
        .decode(text)
        .expect("the browser sends files in base 64")
}

impl Pdf {
    /// Where the document lies while this value lasts.
    pub fn path(&self) -> &Path {
        self.file.path()
    }

    /// Keeps a copy.
    pub fn save(&self, file: &Path) {
        if let Some(folder) = file.parent() {
            std::fs::create_dir_all(folder).expect("a folder for prints");
        }
        std::fs::copy(self.path(), file).expect("a copy of the print");
    }

    /// Draws each page into the folder, as `NAME-1.png` and so on.
    pub fn draw(&self, folder: &Path, name: &str) {
        std::fs::create_dir_all(folder).expect("a folder for pictures");
        let target = folder.join(name);
        self.poppler(
            "pdftoppm",
            &["-png", "-r", "80"],
            &[&target.to_string_lossy()],
        );
    }

    /// The text of each page, laid out as on paper.
    pub fn pages(&self) -> Vec<String> {
        let text = self.poppler("pdftotext", &["-layout", "-enc", "UTF-8"], &["-"]);
        let mut pages: Vec<String> = text.split('\u{c}').map(str::to_owned).collect();
        // A form feed ends each page, so that nothing follows the last one.
        pages.pop();
        pages
    }

    /// The text of all pages.
    pub fn text(&self) -> String {
        self.pages().join("\n")
    }

    /// Words that are printed over each other, page by page, such as `3: "seen" over "glove"`.
    pub fn words_over_each_other(&self) -> Vec<String> {
        let text = self.poppler("pdftotext", &["-bbox", "-enc", "UTF-8"], &["-"]);
        let pages = text.split("<page ").skip(1).enumerate();
        let over_each_other = pages.flat_map(|(at, page)| {
            let words: Vec<Word> = page.lines().filter_map(Word::read).collect();
            let pairs =
                (0..words.len()).flat_map(|one| (one + 1..words.len()).map(move |o| (one, o)));
            let over = pairs.map(|(one, other)| (&words[one], &words[other]));
            over.filter(|(one, other)| one.lies_over(other))
                .map(|(one, other)| format!("{}: {:?} over {:?}", at + 1, one.text, other.text))
                .collect::<Vec<_>>()
        });
        over_each_other.collect()
    }

    /// Width and height of the first page, in points of 1/72 in.
    pub fn page_size(&self) -> (f64, f64) {
        let facts = self.poppler("pdfinfo", &[], &[]);
        let size = facts
            .lines()
            .find_map(|line| line.strip_prefix("Page size:"));
        let mut numbers = size
            .expect("pdfinfo tells the page size")
            .split_whitespace()
            .filter_map(|word| word.parse().ok());
        numbers
            .next()
            .zip(numbers.next())
            .expect("a page has two sides")
    }

    #[track_caller]
    fn poppler(&self, program: &str, before: &[&str], after: &[&str]) -> String {
        let output = Command::new(program)
            .args(before)
            .arg(self.path())
            .args(after)
            .output()
            .unwrap_or_else(|error| {
                panic!("cannot start {program}: {error}; `cargo xtask setup` sees to it")
            });
        assert!(
            output.status.success(),
            "{program}: {}",
            String::from_utf8_lossy(&output.stderr)
        );
        String::from_utf8(output.stdout).expect("text in UTF-8")
    }
}
