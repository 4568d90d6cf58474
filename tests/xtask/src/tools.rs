//! Where the project's tools live and which versions it takes.

use anyhow::{Context, Result};
use std::ffi::OsString;
use std::path::{Path, PathBuf};

/// Newer versions of Trunk ask for a newer compiler than the workspace does.
pub const TRUNK: &str = "0.21.14";

/// Splits the program. Its crate in app/Cargo.toml, wasm_split_helpers, is of the same line.
pub const SPLIT: &str = "0.2.4";

/// The folder that holds the workspace's Cargo.toml.
pub fn root() -> &'static Path {
    Path::new(concat!(env!("CARGO_MANIFEST_DIR"), "/../.."))
}

/// Where the release build lies.
pub fn dist() -> PathBuf {
    root().join("target/dist")
}

/// Where npm puts its packages.
pub fn web() -> PathBuf {
    root().join("tests/web")
}

/// The search path: the project's own tools before the machine's.
pub fn path() -> OsString {
    let own = [root().join(".tools/bin"), web().join("node_modules/.bin")];
    let inherited = std::env::var_os("PATH").unwrap_or_default();
    let all = own.into_iter().chain(std::env::split_paths(&inherited));
    std::env::join_paths(all).unwrap_or(inherited)
}

/// The file that `program` means on the search path, in the spelling that the system can start.
pub fn find(program: &str) -> Option<PathBuf> {
    std::env::split_paths(&path()).find_map(|folder| find_in(&folder, program))
}

/// As [`find`], in one folder.
pub fn find_in(folder: &Path, program: &str) -> Option<PathBuf> {
    let endings: &[&str] = if cfg!(windows) {
        &[".exe", ".cmd"]
    } else {
        &[""]
    };
    let mut files = endings
        .iter()
        .map(|ending| folder.join(format!("{program}{ending}")));
    files.find(|file| file.is_file())
}

/// As [`find`]; the bare name where nothing is found, so that the error names it.
pub fn resolve(program: &str) -> PathBuf {
    find(program).unwrap_or_else(|| program.into())
}

/// The browser's file, under any of its usual names.
pub fn chromium() -> Option<PathBuf> {
    let on_path = ["chromium", "chromium-browser", "google-chrome", "chrome"];
    let elsewhere = [
        "/Applications/Chromium.app/Contents/MacOS/Chromium",
        "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
        "C:/Program Files/Google/Chrome/Application/chrome.exe",
        "C:/Program Files/Chromium/Application/chrome.exe",
    ];
    on_path.into_iter().find_map(find).or_else(|| {
        elsewhere
            .into_iter()
            .map(PathBuf::from)
            .find(|file| file.is_file())
    })
}

/// The version of a crate in Cargo.lock. The wasm-bindgen tool has to match its crate exactly.
///
/// # Errors
/// When Cargo.lock does not tell.
pub fn locked(name: &str) -> Result<String> {
    let lock =
        std::fs::read_to_string(root().join("Cargo.lock")).context("cannot read Cargo.lock")?;
    let heading = format!("name = \"{name}\"");
    let mut lines = lock.lines().skip_while(|line| *line != heading);
    lines
        .nth(1)
        .and_then(|line| line.strip_prefix("version = \"")?.strip_suffix('"'))
        .map(str::to_owned)
        .with_context(|| format!("Cargo.lock has no {name}"))
}
