//! What a browser reported: errors on its console, and every request it made.

use serde_json::Value;
use thirtyfour::BrowserLogEntry;

/// Grows while the session lasts, for the driver hands each entry out only once.
#[derive(Default)]
pub(super) struct Record {
    pub(super) problems: Vec<String>,
    pub(super) requests: Vec<String>,
}

impl Record {
    pub(super) fn add(&mut self, console: &[BrowserLogEntry], network: &[BrowserLogEntry]) {
        self.problems.extend(
            console
                .iter()
                .filter(|entry| is_problem(entry))
                .map(|entry| entry.message.clone()),
        );
        self.requests
            .extend(network.iter().filter_map(|entry| request(&entry.message)));
    }
}

fn is_problem(entry: &BrowserLogEntry) -> bool {
    entry.level == "SEVERE" || entry.message.contains("Content Security Policy")
}

/// The address in a protocol event that announces a request.
fn request(message: &str) -> Option<String> {
    let event: Value = serde_json::from_str(message).ok()?;
    let event = &event["message"];
    let address = match event["method"].as_str()? {
        "Network.requestWillBeSent" => &event["params"]["request"]["url"],
        "Network.webSocketCreated" | "Network.webTransportCreated" => &event["params"]["url"],
        _ => return None,
    };
    address.as_str().map(str::to_owned)
}

/// Addresses that stand for data in the page or the browser itself: nothing travels.
pub(super) fn is_inside_page(address: &str) -> bool {
    ["data:", "blob:", "about:", "chrome:", "chrome-untrusted:"]
        .iter()
        .any(|scheme| address.starts_with(scheme))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn requests_and_sockets_are_found_in_the_log() {
        let sent = r#"{"message":{"method":"Network.requestWillBeSent","params":{"request":{"url":"http://a/b"}}}}"#;
        let socket =
            r#"{"message":{"method":"Network.webSocketCreated","params":{"url":"ws://a/b"}}}"#;
        let received = r#"{"message":{"method":"Network.dataReceived","params":{}}}"#;
        assert_eq!(request(sent).as_deref(), Some("http://a/b"));
        assert_eq!(request(socket).as_deref(), Some("ws://a/b"));
        assert_eq!(request(received), None);
        assert!(is_inside_page("blob:http://a/b") && !is_inside_page("http://a/b"));
    }
}
