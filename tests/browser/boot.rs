//! The page starts, answers, and keeps to itself.

use leverwright_tests::browser::{Browser, Media, Paper};
use serde_json::json;

#[test]
fn the_page_starts_with_the_plans() {
    let shop = Browser::open("shop");
    shop.visit("");
    shop.role("heading", "Plans").wait_until_shown();
    assert!(shop.role("button", "Open a file").is_enabled());
}

#[test]
fn nothing_is_asked_of_another_origin() {
    let shop = Browser::open("shop");
    shop.visit("");
    let requests = shop.requests();
    assert!(
        requests.iter().any(|address| address.ends_with(".wasm")),
        "{requests:#?}"
    );
    assert_eq!(shop.requests_elsewhere(), [""; 0]);
}

#[test]
fn the_policy_stops_a_request_elsewhere() {
    let shop = Browser::open("shop");
    shop.visit("");
    shop.expect_problem("violates the document's Content Security Policy");
    shop.expect_problem("violates the following Content Security Policy directive");
    let refused: bool = shop.eval_later(
        "const done = arguments[arguments.length - 1];
         fetch('http://127.0.0.2:9/').then(() => done(false), () => done(true));",
    );
    assert!(refused);
}

#[test]
#[should_panic(expected = "requests left the origin")]
fn a_request_elsewhere_fails_the_walk_through() {
    let shop = Browser::open("shop");
    shop.cdp("Page.setBypassCSP", json!({ "enabled": true }));
    shop.visit("");
    shop.expect_problem("http://127.0.0.2:9/");
    shop.eval_later::<()>(
        "const done = arguments[arguments.length - 1];
         fetch('http://127.0.0.2:9/').then(() => done(null), () => done(null));",
    );
}

#[test]
#[should_panic(expected = "the page reported")]
fn an_error_on_the_console_fails_the_walk_through() {
    let shop = Browser::open("shop");
    shop.visit("");
    shop.eval::<()>("console.error('something broke')");
}

#[test]
fn the_policy_stops_inline_code_and_styles() {
    let shop = Browser::open("shop");
    shop.visit("");
    shop.expect_problem("directive 'script-src 'self' 'wasm-unsafe-eval''");
    shop.expect_problem("directive 'style-src 'self''");
    let ran: bool = shop.eval(
        "const script = document.createElement('script');
         script.textContent = 'window.inlineRan = true';
         document.head.append(script);
         return window.inlineRan === true",
    );
    assert!(!ran);
    shop.eval::<()>("document.body.setAttribute('style', 'margin-top: 77px')");
    assert_ne!(shop.css("body").style("margin-top"), "77px");
}

#[test]
fn axe_core_objects_to_nothing() {
    let shop = Browser::open("shop");
    for dark in [false, true] {
        shop.media(Media {
            dark,
            ..Media::default()
        });
        shop.visit("");
        shop.assert_accessible();
    }
}

#[test]
fn axe_core_would_object() {
    let shop = Browser::open("shop");
    shop.visit("");
    shop.eval::<()>("document.querySelector('button').textContent = ''");
    let rules: Vec<String> = shop
        .violations()
        .into_iter()
        .map(|violation| violation.id)
        .collect();
    assert_eq!(rules, ["button-name"]);
}

#[test]
fn two_profiles_share_nothing() {
    let shop = Browser::open("shop");
    let home = Browser::open_phone("home");
    for browser in [&shop, &home] {
        browser.visit("");
    }
    shop.eval::<()>("localStorage.setItem('kept', 'here')");
    assert_eq!(
        home.eval::<Option<String>>("return localStorage.getItem('kept')"),
        None
    );

    let shop = shop.reopen();
    shop.visit("");
    assert_eq!(
        shop.eval::<Option<String>>("return localStorage.getItem('kept')")
            .as_deref(),
        Some("here")
    );
}

#[test]
fn it_prints_on_both_papers() {
    let shop = Browser::open("shop");
    shop.visit("");
    for paper in [Paper::A4, Paper::Letter] {
        let printed = shop.print(paper);
        let (wanted, got) = (paper.points(), printed.page_size());
        assert!(
            (wanted.0 - got.0).abs() < 1.0 && (wanted.1 - got.1).abs() < 1.0,
            "{wanted:?} {got:?}"
        );
        assert!(printed.text().contains("Plans"));
        assert!(printed.pages()[0].contains("Plans"));
        printed.draw(&shop.downloads(), "sheet");
        assert!(shop.downloads().join("sheet-1.png").is_file());
    }
}
