//! The driving library itself, on pages made up here: what it does reaches the page as a
//! person's input would.

use leverwright_tests::browser::{Browser, Media, PHONE};
use serde_json::json;

/// Replaces the page by this markup.
fn page(browser: &Browser, markup: &str) {
    browser.visit("");
    browser.eval_with::<()>(
        "document.body.innerHTML = arguments[0]",
        vec![json!(markup)],
    );
}

/// Keeps the pointer events of the page, as `type pointer target`, without runs of the same.
fn watch_pointer(browser: &Browser) {
    browser.eval::<()>(
        "window.seen = [];
         for (const type of ['pointerdown', 'pointermove', 'pointerup', 'click'])
             addEventListener(type, (event) => {
                 const line = `${event.type} ${event.pointerType} ${event.target.id}`;
                 if (seen.at(-1) !== line) seen.push(line);
             });",
    );
}

const TWO_PLACES: &str = "<main><button id='from'>From</button><button id='to'>To</button></main>";

#[test]
fn mouse_and_finger_drag_from_one_element_to_another() {
    let shop = Browser::open_phone("shop");
    page(&shop, TWO_PLACES);
    shop.eval::<()>("document.querySelector('main').style.touchAction = 'none'");
    for (pointer, kind) in [(shop.mouse(), "mouse"), (shop.finger(), "touch")] {
        watch_pointer(&shop);
        pointer.drag(&shop.css("#from"), &shop.css("#to"));
        let seen: Vec<String> = shop.eval("return seen");
        assert!(
            seen.contains(&format!("pointerdown {kind} from")),
            "{seen:?}"
        );
        // A finger belongs to the element that it came down on.
        let end = if kind == "mouse" { "to" } else { "from" };
        assert!(
            seen.contains(&format!("pointerup {kind} {end}")),
            "{seen:?}"
        );
        assert!(
            seen.iter().any(|line| line.starts_with("pointermove")),
            "{seen:?}"
        );
    }
}

#[test]
fn a_finger_taps() {
    let shop = Browser::open_phone("shop");
    page(&shop, TWO_PLACES);
    watch_pointer(&shop);
    shop.finger().tap(&shop.role("button", "To"));
    shop.wait_for("the tap is a click", || {
        shop.eval::<String>("return seen.at(-1)") == "click touch to"
    });
}

#[test]
fn keys_reach_the_page_together_and_one_by_one() {
    let shop = Browser::open("shop");
    page(
        &shop,
        "<main><label>Name <input></label> <button>Go</button></main>",
    );
    shop.eval::<()>(
        "window.seen = [];
         addEventListener('keydown', (event) => seen.push([event.ctrlKey, event.shiftKey, event.key].join(' ')));",
    );
    shop.role("textbox", "Name").fill("old");
    shop.press("Control+a");
    shop.type_text("Zoë 車");
    assert_eq!(shop.role("textbox", "Name").value(), "Zoë 車");
    shop.press("Tab");
    assert_eq!(shop.focused(), ("button".to_owned(), "Go".to_owned()));
    shop.press_all(&["Shift+Tab", "Escape"]);
    assert_eq!(shop.focused(), ("textbox".to_owned(), "Name".to_owned()));
    let seen: Vec<String> = shop.eval("return seen");
    for stroke in ["true false a", "false true Tab", "false false Escape"] {
        assert!(
            seen.iter().any(|line| line == stroke),
            "{stroke} in {seen:?}"
        );
    }
}

#[test]
fn files_go_in_and_come_out() {
    let shop = Browser::open("shop");
    page(
        &shop,
        "<main><label>File <input type='file'></label> <a download='copy.txt'>Take</a></main>",
    );
    shop.eval::<()>(
        "document.querySelector('input').onchange = async (event) => {
             const text = await event.target.files[0].text();
             document.querySelector('a').href = URL.createObjectURL(new Blob([text.toUpperCase()]));
             document.querySelector('a').textContent = 'Ready';
         }",
    );
    let given = shop.downloads().join("given.txt");
    std::fs::write(&given, "a plan").unwrap();
    shop.css("input").choose_file(&given);
    shop.role("link", "Ready").click();
    let taken = shop.wait_for_download("copy.txt");
    assert_eq!(std::fs::read_to_string(taken).unwrap(), "A PLAN");
}

#[test]
fn media_and_sizes_are_what_they_are_set_to() {
    let shop = Browser::open("shop");
    shop.visit("");
    let holds = |query: &str| -> bool {
        shop.eval_with(
            "return matchMedia(arguments[0]).matches",
            vec![json!(query)],
        )
    };
    let queries = [
        "print",
        "(prefers-color-scheme: dark)",
        "(prefers-reduced-motion: reduce)",
        "(forced-colors: active)",
        "(prefers-contrast: more)",
    ];
    let all = Media {
        print: true,
        dark: true,
        reduced_motion: true,
        forced_colors: true,
        more_contrast: true,
    };
    for (media, expected) in [(all, true), (Media::default(), false)] {
        shop.media(media);
        for query in queries {
            assert_eq!(holds(query), expected, "{query}");
        }
    }

    assert!(!holds("(pointer: coarse)"));
    shop.become_phone(PHONE);
    assert!(holds("(pointer: coarse)") && holds("(width: 390px)"));
    shop.viewport(320, 640);
    assert!(holds("(width: 320px)"));

    shop.text_size(200);
    shop.reload();
    assert_eq!(shop.css("html").style("font-size"), "32px");
}

#[test]
fn tabs_share_a_profile() {
    let shop = Browser::open("shop");
    shop.visit("");
    shop.eval::<()>("localStorage.setItem('kept', 'here')");
    shop.open_tab();
    shop.visit("");
    assert_eq!(
        shop.eval::<String>("return localStorage.getItem('kept')"),
        "here"
    );
    shop.eval::<()>("document.title = 'second'");
    shop.go_to_tab(0);
    assert_eq!(
        shop.eval::<String>("return document.title"),
        "Plans · Leverwright"
    );
}

#[test]
fn held_memory_shows_in_the_heap() {
    let shop = Browser::open("shop");
    shop.visit("");
    let before = shop.heap_bytes();
    shop.eval::<()>("window.held = new Uint8Array(8e6).fill(1)");
    let held = shop.heap_bytes() - before;
    assert!((6e6..10e6).contains(&held), "{held} bytes more");
}

#[test]
fn offline_cuts_the_page_off() {
    let shop = Browser::open("shop");
    shop.visit("");
    shop.expect_problem("ERR_INTERNET_DISCONNECTED");
    shop.offline(true);
    // No file that the page keeps in the browser.
    let fetched = "const done = arguments[arguments.length - 1];
        fetch('./leverwright.html', { cache: 'no-store' }).then(() => done(true), () => done(false));";
    assert!(!shop.eval_later::<bool>(fetched));
    shop.offline(false);
    assert!(shop.eval_later::<bool>(fetched));
}

#[test]
fn the_time_until_a_change_is_painted_is_taken() {
    let shop = Browser::open("shop");
    page(&shop, "<main><button>Go</button></main>");
    shop.eval::<()>(
        "document.querySelector('button').onclick = (event) => {
             const start = performance.now();
             while (performance.now() - start < 120) {}
             event.target.textContent += '!';
         }",
    );
    shop.time_paints_after("click");
    shop.css("button").click();
    shop.css("button").click();
    let times = shop.paint_times(2);
    assert!(times.iter().all(|time| *time >= 120.0), "{times:?}");
}
