//! Serves the release build to the browsers of one test program.

use file_serve::{Server, ServerBuilder};
use std::net::{TcpListener, TcpStream};
use std::path::PathBuf;
use std::sync::Arc;
use std::time::{Duration, Instant};

/// Where `cargo xtask build` puts the release build.
pub fn build_folder() -> PathBuf {
    PathBuf::from(concat!(env!("CARGO_MANIFEST_DIR"), "/../target/dist"))
}

/// A server that lasts as long as this value.
pub(super) struct Served {
    server: Arc<Server>,
    port: u16,
}

impl Served {
    /// Serves on a free port of this machine.
    pub(super) fn start() -> Self {
        let folder = build_folder();
        assert!(
            folder.join("index.html").is_file(),
            "no release build in target/dist: run `cargo xtask build`"
        );
        let port = free_port();
        let server = Arc::new(
            ServerBuilder::new(folder)
                .hostname("127.0.0.1")
                .port(port)
                .build(),
        );
        let running = Arc::clone(&server);
        std::thread::spawn(move || running.serve().expect("the free port can be served"));
        wait_until_listening(port);
        Self { server, port }
    }

    pub(super) fn origin(&self) -> String {
        format!("http://127.0.0.1:{}", self.port)
    }
}

impl Drop for Served {
    fn drop(&mut self) {
        self.server.close();
    }
}

fn free_port() -> u16 {
    let listener = TcpListener::bind(("127.0.0.1", 0)).expect("a free port");
    listener
        .local_addr()
        .expect("a bound listener has an address")
        .port()
}

fn wait_until_listening(port: u16) {
    let start = Instant::now();
    while TcpStream::connect(("127.0.0.1", port)).is_err() {
        assert!(
            start.elapsed() < Duration::from_secs(5),
            "the server on port {port} does not answer"
        );
        std::thread::sleep(Duration::from_millis(5));
    }
}
