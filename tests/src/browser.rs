//! Drives the release build in a real browser, the way a person would.
//!
//! ```no_run
//! use leverwright_tests::browser::Browser;
//!
//! let shop = Browser::open("shop");
//! shop.visit("");
//! shop.role("button", "Press").click();
//! shop.css("[role=status]").wait_for_text("1");
//! shop.assert_accessible();
//! ```
//!
//! Everything waits by itself, up to [`PATIENCE`], and panics with a sentence when that runs
//! out. When a session ends, it checks that the page reported no error and that no request left
//! the origin; a failed walk-through leaves a picture and the console in `target/walks`.

mod axe;
mod driver;
mod element;
mod emulate;
mod keys;
mod measure;
mod paper;
mod pointer;
mod record;

pub use axe::Violation;
pub use element::Element;
pub use emulate::Media;
pub use paper::{Paper, Pdf};
pub use pointer::{Point, Pointer};

use driver::Services;
use record::Record;
use serde::de::DeserializeOwned;
use serde_json::{Value, json};
use std::cell::RefCell;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::{Duration, Instant};
use tempfile::TempDir;
use thirtyfour::{WebDriver, error::WebDriverResult};
use tokio::runtime::Runtime;

/// How long anything may take before it counts as not happening.
pub const PATIENCE: Duration = Duration::from_secs(20);

/// How often to look again meanwhile.
const GLANCE: Duration = Duration::from_millis(20);

/// The size of a desk's window, in CSS pixels.
pub const DESK: (u32, u32) = (1280, 800);

/// The size of a telephone's screen, in CSS pixels.
pub const PHONE: (u32, u32) = (390, 844);

/// One browser with a profile of its own: nothing is shared with another one.
pub struct Browser {
    label: String,
    home: String,
    runtime: Runtime,
    session: Option<WebDriver>,
    // Lasts as long as the browser.
    _services: Arc<Services>,
    profile: Option<TempDir>,
    record: RefCell<Record>,
    expected: RefCell<Vec<String>>,
}

impl Browser {
    /// Starts a browser with an empty profile and a desk-sized window. The label names it in
    /// messages.
    #[track_caller]
    pub fn open(label: &str) -> Self {
        let services = Services::shared();
        Self::open_at(label, &format!("{}/", services.origin()))
    }

    /// As [`Browser::open`], for a page at another address than the served build's: a folder's,
    /// with the slash at its end, or a file's. Requests must not leave it.
    #[track_caller]
    pub fn open_at(label: &str, home: &str) -> Self {
        let profile = TempDir::new().expect("a folder for the browser's profile");
        Self::start(label, profile, home.to_owned())
    }

    /// As [`Browser::open`], with a telephone's screen and a finger for a pointer.
    #[track_caller]
    pub fn open_phone(label: &str) -> Self {
        let browser = Self::open(label);
        browser.become_phone(PHONE);
        browser
    }

    /// Ends the browser and starts another one on the same profile, as after a night.
    #[track_caller]
    pub fn reopen(mut self) -> Self {
        let (label, home) = (self.label.clone(), self.home.clone());
        let profile = self
            .profile
            .take()
            .expect("the profile stays until the browser is dropped");
        drop(self);
        Self::start(&label, profile, home)
    }

    #[track_caller]
    fn start(label: &str, profile: TempDir, home: String) -> Self {
        let services = Services::shared();
        let runtime = tokio::runtime::Builder::new_current_thread()
            .enable_all()
            .build()
            .expect("a runtime for the driver's client");
        std::fs::create_dir_all(profile.path().join("downloads")).expect("a folder for downloads");
        let session = runtime
            .block_on(services.session(profile.path()))
            .unwrap_or_else(|error| panic!("{label}: cannot start the browser: {error}"));
        let browser = Self {
            label: label.to_owned(),
            home,
            runtime,
            session: Some(session),
            _services: services,
            profile: Some(profile),
            record: RefCell::default(),
            expected: RefCell::default(),
        };
        browser.viewport(DESK.0, DESK.1);
        // The print window of a browser without a screen does nothing: count the calls instead.
        browser.on_every_page(
            "window.printCalls = 0; window.print = () => { window.printCalls += 1; };",
        );
        browser
    }

    /// Goes to a place in the app, such as `#/layout`, and waits until the program runs.
    #[track_caller]
    pub fn visit(&self, route: &str) {
        let address = format!("{}{route}", self.home);
        self.run("go to the page", self.session().goto(address));
        self.wait_until_ready();
    }

    /// Loads the page anew, and waits until the program runs.
    #[track_caller]
    pub fn reload(&self) {
        self.run("reload", self.session().refresh());
        self.wait_until_ready();
    }

    /// Goes back one page in the history.
    #[track_caller]
    pub fn back(&self) {
        self.run("go back", self.session().back());
    }

    #[track_caller]
    fn wait_until_ready(&self) {
        self.wait_for("the program runs", || {
            self.eval::<bool>("return document.documentElement.dataset.ready === '1'")
        });
    }

    /// The address, from its `#` on.
    #[track_caller]
    pub fn route(&self) -> String {
        self.eval("return location.hash")
    }

    /// Every element that fits a CSS selector. Looked up anew for each act.
    pub fn css(&self, selector: &str) -> Element<'_> {
        Element::css(self, selector)
    }

    /// Every element that assistive technology knows by this role and exactly this name, as the
    /// browser computes both.
    pub fn role(&self, role: &str, name: &str) -> Element<'_> {
        Element::role(self, role, name)
    }

    /// Waits until the condition holds. `what` completes "waited in vain until".
    #[track_caller]
    pub fn wait_for(&self, what: &str, mut condition: impl FnMut() -> bool) {
        let start = Instant::now();
        while !condition() {
            if start.elapsed() > PATIENCE {
                panic!(
                    "{}: waited {} s in vain until {what}",
                    self.label,
                    PATIENCE.as_secs()
                );
            }
            std::thread::sleep(GLANCE);
        }
    }

    /// The value of a script's `return`.
    #[track_caller]
    pub fn eval<T: DeserializeOwned>(&self, script: &str) -> T {
        self.eval_with(script, vec![])
    }

    /// As [`Browser::eval`]; the script finds the values in `arguments`.
    #[track_caller]
    pub fn eval_with<T: DeserializeOwned>(&self, script: &str, arguments: Vec<Value>) -> T {
        let value = self.run("run a script", self.session().execute(script, arguments));
        self.converted(script, value.json())
    }

    /// The value that a script hands to the function in its last argument.
    #[track_caller]
    pub fn eval_later<T: DeserializeOwned>(&self, script: &str) -> T {
        let value = self.run("run a script", self.session().execute_async(script, vec![]));
        self.converted(script, value.json())
    }

    #[track_caller]
    fn converted<T: DeserializeOwned>(&self, script: &str, value: &Value) -> T {
        serde_json::from_value(value.clone())
            .unwrap_or_else(|error| panic!("{}: {script}\ngave {value}: {error}", self.label))
    }

    /// How often the page asked for the print window since it was loaded.
    #[track_caller]
    pub fn print_calls(&self) -> u32 {
        self.eval("return window.printCalls")
    }

    /// Opens one more tab on the same profile, and goes there.
    #[track_caller]
    pub fn open_tab(&self) {
        self.run("open a tab", async {
            let tab = self.session().new_tab().await?;
            self.session().switch_to_window(tab).await
        });
    }

    /// Goes to a tab, counted from 0 in the order of opening.
    #[track_caller]
    pub fn go_to_tab(&self, index: usize) {
        self.run("go to a tab", async {
            let tabs = self.session().windows().await?;
            self.session().switch_to_window(tabs[index].clone()).await
        });
    }

    /// Waits for a file to arrive in the downloads, and gives its place.
    #[track_caller]
    pub fn wait_for_download(&self, name: &str) -> PathBuf {
        let file = self.downloads().join(name);
        // The browser reserves the name with an empty file.
        let arrived = || std::fs::metadata(&file).is_ok_and(|facts| facts.len() > 0);
        self.wait_for(&format!("{name} is downloaded"), arrived);
        file
    }

    /// The folder that downloads go to.
    pub fn downloads(&self) -> PathBuf {
        self.profile_folder().join("downloads")
    }

    fn profile_folder(&self) -> &Path {
        self.profile
            .as_ref()
            .expect("the profile stays until the browser is dropped")
            .path()
    }

    /// A picture of what is in view.
    #[track_caller]
    pub fn screenshot(&self, file: &Path) {
        if let Some(folder) = file.parent() {
            std::fs::create_dir_all(folder).expect("a folder for pictures");
        }
        self.run("take a picture", self.session().screenshot(file));
    }

    /// A picture of the whole page, also of what has to be scrolled to.
    #[track_caller]
    pub fn screenshot_of_page(&self, file: &Path) {
        let picture = self.cdp(
            "Page.captureScreenshot",
            json!({ "captureBeyondViewport": true }),
        );
        if let Some(folder) = file.parent() {
            std::fs::create_dir_all(folder).expect("a folder for pictures");
        }
        std::fs::write(file, paper::decoded(&picture["data"])).expect("a picture file");
    }

    /// Says that the page will report an error with these words. It has to, and every other
    /// error still fails the walk-through.
    pub fn expect_problem(&self, words: &str) {
        self.expected.borrow_mut().push(words.to_owned());
    }

    /// The errors and policy violations that the page reported so far, but those expected.
    #[track_caller]
    pub fn problems(&self) -> Vec<String> {
        self.collect();
        let expected = self.expected.borrow();
        let unexpected = |problem: &&String| !expected.iter().any(|words| problem.contains(words));
        self.record
            .borrow()
            .problems
            .iter()
            .filter(unexpected)
            .cloned()
            .collect()
    }

    /// The expected errors that have not come.
    fn unseen_problems(&self) -> Vec<String> {
        let record = self.record.borrow();
        let came = |words: &&String| {
            record
                .problems
                .iter()
                .any(|problem| problem.contains(*words))
        };
        self.expected
            .borrow()
            .iter()
            .filter(|words| !came(words))
            .cloned()
            .collect()
    }

    /// The addresses of all requests so far.
    #[track_caller]
    pub fn requests(&self) -> Vec<String> {
        self.collect();
        self.record.borrow().requests.clone()
    }

    /// The addresses of requests that left the origin.
    #[track_caller]
    pub fn requests_elsewhere(&self) -> Vec<String> {
        let stays =
            |address: &str| address.starts_with(&self.home) || record::is_inside_page(address);
        self.requests()
            .into_iter()
            .filter(|address| !stays(address))
            .collect()
    }

    #[track_caller]
    fn collect(&self) {
        let (console, network) = self.run("read the browser's logs", async {
            let console = self.session().get_log("browser").await?;
            Ok((console, self.session().get_log("performance").await?))
        });
        self.record.borrow_mut().add(&console, &network);
    }

    /// A script that runs before those of every page from now on.
    #[track_caller]
    pub fn on_every_page(&self, script: &str) {
        self.cdp(
            "Page.addScriptToEvaluateOnNewDocument",
            json!({ "source": script }),
        );
    }

    /// One command of the browser's own protocol, for what has no method here.
    #[track_caller]
    pub fn cdp(&self, command: &str, parameters: Value) -> Value {
        self.run(command, self.session().cdp().send_raw(command, parameters))
    }

    fn session(&self) -> &WebDriver {
        self.session
            .as_ref()
            .expect("the session lasts until the browser is dropped")
    }

    /// Waits for the driver, and panics with a sentence when it refuses.
    #[track_caller]
    fn run<T>(&self, what: &str, act: impl Future<Output = WebDriverResult<T>>) -> T {
        match self.runtime.block_on(act) {
            Ok(value) => value,
            Err(error) => panic!("{}: cannot {what}: {error}", self.label),
        }
    }

    fn attempt<T>(&self, act: impl Future<Output = WebDriverResult<T>>) -> WebDriverResult<T> {
        self.runtime.block_on(act)
    }

    /// What a failed walk-through leaves behind.
    fn leave_evidence(&self) {
        let test = std::thread::current()
            .name()
            .unwrap_or("walk")
            .replace("::", "-");
        let folder = xtask::tools::dist().with_file_name("walks");
        let picture = folder.join(format!("{test}-{}.png", self.label));
        let taken = std::fs::create_dir_all(&folder).is_ok()
            && self.attempt(self.session().screenshot(&picture)).is_ok();
        if taken {
            eprintln!("{}: see {}", self.label, picture.display());
        }
        if let Ok(console) = self.attempt(self.session().get_log("browser")) {
            self.record.borrow_mut().add(&console, &[]);
        }
        for problem in &self.record.borrow().problems {
            eprintln!("{}: the page said: {problem}", self.label);
        }
    }

    fn quit(&mut self) {
        if let Some(session) = self.session.take() {
            // The driver ends with the last session in any case.
            let _ = self.runtime.block_on(session.quit());
        }
    }
}

impl Drop for Browser {
    fn drop(&mut self) {
        if std::thread::panicking() {
            self.leave_evidence();
            self.quit();
            return;
        }
        let problems = self.problems();
        let elsewhere = self.requests_elsewhere();
        let unseen = self.unseen_problems();
        self.quit();
        let label = &self.label;
        assert!(
            problems.is_empty(),
            "{label}: the page reported {problems:#?}"
        );
        assert!(
            elsewhere.is_empty(),
            "{label}: requests left the origin: {elsewhere:#?}"
        );
        assert!(
            unseen.is_empty(),
            "{label}: the page never reported {unseen:?}"
        );
    }
}
