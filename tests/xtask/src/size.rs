//! What a first visit has to fetch.

use anyhow::{Context, Result, bail};
use flate2::{Compression, write::GzEncoder};
use std::fs;
use std::io::Write;
use std::path::Path;
use xtask::tools;

/// What program, scripts and styles together should weigh, gzip, in bytes: 300 KB.
pub const GOAL: usize = 300_000;

/// What they may weigh until the goal is reached, gzip, in bytes. Whoever makes the build lighter
/// lowers it. It was raised for what came in since the main job: first records, revisions and gears,
/// then the screens for gears, rides, practice, comparing, sharing, review and checks.
pub const LIMIT: usize = 1_170_000;

/// The gzip size of every program, script and style file in the build, largest first.
pub fn files() -> Result<Vec<(String, usize)>> {
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

/// Prints each file's size, and fails over the limit.
pub fn check() -> Result<()> {
    let files = files()?;
    let total: usize = files.iter().map(|(_, size)| size).sum();
    for (name, size) in &files {
        eprintln!("{size:>9} bytes  {name}");
    }
    eprintln!("{total:>9} bytes  in all, gzip, of at most {LIMIT}; the goal is {GOAL}");
    if total > LIMIT {
        bail!("the build weighs {total} bytes gzip: over the limit of {LIMIT}");
    }
    Ok(())
}
