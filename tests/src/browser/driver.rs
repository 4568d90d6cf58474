//! The browser's driver program and the page server, shared by all browsers of one test program.

use serde_json::json;
use std::env;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Child, Command, Stdio};
use std::sync::{Arc, Mutex, PoisonError, Weak};
use std::time::Duration;
use thirtyfour::error::WebDriverResult;
use thirtyfour::{CapabilitiesHelper, ChromiumLikeCapabilities, DesiredCapabilities, WebDriver};
use xtask::{server::Server, tools};

/// Lasts as long as any browser does, so that no program outlives the tests.
pub(super) struct Services {
    server: Server,
    driver: Child,
    driver_port: u16,
}

impl Services {
    pub(super) fn shared() -> Arc<Self> {
        static SHARED: Mutex<Weak<Services>> = Mutex::new(Weak::new());
        let mut shared = SHARED.lock().unwrap_or_else(PoisonError::into_inner);
        shared.upgrade().unwrap_or_else(|| {
            let services = Arc::new(Self::start());
            *shared = Arc::downgrade(&services);
            services
        })
    }

    fn start() -> Self {
        let build = tools::dist();
        assert!(
            build.join("index.html").is_file(),
            "no release build in target/dist: run `cargo xtask build`"
        );
        let server = Server::start(build, 0).expect("a free port");
        let (driver, driver_port) = start_driver();
        Self {
            server,
            driver,
            driver_port,
        }
    }

    pub(super) fn origin(&self) -> String {
        self.server.origin()
    }

    /// Starts a browser on a profile folder.
    pub(super) async fn session(&self, profile: &Path) -> WebDriverResult<WebDriver> {
        let mut wanted = DesiredCapabilities::chrome();
        for argument in ARGUMENTS {
            wanted.add_arg(argument)?;
        }
        wanted.add_arg(&format!("--user-data-dir={}", profile.display()))?;
        if let Some(browser) = env::var_os("CHROMIUM") {
            wanted.set_binary(&browser.to_string_lossy())?;
        }
        wanted.add_experimental_option(
            "prefs",
            json!({
                "download.default_directory": profile.join("downloads"),
                "download.prompt_for_download": false,
                // Not the browser's own start page, which makes requests.
                "session.restore_on_startup": 4,
                "session.startup_urls": ["about:blank"],
            }),
        )?;
        wanted.add_experimental_option("perfLoggingPrefs", json!({ "enablePage": false }))?;
        wanted.set(
            "goog:loggingPrefs",
            json!({ "browser": "ALL", "performance": "ALL" }),
        )?;
        WebDriver::builder(format!("http://127.0.0.1:{}", self.driver_port), wanted)
            .request_timeout(Duration::from_secs(60))
            .connect()
            .await
    }
}

impl Drop for Services {
    fn drop(&mut self) {
        // Nothing is left to do where it has ended already.
        let _ = self.driver.kill();
        let _ = self.driver.wait();
    }
}

/// Without a screen, without a sandbox (which containers do not allow), and without any of the
/// requests that the browser makes for itself.
const ARGUMENTS: [&str; 9] = [
    "--headless=new",
    "--no-sandbox",
    "--disable-gpu",
    "--disable-dev-shm-usage",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--lang=en-GB",
];

fn start_driver() -> (Child, u16) {
    let program = env::var_os("CHROMEDRIVER").unwrap_or_else(|| "chromedriver".into());
    let mut driver = Command::new(&program)
        .arg("--port=0")
        .stdout(Stdio::piped())
        .stderr(Stdio::null())
        .spawn()
        .unwrap_or_else(|error| {
            panic!(
                "cannot start {}: {error}; `cargo xtask setup` sees to it",
                program.display()
            )
        });
    let output = driver.stdout.take().expect("the driver's output is piped");
    let mut lines = BufReader::new(output).lines().map_while(Result::ok);
    let port = lines
        .find_map(|line| {
            let port = line.split_once("started successfully on port ")?.1;
            port.trim_end_matches('.').parse().ok()
        })
        .expect("the driver says its port");
    // Reads on, for a full pipe would stop the driver.
    std::thread::spawn(move || lines.for_each(drop));
    (driver, port)
}
