//! One part of the page, looked up anew for every act: what the program draws again in between
//! is found again.

use super::{Browser, GLANCE, PATIENCE, pointer::Point};
use serde_json::{Value, json};
use std::fmt;
use std::path::Path;
use std::time::Instant;
use thirtyfour::error::{WebDriverErrorInner as Refusal, WebDriverResult};
use thirtyfour::{By, WebElement};

/// How to find an element, or several.
#[derive(Clone)]
pub struct Element<'a> {
    browser: &'a Browser,
    how: How,
    within: Option<Box<Element<'a>>>,
    nth: Option<usize>,
}

#[derive(Clone)]
enum How {
    Css(String),
    Role { role: String, name: String },
}

impl<'a> Element<'a> {
    pub(super) fn css(browser: &'a Browser, selector: &str) -> Self {
        Self {
            browser,
            how: How::Css(selector.to_owned()),
            within: None,
            nth: None,
        }
    }

    pub(super) fn role(browser: &'a Browser, role: &str, name: &str) -> Self {
        let how = How::Role {
            role: role.to_owned(),
            name: name.to_owned(),
        };
        Self {
            browser,
            how,
            within: None,
            nth: None,
        }
    }

    /// Every element inside this one that fits a CSS selector.
    pub fn inner_css(&self, selector: &str) -> Self {
        Self {
            within: Some(Box::new(self.clone())),
            ..Self::css(self.browser, selector)
        }
    }

    /// Every element inside this one with this role and exactly this name.
    pub fn inner_role(&self, role: &str, name: &str) -> Self {
        Self {
            within: Some(Box::new(self.clone())),
            ..Self::role(self.browser, role, name)
        }
    }

    /// One of several, counted from 0 in document order.
    pub fn nth(&self, index: usize) -> Self {
        Self {
            nth: Some(index),
            ..self.clone()
        }
    }

    /// Presses and releases the mouse's main button in its middle, where nothing covers it.
    #[track_caller]
    pub fn click(&self) {
        self.act("click", async |element| match element.click().await {
            // The driver scrolls no farther than the window's edge, where the page may keep a
            // bar; a person scrolls on.
            Err(error) if passes(&error) => {
                element.scroll_into_view().await?;
                element.click().await
            }
            clicked => clicked,
        });
    }

    /// The text as it is drawn.
    #[track_caller]
    pub fn text(&self) -> String {
        self.act("read the text of", async |element| element.text().await)
    }

    /// An attribute of the markup.
    #[track_caller]
    pub fn attribute(&self, name: &str) -> Option<String> {
        self.act("read an attribute of", async |element| {
            element.attr(name).await
        })
    }

    /// What a field holds.
    #[track_caller]
    pub fn value(&self) -> String {
        self.act("read the value of", async |element| {
            element.prop("value").await
        })
        .unwrap_or_default()
    }

    /// Whether a box is ticked, an option chosen.
    #[track_caller]
    pub fn is_selected(&self) -> bool {
        self.act("look at", async |element| element.is_selected().await)
    }

    /// Whether it takes presses.
    #[track_caller]
    pub fn is_enabled(&self) -> bool {
        self.act("look at", async |element| element.is_enabled().await)
    }

    /// The value of a style property that the browser arrived at.
    #[track_caller]
    pub fn style(&self, property: &str) -> String {
        self.act("read the style of", async |element| {
            element.css_value(property).await
        })
    }

    /// Replaces what a field holds by typing.
    #[track_caller]
    pub fn fill(&self, text: &str) {
        self.act("fill in", async |element| {
            element.clear().await?;
            element.send_keys(text).await
        });
    }

    /// Gives a file to a file field.
    #[track_caller]
    pub fn choose_file(&self, file: &Path) {
        let file = std::path::absolute(file).expect("a file's place");
        self.act("choose a file in", async |element| {
            element.send_keys(file.to_string_lossy()).await
        });
    }

    /// Puts the keyboard's focus on it.
    #[track_caller]
    pub fn focus(&self) {
        self.act("focus", async |element| element.focus().await);
    }

    /// Scrolls it into view, as little as needed.
    #[track_caller]
    pub fn scroll_into_view(&self) {
        self.script("arguments[0].scrollIntoView({ block: 'nearest', inline: 'nearest' })");
    }

    /// The middle of what is drawn, in the viewport. Does not scroll.
    #[track_caller]
    pub fn centre(&self) -> Point {
        let (left, top, width, height) = self.rect();
        Point {
            x: left + width / 2.0,
            y: top + height / 2.0,
        }
    }

    /// Left, top, width and height in the viewport, in CSS pixels.
    #[track_caller]
    pub fn rect(&self) -> (f64, f64, f64, f64) {
        let value = self.script(
            "const r = arguments[0].getBoundingClientRect(); return [r.left, r.top, r.width, r.height]",
        );
        serde_json::from_value(value).expect("a rectangle has four numbers")
    }

    /// The value of a script's `return`, which finds the element in `arguments[0]`.
    #[track_caller]
    pub fn script(&self, script: &str) -> Value {
        self.act("run a script on", async |element| {
            let argument = vec![element.to_json()?];
            Ok(element
                .handle()
                .execute(script, argument)
                .await?
                .json()
                .clone())
        })
    }

    /// How many fit at this moment. Does not wait.
    #[track_caller]
    pub fn count(&self) -> usize {
        self.browser.run("count elements", self.all()).len()
    }

    /// The texts of all that fit at this moment.
    #[track_caller]
    pub fn texts(&self) -> Vec<String> {
        self.browser.run("read texts", async {
            let mut texts = Vec::new();
            for element in self.all().await? {
                texts.push(element.text().await?);
            }
            Ok(texts)
        })
    }

    /// Whether one fits at this moment and is drawn.
    #[track_caller]
    pub fn is_shown(&self) -> bool {
        let shown = self.browser.attempt(async {
            match self.all().await?.first() {
                Some(element) => element.is_displayed().await,
                None => Ok(false),
            }
        });
        shown.unwrap_or(false)
    }

    /// Waits until it is drawn.
    #[track_caller]
    pub fn wait_until_shown(&self) -> &Self {
        self.browser
            .wait_for(&format!("{self} is shown"), || self.is_shown());
        self
    }

    /// Waits until it is no longer drawn.
    #[track_caller]
    pub fn wait_until_gone(&self) {
        self.browser
            .wait_for(&format!("{self} is gone"), || !self.is_shown());
    }

    /// Waits until its text contains these words.
    #[track_caller]
    pub fn wait_for_text(&self, words: &str) {
        let start = Instant::now();
        loop {
            let text = self.text();
            if text.contains(words) {
                return;
            }
            assert!(
                start.elapsed() < PATIENCE,
                "{}: waited in vain for {words:?} in {self}, which says {text:?}",
                self.browser.label
            );
            std::thread::sleep(GLANCE);
        }
    }

    /// Does something with the one element that fits, as soon as there is one that lets it.
    #[track_caller]
    fn act<T>(&self, what: &str, act: impl AsyncFn(WebElement) -> WebDriverResult<T>) -> T {
        let start = Instant::now();
        loop {
            let attempt = self.browser.attempt(async {
                let mut all = self.all().await?;
                match all.len() {
                    1 => act(all.remove(0)).await.map(Ok),
                    count => Ok(Err(format!("{count} elements fit"))),
                }
            });
            let reason = match attempt {
                Ok(Ok(value)) => return value,
                Ok(Err(reason)) => reason,
                Err(error) if passes(&error) => error.to_string(),
                Err(error) => panic!("{}: cannot {what} {self}: {error}", self.browser.label),
            };
            if start.elapsed() > PATIENCE {
                panic!("{}: cannot {what} {self}: {reason}", self.browser.label);
            }
            std::thread::sleep(GLANCE);
        }
    }

    async fn all(&self) -> WebDriverResult<Vec<WebElement>> {
        let scope = match &self.within {
            None => None,
            Some(outer) => {
                let mut outers = Box::pin(outer.all()).await?;
                if outers.len() != 1 {
                    return Ok(vec![]);
                }
                Some(outers.remove(0))
            }
        };
        let mut found = match (&self.how, &scope) {
            (How::Css(selector), None) => {
                self.browser
                    .session()
                    .find_all(By::Css(selector.as_str()))
                    .await?
            }
            (How::Css(selector), Some(scope)) => scope.find_all(By::Css(selector.as_str())).await?,
            (How::Role { role, name }, _) => self.all_with_role(scope.as_ref(), role, name).await?,
        };
        Ok(match self.nth {
            None => found,
            Some(index) if index < found.len() => vec![found.swap_remove(index)],
            Some(_) => vec![],
        })
    }

    /// Asks the browser's accessibility tree, then fetches the same nodes as elements.
    async fn all_with_role(
        &self,
        scope: Option<&WebElement>,
        role: &str,
        name: &str,
    ) -> WebDriverResult<Vec<WebElement>> {
        let cdp = self.browser.session().cdp();
        let root = match scope {
            Some(element) => json!(element.cdp_remote_object_id().await?),
            None => {
                let document = json!({ "expression": "document" });
                cdp.send_raw("Runtime.evaluate", document).await?["result"]["objectId"].clone()
            }
        };
        let query = json!({ "objectId": root, "role": role, "accessibleName": name });
        let tree = cdp.send_raw("Accessibility.queryAXTree", query).await?;
        let nodes = tree["nodes"].as_array().cloned().unwrap_or_default();
        let shown = nodes.iter().filter(|node| node["ignored"] != json!(true));
        let mut count = 0;
        for node in shown {
            let wanted = json!({ "backendNodeId": node["backendDOMNodeId"] });
            let resolved = cdp.send_raw("DOM.resolveNode", wanted).await?;
            let keep = json!({
                "objectId": resolved["object"]["objectId"],
                "functionDeclaration": "function () { (window.foundByRole ??= []).push(this); }",
            });
            cdp.send_raw("Runtime.callFunctionOn", keep).await?;
            count += 1;
        }
        if count == 0 {
            return Ok(vec![]);
        }
        let fetch = "const found = window.foundByRole; delete window.foundByRole; return found";
        self.browser
            .session()
            .execute(fetch, vec![])
            .await?
            .elements()
    }
}

/// Refusals that may pass when the page has settled.
fn passes(error: &Refusal) -> bool {
    matches!(
        error,
        Refusal::StaleElementReference(_)
            | Refusal::NoSuchElement(_)
            | Refusal::ElementClickIntercepted(_)
            | Refusal::ElementNotInteractable(_)
            | Refusal::MoveTargetOutOfBounds(_)
    )
}

impl fmt::Display for Element<'_> {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.how {
            How::Css(selector) => write!(out, "`{selector}`")?,
            How::Role { role, name } => write!(out, "the {role} {name:?}")?,
        }
        if let Some(index) = self.nth {
            write!(out, " number {index}")?;
        }
        if let Some(outer) = &self.within {
            write!(out, " in {outer}")?;
        }
        Ok(())
    }
}
