//! Installs what is missing, and only that.

use crate::{rides, step};
use anyhow::{Context, Result, bail};
use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};
use std::time::Instant;
use xtask::tools;

/// What the app is compiled for.
const TARGET: &str = "wasm32-unknown-unknown";

/// What the set-up is for: building needs no browser.
#[derive(Clone, Copy, PartialEq)]
pub enum For {
    Building,
    Testing,
}

/// Sees to every tool. Quick when all are there.
pub fn run(purpose: For) -> Result<()> {
    let start = Instant::now();
    rust_target()?;
    if purpose == For::Testing {
        rust_component("fmt", "rustfmt")?;
        rust_component("clippy", "clippy")?;
    }
    system_packages(purpose)?;
    npm_packages()?;
    if purpose == For::Testing {
        rides::fetch_rides()?;
    }
    let bindgen = tools::locked("wasm-bindgen")?;
    // Not --locked: its own lock file names a version that the registry no longer has.
    cargo_tool(
        "wasm-bindgen",
        "wasm-bindgen-cli",
        &bindgen,
        &["--no-default-features"],
    )?;
    cargo_tool(
        "trunk",
        "trunk",
        tools::TRUNK,
        &["--locked", "--no-default-features"],
    )?;
    cargo_tool(
        "wasm-split-cli",
        "wasm_split_cli_support",
        tools::SPLIT,
        &["--locked", "--features", "build-binary"],
    )?;
    eprintln!(
        "== Set-up: all tools in place after {}",
        step::spoken(start.elapsed())
    );
    Ok(())
}

fn rust_target() -> Result<()> {
    if has_rust_target()? {
        return Ok(());
    }
    if tools::find("rustup").is_none() {
        bail!(
            "the compiler has no standard library for {TARGET}, and there is no rustup to fetch \
             it. Install Rust with rustup (https://rustup.rs), or your system's package of it."
        );
    }
    fetch(
        &format!("Rust's standard library for {TARGET}"),
        step::command("rustup").args(["target", "add", TARGET]),
    )?;
    if !has_rust_target()? {
        bail!("rustup says that the target {TARGET} is there, but the compiler does not find it");
    }
    Ok(())
}

fn has_rust_target() -> Result<bool> {
    let output = step::command("rustc")
        .args(["--print", "target-libdir", "--target", TARGET])
        .output()
        .context("cannot start rustc")?;
    let folder = String::from_utf8_lossy(&output.stdout).trim().to_owned();
    Ok(output.status.success() && Path::new(&folder).is_dir())
}

fn rust_component(subcommand: &str, component: &str) -> Result<()> {
    let present = step::command("cargo")
        .args([subcommand, "--version"])
        .output();
    if present.is_ok_and(|output| output.status.success()) {
        return Ok(());
    }
    fetch(
        &format!("Rust's {component}"),
        step::command("rustup").args(["component", "add", component]),
    )
}

/// Runs what fetches something; an error says what that means for the reader.
pub fn fetch(what: &str, command: &mut Command) -> Result<()> {
    step::run(&format!("Set-up: {what}"), command).with_context(|| {
        format!("could not get {what}. Is there a network? README.md says how to get it by hand")
    })
}

/// A program of the system: how to tell that it is there, and the Debian packages that bring it.
struct Need {
    what: &'static str,
    packages: &'static [&'static str],
    purpose: For,
    present: fn() -> bool,
}

const NEEDS: [Need; 6] = [
    Need {
        what: "Node.js with npm",
        packages: &["nodejs", "npm"],
        purpose: For::Building,
        present: || tools::find("node").is_some() && tools::find("npm").is_some(),
    },
    Need {
        what: "Chromium",
        packages: &["chromium"],
        purpose: For::Testing,
        present: || tools::chromium().is_some(),
    },
    Need {
        what: "Chromium's driver",
        packages: &["chromium-driver"],
        purpose: For::Testing,
        present: || tools::find("chromedriver").is_some(),
    },
    Need {
        what: "pdftotext",
        packages: &["poppler-utils"],
        purpose: For::Testing,
        present: || tools::find("pdftotext").is_some(),
    },
    Need {
        what: "Python with pip",
        packages: &["python3", "python3-pip"],
        purpose: For::Testing,
        present: || {
            let pip = step::command("python3")
                .args(["-m", "pip", "--version"])
                .output();
            pip.is_ok_and(|output| output.status.success())
        },
    },
    Need {
        what: "fonts",
        packages: &["fonts-dejavu-core", "fonts-liberation"],
        purpose: For::Testing,
        present: || {
            let folder = Path::new("/usr/share/fonts/truetype");
            !cfg!(target_os = "linux")
                || folder.read_dir().is_ok_and(|mut all| all.next().is_some())
        },
    },
];

fn missing(purpose: For) -> Vec<&'static Need> {
    let wanted = |need: &&Need| purpose == For::Testing || need.purpose == For::Building;
    NEEDS
        .iter()
        .filter(wanted)
        .filter(|need| !(need.present)())
        .collect()
}

fn system_packages(purpose: For) -> Result<()> {
    let needs = missing(purpose);
    if needs.is_empty() {
        return Ok(());
    }
    let packages: Vec<&str> = needs
        .iter()
        .flat_map(|need| need.packages)
        .copied()
        .collect();
    let line = format!(
        "apt-get install -y --no-install-recommends {}",
        packages.join(" ")
    );
    let names: Vec<&str> = needs.iter().map(|need| need.what).collect();
    let names = names.join(", ");
    if tools::find("apt-get").is_none() {
        bail!("missing: {names}. README.md says how to get each by hand; then run this again.");
    }
    if !is_root() {
        bail!(
            "missing: {names}. Run this, then the command again:\n\n  sudo apt-get update && sudo {line}\n"
        );
    }
    // Their output is a thousand lines; errors come on the other stream.
    let mut update = step::command("apt-get");
    fetch(
        "Debian's package lists",
        update.args(["-qq", "update"]).stdout(Stdio::null()),
    )?;
    let mut install = step::command("apt-get");
    install
        .args(line.split(' ').skip(1))
        .env("DEBIAN_FRONTEND", "noninteractive");
    fetch(
        &format!("{names} (Debian's {})", packages.join(", ")),
        install.stdout(Stdio::null()),
    )?;
    match missing(purpose).first() {
        None => Ok(()),
        Some(need) => bail!(
            "{} is still missing after `{line}`. README.md says how to get it by hand.",
            need.what
        ),
    }
}

fn is_root() -> bool {
    let output = step::command("id").arg("-u").output();
    output.is_ok_and(|output| output.stdout.trim_ascii() == b"0")
}

/// A copy of the lock file beside the packages tells whether they are those that it names.
fn npm_packages() -> Result<()> {
    let lock = fs::read(tools::web().join("package-lock.json"))
        .context("cannot read tests/web/package-lock.json")?;
    let stamp = tools::web().join("node_modules/.installed-lock.json");
    if fs::read(&stamp).is_ok_and(|installed| installed == lock) {
        return Ok(());
    }
    fetch(
        "npm's binaryen (wasm-opt) and axe-core",
        step::command("npm").arg("ci").current_dir(tools::web()),
    )?;
    fs::write(stamp, lock).context("cannot note what npm installed")
}

/// Tools come as debug builds: half the time to install, and as quick to use here.
fn cargo_tool(program: &str, package: &str, version: &str, options: &[&str]) -> Result<()> {
    let folder = tools::root().join(".tools");
    let is_there = tools::find_in(&folder.join("bin"), program).is_some();
    // Not every tool tells its version, but Cargo notes what it installed.
    let noted = fs::read_to_string(folder.join(".crates.toml")).unwrap_or_default();
    if is_there && noted.contains(&format!("\"{package} {version} (")) {
        return Ok(());
    }
    fetch(
        &format!("{package} {version}, compiled into .tools (1 to 3 minutes)"),
        step::command("cargo")
            .args([
                "install",
                package,
                "--version",
                version,
                "--debug",
                "--force",
            ])
            .args(["--root", ".tools", "--target-dir", "target/tools"])
            .args(options)
            .env("CARGO_PROFILE_DEV_DEBUG", "0"),
    )
}
