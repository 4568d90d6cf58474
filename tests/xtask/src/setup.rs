//! Installs what is missing, and only that.

use crate::{step, tools};
use anyhow::{Context, Result, bail};
use std::fs;
use std::path::Path;
use std::time::Instant;

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
    let bindgen = tools::locked("wasm-bindgen")?;
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
    eprintln!(
        "== Set-up: all tools in place after {}",
        step::spoken(start.elapsed())
    );
    Ok(())
}

fn rust_target() -> Result<()> {
    let target = "wasm32-unknown-unknown";
    let output = step::command("rustc")
        .args(["--print", "target-libdir", "--target", target])
        .output()
        .context("cannot start rustc")?;
    let folder = String::from_utf8_lossy(&output.stdout).trim().to_owned();
    if output.status.success() && Path::new(&folder).is_dir() {
        return Ok(());
    }
    if tools::find("rustup").is_none() {
        bail!(
            "the compiler has no {target} standard library, and there is no rustup to fetch it. \
             Install Rust with rustup (https://rustup.rs), or your system's package with that target."
        );
    }
    step::run(
        &format!("Set-up: Rust's standard library for {target}"),
        step::command("rustup").args(["target", "add", target]),
    )
}

fn rust_component(subcommand: &str, component: &str) -> Result<()> {
    let present = step::command("cargo")
        .args([subcommand, "--version"])
        .output();
    if present.is_ok_and(|output| output.status.success()) {
        return Ok(());
    }
    step::run(
        &format!("Set-up: Rust's {component}"),
        step::command("rustup").args(["component", "add", component]),
    )
}

/// A program of the system: how to tell that it is there, and the Debian packages that bring it.
struct Need {
    what: &'static str,
    packages: &'static [&'static str],
    purpose: For,
    present: fn() -> bool,
}

const NEEDS: [Need; 5] = [
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
    step::run(
        "Set-up: Debian's package lists",
        step::command("apt-get").arg("update"),
    )?;
    step::run(
        &format!("Set-up: Debian's packages {} ({names})", packages.join(" ")),
        step::command("apt-get")
            .args(line.split(' ').skip(1))
            .env("DEBIAN_FRONTEND", "noninteractive"),
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
    step::run(
        "Set-up: npm packages binaryen (wasm-opt) and axe-core",
        step::command("npm").arg("ci").current_dir(tools::web()),
    )?;
    fs::write(stamp, lock).context("cannot note what npm installed")
}

/// Tools come as debug builds: half the time to install, and as quick to use here.
fn cargo_tool(program: &str, package: &str, version: &str, options: &[&str]) -> Result<()> {
    let own = format!(".tools/bin/{program}{}", std::env::consts::EXE_SUFFIX);
    let installed = step::command(&tools::root().join(own).to_string_lossy())
        .arg("--version")
        .output();
    let wanted = format!("{program} {version}");
    if installed.is_ok_and(|output| String::from_utf8_lossy(&output.stdout).trim() == wanted) {
        return Ok(());
    }
    step::run(
        &format!("Set-up: {package} {version} into .tools (1 to 3 minutes)"),
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
