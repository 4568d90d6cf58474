//! What a first visit has to fetch.

use anyhow::{Context, Result, ensure};
use flate2::{Compression, write::GzEncoder};
use std::fs;
use std::io::Write;
use std::path::Path;
use xtask::tools;

/// What a first visit fetches before the list of plans can be used, at most, gzip, in bytes: the
/// first part of the program, every script and every style. 300 KB.
pub const FIRST_LIMIT: usize = 300_000;

/// What all of it may weigh, gzip, in bytes. Whoever makes the build lighter lowers it; whoever
/// adds a screen may have to raise it, and says so.
pub const LIMIT: usize = 1_224_000;

/// The build on a scale.
pub struct Weight {
    /// Every program, script and style file with its gzip size in bytes, largest first.
    pub files: Vec<(String, usize)>,
}

impl Weight {
    /// Weighs target/dist.
    pub fn of_build() -> Result<Weight> {
        Ok(Weight { files: files()? })
    }

    /// All of it, in bytes.
    pub fn all(&self) -> usize {
        self.files.iter().map(|(_, size)| size).sum()
    }

    /// What a first visit waits for, in bytes: all but the parts that the program fetches itself.
    pub fn first(&self) -> usize {
        let files = self.files.iter();
        files
            .filter(|(name, _)| !comes_later(name))
            .map(|(_, size)| size)
            .sum()
    }
}

/// Whether a file is a later part of the program.
fn comes_later(name: &str) -> bool {
    name.ends_with(".wasm") && !name.starts_with("leverwright-")
}

/// The gzip size of every program, script and style file in the build, largest first.
fn files() -> Result<Vec<(String, usize)>> {
    let mut sizes = Vec::new();
    weigh(&tools::dist(), &mut sizes)
        .context("no release build in target/dist: run `cargo xtask build`")?;
    sizes.sort_by_key(|(_, size)| std::cmp::Reverse(*size));
    Ok(sizes)
}

fn weigh(folder: &Path, sizes: &mut Vec<(String, usize)>) -> Result<()> {
    for entry in fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            weigh(&path, sizes)?;
        } else if path
            .extension()
            .is_some_and(|ending| ["wasm", "js", "css"].iter().any(|known| ending == *known))
        {
            let name = path.strip_prefix(tools::dist())?.display().to_string();
            sizes.push((name, gzip(&fs::read(&path)?)?));
        }
    }
    Ok(())
}

fn gzip(bytes: &[u8]) -> Result<usize> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    encoder.write_all(bytes)?;
    Ok(encoder.finish()?.len())
}

/// Prints each file's size, and fails over a limit.
pub fn check() -> Result<()> {
    let weight = Weight::of_build()?;
    for (name, size) in &weight.files {
        let when = if comes_later(name) { "later" } else { "first" };
        eprintln!("{size:>9} bytes  {when}  {name}");
    }
    let mut over = Vec::new();
    for (what, size, limit) in [
        ("what a first visit waits for", weight.first(), FIRST_LIMIT),
        ("all of it", weight.all(), LIMIT),
    ] {
        eprintln!("{size:>9} bytes  {what}, gzip, of at most {limit}");
        if size > limit {
            over.push(format!(
                "{what} weighs {size} bytes gzip, over the limit of {limit}"
            ));
        }
    }
    ensure!(over.is_empty(), "{}", over.join("; "));
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parts_that_come_later_are_not_waited_for() {
        let file = |name: &str, size| (name.to_owned(), size);
        let weight = Weight {
            files: vec![
                file("desk-1.wasm", 400),
                file("leverwright-1.wasm", 30),
                file("leverwright-1.js", 2),
                file("base-1.css", 1),
            ],
        };
        assert_eq!(weight.first(), 33);
        assert_eq!(weight.all(), 433);
    }
}
