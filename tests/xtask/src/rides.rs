//! Fetches the recorded rides that the reference checks read: example data of a general-purpose
//! package under an open licence (MIT). They are not committed.

use crate::setup::fetch;
use crate::step;
use anyhow::{Context, Result, bail};
use std::fs;
use xtask::tools;

/// The package, pinned by what is in it.
const PACKAGE: &str = "sweat==0.25.0 \
    --hash=sha256:7734eb146b6168ce1f231f1749929b77d72fdc63cc430a6fbbc284efb9c1cb1a\n";

/// What is kept of it.
const KEPT: [&str; 3] = [
    "activity_4078723797.gpx",
    "activity_4801048867.gpx",
    "activity_5039744860.gpx",
];

/// Puts the rides into `.tools/rides`, if they are not there.
pub fn fetch_rides() -> Result<()> {
    let rides = tools::root().join(".tools/rides");
    if KEPT.iter().all(|name| rides.join(name).is_file()) {
        return Ok(());
    }
    let unpacked = tools::root().join("target/rides");
    fs::create_dir_all(&unpacked).context("cannot make the folder target/rides")?;
    let list = unpacked.join("requirements.txt");
    fs::write(&list, PACKAGE).context("cannot write which package to fetch")?;
    let mut download = step::command("python3");
    download
        .args(["-m", "pip", "download", "--quiet", "--no-deps"])
        .args(["--only-binary", ":all:", "--require-hashes", "-r"])
        .arg(&list)
        .arg("--dest")
        .arg(&unpacked);
    fetch(
        "two recorded rides for the reference checks (PyPI's sweat 0.25.0)",
        &mut download,
    )?;
    let wheel = unpacked.join("sweat-0.25.0-py3-none-any.whl");
    let mut unpack = step::command("python3");
    unpack
        .args(["-m", "zipfile", "-e"])
        .arg(&wheel)
        .arg(&unpacked);
    step::run("Set-up: unpacking the rides", &mut unpack)?;
    fs::create_dir_all(&rides).context("cannot make the folder .tools/rides")?;
    for name in KEPT {
        let from = unpacked.join("sweat/examples/data").join(name);
        if !from.is_file() {
            bail!("the package with the recorded rides has no {name}");
        }
        fs::copy(&from, rides.join(name)).with_context(|| format!("cannot keep {name}"))?;
    }
    Ok(())
}
